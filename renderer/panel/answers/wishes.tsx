/** What is wished of the picture: the shares that subject and landmark are to fill, and standing where both fit. */
import { useState } from 'preact/hooks'
import { type FillWish, type FrameAxis, MOST_SHARE } from '#core/frame/fill.ts'
import { spotFollowing, wishFill } from '#core/plan/arrange.ts'
import { assess } from '#core/plan/assess.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { bearingAwayFromLandmark, bearingOfStandpoint, standForBothFills } from '#core/plan/stand.ts'
import { type Result, failed } from '#core/result.ts'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { metres, millimetres } from '#renderer/text/figure.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'

/** Percent of the frame's side that may be wished. */
const SHARE_LIMITS = { least: 0, most: MOST_SHARE * 100, moreThanLeast: true } as const
const FOCAL_LIMITS = { least: 0.5, most: 10_000 } as const

export function Wishes({ plan }: { plan: Plan }) {
  const { wish, edit } = words.answers
  const { shot, hold } = plan.spot
  const [refusal, setRefusal] = useState<string | null>(null)
  const take = (label: string, result: Result<Spot>): void => {
    setRefusal(result.ok ? null : result.fault.message)
    if (result.ok) void changeSpot(label, result.value)
  }
  const wishLandmark = (landmarkFill: FillWish): void => {
    setRefusal(null)
    const spot = { ...plan.spot, shot: { ...shot, landmarkFill } }
    void changeSpot(edit.wish, spotFollowing(planOf(plan.shoot, spot, plan.terrain, plan.pins)))
  }
  return (
    <div class="wishes">
      {hold === 'focal-length' ? (
        <FigureField
          label={wish.focalLength}
          unit="mm"
          decimals={1}
          value={shot.focalLength}
          limits={FOCAL_LIMITS}
          onTake={(focalLength) => take(edit.focalLength, wishFill(plan, { focalLength }))}
        />
      ) : null}
      <Wish
        label={wish.subject(subjectName(plan.shoot.subject))}
        axisLabel={wish.axisOf(subjectName(plan.shoot.subject))}
        value={shot.subjectFill}
        onTake={(subjectFill) => take(edit.wish, wishFill(plan, { subjectFill }))}
      />
      {plan.landmark === null ? null : (
        <>
          <Wish
            label={wish.landmark(landmarkName(plan.landmark))}
            axisLabel={wish.axisOf(landmarkName(plan.landmark))}
            value={shot.landmarkFill}
            onTake={wishLandmark}
          />
          <StandBoth plan={plan} onStand={take} />
        </>
      )}
      <div role="alert">{refusal === null ? null : <Warnings sentences={[refusal]} />}</div>
    </div>
  )
}

interface WishProps {
  readonly label: string
  readonly axisLabel: string
  readonly value: FillWish
  readonly onTake: (wish: FillWish) => void
}

function Wish({ label, axisLabel, value, onTake }: WishProps) {
  const { answers } = words
  return (
    <div class="wish">
      <FigureField
        label={label}
        unit="%"
        decimals={1}
        strip={/%/u}
        value={value.share * 100}
        limits={SHARE_LIMITS}
        onTake={(percent) => onTake({ ...value, share: percent / 100 })}
      />
      <Choice
        label={axisLabel}
        hideLabel
        value={value.axis}
        options={(['width', 'height'] as const).map((axis) => [axis, answers.wish.ofSide(answers.axis[axis])] as const)}
        onChoose={(axis: FrameAxis) => onTake({ ...value, axis })}
      />
    </div>
  )
}

/** The reverse question: both shares are given, the standpoint and the focal length are sought. */
function StandBoth({ plan, onStand }: { plan: Plan; onStand: (label: string, result: Result<Spot>) => void }) {
  const { wish, edit } = words.answers
  const [reached, setReached] = useState<Spot | null>(null)
  const stand = (bearing: number | null): void => {
    const result =
      bearing === null ? failed('no-landmark', words.answers.sharp.noLandmark) : standForBothFills(plan, bearing)
    setReached(result.ok ? result.value : null)
    onStand(edit.standBoth, result)
  }
  return (
    <div class="stand-both">
      <span id="stand-both">{wish.standBoth}</span>
      <span class="buttons" role="group" aria-labelledby="stand-both">
        <button type="button" class="button" onClick={() => stand(bearingOfStandpoint(plan))}>
          {wish.fromThisSide}
        </button>
        <button type="button" class="button" onClick={() => stand(bearingAwayFromLandmark(plan))}>
          {wish.inLine}
        </button>
      </span>
      <p class="hint" role="status">
        {reached !== null && standsThere(plan, reached) ? reachedText(plan, reached) : null}
      </p>
    </div>
  )
}

/** False once anything has moved on since: what was reached then is no news any more. */
function standsThere(plan: Plan, reached: Spot): boolean {
  const { at } = plan.spot.standpoint
  return at.lat === reached.standpoint.at.lat && at.lon === reached.standpoint.at.lon
}

function reachedText(plan: Plan, spot: Spot): string {
  const { toSubject } = assess(planOf(plan.shoot, spot, plan.terrain, plan.pins))
  return words.answers.wish.done(metres(toSubject.distance, settings.value.units), millimetres(spot.shot.focalLength))
}
