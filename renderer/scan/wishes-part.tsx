/** What the picture should be: each demand a must or a wish with its weight, and within what heights, days and hours. */
import { useComputed } from '@preact/signals'
import type { ScanWishes } from '#core/plan/scan-wishes.ts'
import { planOf } from '#core/plan/plan.ts'
import { civilTime } from '#core/time/civil.ts'
import { Question } from '#renderer/part/question.tsx'
import { changeShoot } from '#renderer/state/edits.ts'
import { homeSpot, shoot, spots } from '#renderer/state/library.ts'
import { landmarkName, subjectName } from '#renderer/state/names.ts'
import { zone } from '#renderer/state/zone.ts'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { FillRow, LightRow, ParkingRow, PlaceRow, ShownRow, SoftnessRow, ViewRow, WholeRow } from './demand-rows.tsx'
import { StageFields } from './stage-fields.tsx'

export function WishesPart() {
  // The saved plan: nothing here is drawn anew while something is dragged.
  const plan = useComputed(() => {
    const [home, spot] = [shoot.value, homeSpot.value]
    return home === null || spot === null ? null : planOf(home, spot)
  }).value
  const parkings = useComputed(() => spots.value.filter(({ access }) => access.parking !== null).length).value
  if (plan === null) return null
  const { scanWishes: wishes, subject } = plan.shoot
  const onWish = (name: string, part: Partial<ScanWishes>): void =>
    void changeShoot(say.edit(name), { ...plan.shoot, scanWishes: { ...wishes, ...part } })
  const row = { wishes, onWish, names: say.names(subjectName(subject), landmarkName(plan.landmark)) }
  return (
    <Question title={scanWords.whatPicture}>
      <p class="hint">{say.intro}</p>
      {/* Of another shoot the fields are others: no half-typed figure goes over. */}
      <div key={plan.shoot.id} class="demands">
        <FillRow kind="subjectFill" {...row} />
        <ViewRow {...row} />
        <FillRow kind="landmarkFill" {...row} />
        <WholeRow {...row} />
        <PlaceRow {...row} />
        <ShownRow {...row} />
        <SoftnessRow {...row} />
        <LightRow {...row} plan={plan} />
        <ParkingRow {...row} count={parkings} />
        <StageFields wishes={wishes} onWish={onWish} spotDay={civilTime(plan.spot.when, zone.value).date} />
      </div>
    </Question>
  )
}
