/** How sharp? The aperture that keeps the subject sharp front to back, and how blurred the background turns. */
import { FOCUS_ON } from '#core/frame/set-up.ts'
import { THIRD_STOPS } from '#core/optics/aperture.ts'
import type { Sharpness } from '#core/optics/sharpness.ts'
import { setShot } from '#core/plan/arrange.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { LengthField } from '#renderer/part/figure-field.tsx'
import { aperture, metres, millimetres, share } from '#renderer/text/figure.ts'
import { AnswerFigure } from '#renderer/part/question.tsx'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { changeSpot } from '#renderer/state/library/history.ts'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { diffractionText, problemSentences } from '#renderer/text/problem-text.ts'

interface AnswerProps {
  readonly plan: Plan
  readonly found: Assessment
}

export function HowSharp({ plan, found }: AnswerProps) {
  const { sharp } = found
  return (
    <>
      <AnswerFigure
        figure={sharp === null ? '–' : aperture(sharp.used.mark)}
        note={sharp === null ? words.board.unknown : sharpNote(sharp)}
      />
      <Warnings sentences={problemSentences(plan, found, settings.value.units, 'sharp')} />
      {sharp === null ? null : <SharpReadings plan={plan} sharp={sharp} />}
      <FocusChoice plan={plan} />
    </>
  )
}

/** "sharp front to back, as needed". */
export function sharpNote(sharp: Sharpness): string {
  const { sharp: say } = words.answers
  return `${sharp.endToEnd ? say.endToEnd : say.notEndToEnd}, ${say.held[sharp.held]}`
}

function SharpReadings({ plan, sharp }: { plan: Plan; sharp: Sharpness }) {
  const { sharp: say } = words.answers
  const { units } = settings.value
  const landmark = landmarkName(plan.landmark)
  const far = sharp.limits.far === null ? say.endless : metres(sharp.limits.far, units)
  return (
    <Readings>
      <Reading name={say.spans(subjectName(plan.shoot.subject))} value={metres(sharp.span, units)} />
      <Reading name={say.focusAt} value={metres(sharp.focusDistance, units)} />
      <Reading name={say.limits} value={say.range(metres(sharp.limits.near, units), far)} />
      <Reading name={say.needed} value={apertureNeeded(sharp)} />
      {sharp.landmark === null ? null : (
        <>
          <Reading name={say.dissolves(landmark)} value={metres(sharp.landmark.dissolves, units)} />
          <Reading name={say.softness} value={say.ofFrame(share(sharp.landmark.share))} />
        </>
      )}
      <Reading name={say.diffraction} value={diffractionText(sharp)} />
      <Reading name={say.confusion} value={millimetres(sharp.confusion)} />
    </Readings>
  )
}

/** "f/8 or smaller", or that the lens need not be stopped down at all. */
function apertureNeeded({ neededStop, anyStop }: Sharpness): string {
  const { sharp: say } = words.answers
  if (neededStop === null) return say.beyond
  return anyStop ? say.anyAperture : say.neededValue(aperture(neededStop.mark))
}

function FocusChoice({ plan }: { plan: Plan }) {
  const { sharp: say, edit } = words.answers
  const { shot } = plan.spot
  const { subject } = plan.shoot
  const focusOn = (part: Partial<typeof shot.focus>): void =>
    void changeSpot(edit.focus, setShot(plan, { focus: { ...shot.focus, ...part } }))
  const named = subject.features.map(
    (feature, index) => [`feature-${index}`, feature.name === '' ? say.focus.feature : feature.name] as const,
  )
  const choose = (value: string): void => {
    const feature = value.startsWith('feature-') ? subject.features[Number(value.slice(8))] : undefined
    if (feature !== undefined) return focusOn({ on: 'feature', behindFront: feature.behindFront })
    const on = FOCUS_ON.find((option) => option === value)
    if (on !== undefined) focusOn({ on })
  }
  const chosenFeature = subject.features.findIndex((feature) => feature.behindFront === shot.focus.behindFront)
  const value = shot.focus.on === 'feature' && chosenFeature >= 0 ? `feature-${chosenFeature}` : shot.focus.on
  return (
    <div class="field-row">
      <Choice
        label={say.focusLabel}
        value={value}
        options={[
          ...(['best', 'near', 'middle', 'far', 'feature'] as const).map((on) => [on, say.focus[on]] as const),
          ...named,
        ]}
        onChoose={choose}
      />
      {shot.focus.on === 'feature' ? (
        <LengthField
          label={say.featureAt}
          value={shot.focus.behindFront}
          limits={{ least: 0, most: subject.length }}
          onTake={(behindFront) => focusOn({ behindFront })}
        />
      ) : null}
      <ApertureChoice plan={plan} />
    </div>
  )
}

function ApertureChoice({ plan }: { plan: Plan }) {
  const { sharp: say, edit } = words.answers
  const { shot } = plan.spot
  const marks = THIRD_STOPS.map((stop) => stop.mark)
  const own = shot.aperture !== null && !marks.includes(shot.aperture) ? [shot.aperture] : []
  const options = [...own, ...marks].map((mark) => [String(mark), aperture(mark)] as const)
  return (
    <Choice
      label={say.aperture}
      value={shot.aperture === null ? '' : String(shot.aperture)}
      options={[['', say.asNeeded] as const, ...options]}
      onChoose={(mark) =>
        void changeSpot(edit.aperture, setShot(plan, { aperture: mark === '' ? null : Number(mark) }))
      }
    />
  )
}
