/** When is the light right? The windows of the day, the light at the chosen instant, and what is wished of it. */
import { openPage } from '#renderer/state/session/navigation.ts'
import { SKIES } from '#core/light/exposure.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import type { ThingLight } from '#core/plan/thing-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { formatClock, formatOffset } from '#core/time/civil.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { aperture, bearing, rounded, share } from '#renderer/text/figure.ts'
import { AnswerFigure, Fold } from '#renderer/part/question.tsx'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { changeShoot } from '#renderer/state/library/history.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import {
  againstText,
  bodyText,
  dayName,
  frameText,
  fromText,
  landmarkFaceName,
  lightCautions,
  moonPhaseText,
  momentUnsure,
  shadowText,
  shutterText,
  sideName,
  spanText,
  strikeText,
  subjectSidesName,
  thingText,
  unsureSentences,
  windowSentences,
} from '#renderer/text/light-text.ts'
import { LightWishesForm } from '#renderer/part/light-wishes.tsx'

interface AnswerProps {
  readonly plan: Plan
  readonly found: Assessment
}

interface WhenLightProps extends AnswerProps {
  readonly today: DayLight | null
}

export function WhenLight({ plan, found, today }: WhenLightProps) {
  const { light } = found
  const noFace = light.landmark !== null && !light.landmarkHasFaces
  return (
    <>
      {today === null ? null : <Windows plan={plan} today={today} />}
      <Warnings
        sentences={[
          ...lightCautions(light, found.focalLength),
          ...momentUnsure(light, settings.value.units),
          ...(noFace ? [lightWords.noFace(landmarkName(plan.landmark))] : []),
        ]}
      />
      <LightReadings plan={plan} light={light} />
      <Fold title={lightWords.allSides}>
        <AllSides plan={plan} light={light} />
        <p class="hint">{lightWords.angles}</p>
      </Fold>
      <div class="wishes-fold">
        <LightWishesForm plan={plan} />
      </div>
      <ExposureAnswer plan={plan} found={found} />
      <button type="button" class="button" onClick={() => openPage('days')}>
        {lightWords.bestDays}
      </button>
    </>
  )
}

function Windows({ plan, today }: { plan: Plan; today: DayLight }) {
  const { common } = today.windows
  const [first, ...rest] = common
  const day = dayName(today)
  const none = wishesMade(plan.shoot.light).length === 0
  const { when } = plan.spot
  const figure = none
    ? formatClock(when, zone.value)
    : first === undefined
      ? lightWords.never
      : spanText(first, today.zone)
  const note = none
    ? lightWords.noWish(formatOffset(when, zone.value), day)
    : first === undefined
      ? lightWords.neverNote(day)
      : lightWords.allWishes(day)
  return (
    <>
      <AnswerFigure figure={figure} note={note} />
      {rest.length === 0 ? null : <p class="hint">{lightWords.also(rest.map((span) => spanText(span, today.zone)))}</p>}
      <Warnings sentences={[...windowSentences(plan, today), ...unsureSentences(common, settings.value.units)]} />
    </>
  )
}

function LightReadings({ plan, light }: { plan: Plan; light: LightReading }) {
  const { units } = settings.value
  const sunFrame = frameText(light.sun)
  const moonFrame = frameText(light.moon)
  return (
    <Readings>
      <Reading name={subjectSidesName(plan)} value={thingText(light.subject)} />
      {light.landmark === null ? null : (
        <Reading name={landmarkFaceName(plan, light.landmark)} value={thingText(light.landmark)} />
      )}
      <Reading name={lightWords.from} value={fromText(light)} />
      <Reading name={lightWords.shadow} value={shadowText(light.subjectShadow, light, units)} />
      {light.landmark === null ? null : (
        <Reading name={lightWords.landmarkShadow} value={shadowText(light.landmarkShadow, light, units)} />
      )}
      {light.fill === null ? null : (
        <Reading
          name={lightWords.fill}
          value={lightWords.fillText(
            lightWords.hands[light.fill.hand],
            bearing(light.fill.bearing),
            lightWords.stops(rounded(light.fill.stops, 0)),
          )}
        />
      )}
      <Reading name={lightWords.sun} value={joined(bodyText(light.sun), sunFrame)} />
      <Reading
        name={lightWords.moon}
        value={joined(joined(bodyText(light.moon), moonPhaseText(light, zone.value)), moonFrame)}
      />
    </Readings>
  )
}

function joined(one: string, other: string | null): string {
  return other === null ? one : `${one}; ${other}`
}

function AllSides({ plan, light }: { plan: Plan; light: LightReading }) {
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">{lightWords.side}</th>
          <th scope="col">{lightWords.ofSeen}</th>
          <th scope="col">{lightWords.strikesAt}</th>
        </tr>
      </thead>
      <tbody>
        <SideRows heading={subjectSidesName(plan)} thing={light.subject} />
        {light.landmark === null ? null : (
          <SideRows heading={lightWords.seenSides(landmarkName(plan.landmark))} thing={light.landmark} />
        )}
      </tbody>
    </table>
  )
}

function SideRows({ heading, thing }: { heading: string; thing: ThingLight }) {
  return (
    <>
      <tr>
        <th scope="rowgroup" colSpan={3} class="table-group">
          {heading}
          {thing.sides.length === 0 ? `: ${lightWords.notInFrame}` : ''}
        </th>
      </tr>
      {thing.sides.map((side) => (
        <tr key={side.id}>
          <th scope="row">
            {sideName(side)}
            {side.bearing === null ? '' : ` ${bearing(side.bearing)}`}
          </th>
          <td>{share(side.share)}</td>
          <td>{strikeText(side)}</td>
        </tr>
      ))}
    </>
  )
}

const ISOS = { least: 1, most: 10_000_000 } as const

function ExposureAnswer({ plan, found }: AnswerProps) {
  const { shoot } = plan
  const { exposure } = found.light
  const { expected, seconds } = exposure
  const against = againstText(exposure)
  const iso = rounded(shoot.iso, 0)
  return (
    <div class="exposure">
      <div class="field-row">
        <Choice
          label={lightWords.sky}
          value={shoot.sky}
          options={SKIES.map((sky) => [sky, lightWords.skies[sky]] as const)}
          onChoose={(sky) => void changeShoot(lightWords.edit.sky, { ...shoot, sky })}
        />
        <FigureField
          label={lightWords.iso}
          decimals={0}
          value={shoot.iso}
          limits={ISOS}
          onTake={(value) => void changeShoot(lightWords.edit.iso, { ...shoot, iso: value })}
        />
      </div>
      <Readings>
        <Reading
          name={lightWords.exposure}
          value={
            seconds === null || found.sharp === null
              ? null
              : lightWords.exposureText(shutterText(seconds), aperture(found.sharp.used.mark), iso)
          }
        />
        <Reading
          name={lightWords.atIso100}
          value={expected.ev === null ? null : lightWords.ev(rounded(expected.ev, 1))}
        />
        {expected.skyEv === null ? null : (
          <Reading name={lightWords.skyEv} value={lightWords.ev(rounded(expected.skyEv, 1))} />
        )}
      </Readings>
      <p class="hint">{lightWords.estimate[expected.note]}</p>
      <Warnings sentences={against === null ? [] : [against]} />
    </div>
  )
}
