/** What the picture should be: each demand a must or a wish with its weight, and within what heights, days and hours. */
import { useComputed } from '@preact/signals'
import { type ScanWishes, scanWishesMade } from '#core/record/scan-wishes.ts'
import { planOf } from '#core/plan/plan.ts'
import { looksAtLight } from '#core/scan/scan-samples.ts'
import { civilTime } from '#core/time/civil.ts'
import { Question } from '#renderer/part/question.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { homeSpot, shoot, spots } from '#renderer/state/library/library.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { FillRow, LightRow, ParkingRow, PlaceRow, ShownRow, SoftnessRow, ViewRow, WholeRow } from './demand-rows.tsx'
import { demandNames } from './demand-names.ts'
import type { RowContext } from './demand-row.tsx'
import { RangeFields } from './range-fields.tsx'
import { turnWishes, wishesUnfolded } from './wishes-fold.ts'
import { wishText } from './wish-text.ts'

export function WishesPart() {
  // The saved plan: nothing here is drawn again while something is dragged.
  const plan = useComputed(() => {
    const [home, spot] = [shoot.value, homeSpot.value]
    return home === null || spot === null ? null : planOf(home, spot)
  }).value
  const parkings = useComputed(() => spots.value.filter(({ access }) => access.parking !== null).length).value
  if (plan === null) return null
  const { scanWishes: wishes } = plan.shoot
  const onWish = (name: string, part: Partial<ScanWishes>): void =>
    void changeShoot(say.edit(name), { ...plan.shoot, scanWishes: { ...wishes, ...part } })
  const row = { wishes, onWish, names: demandNames(plan) }
  const open = wishesUnfolded.value
  return (
    <Question title={scanWords.whatPicture}>
      {open ? <p class="hint">{say.intro}</p> : <Summary {...row} />}
      <button type="button" class="button button-small wishes-fold" aria-expanded={open} onClick={turnWishes}>
        {open ? say.summary.fold : say.summary.change}
      </button>
      {open ? (
        // Of another shoot the fields are others: no half-typed figure goes over.
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
          <RangeFields
            wishes={wishes}
            onWish={onWish}
            spotDay={civilTime(plan.spot.when, zone.value).date}
            looksAtLight={looksAtLight(plan)}
          />
        </div>
      ) : null}
    </Question>
  )
}

/** The wishes as sentences: the musts, then the rest. */
function Summary({ wishes, names }: RowContext) {
  const { units } = settings.value
  const made = scanWishesMade(wishes)
  if (made.length === 0) return <p class="hint">{say.summary.none}</p>
  const weightText = (must: boolean): string =>
    made
      .filter((kind) => wishes[kind]?.must === must)
      .map((kind) => say.summary.phrase(names[kind], wishText(kind, wishes, units)))
      .join('; ')
  return (
    <dl class="wishes-list">
      {([true, false] as const).map((must) =>
        weightText(must) === '' ? null : (
          <div key={String(must)}>
            <dt>{must ? say.summary.musts : say.summary.wishes}</dt>
            <dd>{weightText(must)}</dd>
          </div>
        ),
      )}
    </dl>
  )
}
