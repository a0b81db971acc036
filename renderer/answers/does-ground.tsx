/** Does the ground allow it? How much of the landmark shows and what hides the rest, the profile, levels, direct sun, trees and walls. */
import type { Assessment } from '#core/plan/assess.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { GroundReading } from '#core/plan/ground-reading.ts'
import type { GroundUnder, GroundUnderThings } from '#core/plan/ground-under.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { elevation, metres, share } from '#renderer/part/figure.ts'
import { BigFigure, Fold, Question } from '#renderer/part/question.tsx'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { groundLine } from '#renderer/state/derived.ts'
import { daylight } from '#renderer/state/daylight.ts'
import { landmarkName, subjectName } from '#renderer/state/names.ts'
import { page } from '#renderer/state/page.ts'
import { settings } from '#renderer/state/settings.ts'
import { askTerrainAgain, boardGround } from '#renderer/state/terrain.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import {
  type LightTimes,
  clearanceText,
  differenceSentence,
  flatSpans,
  hiddenSentence,
  levelSourceText,
  lightPlaces,
  lightTimes,
  shownFigure,
  spanClock,
  subjectSightText,
} from './ground-text.ts'
import { ProfileReader } from './profile.tsx'
import { Screens } from './screens.tsx'
import { slopeText, tiltSourceAgainst } from './tilt-text.ts'

interface AnswerProps {
  readonly plan: Plan
  readonly found: Assessment
}

export function DoesGround({ plan, found }: AnswerProps) {
  const { ground } = found
  return (
    <Question title={say.question}>
      {ground === null ? (
        <NoGround plan={plan} under={found.under} />
      ) : (
        <Allowed plan={plan} ground={ground} under={found.under} />
      )}
      <Trouble />
      <Screens plan={plan} />
    </Question>
  )
}

function NoGround({ plan, under }: { readonly plan: Plan; readonly under: GroundUnderThings }) {
  const { settled } = boardGround.value
  if (!settled) return <BigFigure figure="–" note={say.waiting} />
  return (
    <>
      <BigFigure figure="–" note={say.levelNote} />
      <p class="hint">{say.levelHint}</p>
      {anyMeasured(under) ? <UnderThings plan={plan} under={under} resolution={0} /> : null}
      {plan.shoot.screens.length === 0 ? null : <Warnings sentences={[say.screensWait]} />}
      <button type="button" class="button ground-sources" onClick={() => (page.value = 'settings')}>
        {say.addSources}
      </button>
    </>
  )
}

function Trouble() {
  const { trouble } = boardGround.value
  if (trouble === null) return null
  return (
    <>
      <Warnings sentences={[trouble]} />
      <button type="button" class="button button-small ground-sources" onClick={askTerrainAgain}>
        {say.again}
      </button>
    </>
  )
}

interface AllowedProps {
  readonly plan: Plan
  readonly ground: GroundReading
  readonly under: GroundUnderThings
}

function Allowed({ plan, ground, under }: AllowedProps) {
  const { units } = settings.value
  const name = landmarkName(plan.landmark)
  const line = groundLine.value
  const { toLandmark, landmarkShown } = ground
  const sentence = toLandmark === null ? null : hiddenSentence(plan, toLandmark, landmarkShown, units)
  const note =
    plan.landmark === null ? say.noLandmark : landmarkShown === null ? say.unknownNote(name) : say.shows(name)
  const partly = [toLandmark?.ground, ground.toSubject.ground].includes('partly-known')
  return (
    <>
      <BigFigure figure={shownFigure(plan.landmark === null ? null : landmarkShown)} note={note} />
      {sentence === null ? null : <p class="ground-sentence">{sentence}</p>}
      {line === null || sentence === null ? null : <ProfileReader line={line} sentence={sentence} />}
      <Warnings sentences={[...(partly ? [say.partlyKnown] : []), ...differences(plan, under, units)]} />
      <Readings>
        {line === null ? null : <Reading name={say.lineToFoot} value={clearanceText(plan, line, units)} />}
        <Reading
          name={say.subject(subjectName(plan.shoot.subject))}
          value={subjectSightText(plan, ground.toSubject, units)}
        />
      </Readings>
      <DirectSun plan={plan} />
      <UnderThings plan={plan} under={under} resolution={boardGround.value.found?.resolution ?? ground.cell} />
      <Source />
    </>
  )
}

type Row = readonly [string, GroundUnder]

function rowsOf(plan: Plan, under: GroundUnderThings): readonly Row[] {
  return [
    [say.under.standpoint, under.standpoint],
    [subjectName(plan.shoot.subject), under.stop],
    ...(under.landmark === null ? [] : [[landmarkName(plan.landmark), under.landmark] as const]),
  ]
}

/** Without elevations the table is worth its room only where something was measured. */
function anyMeasured({ standpoint, stop, landmark }: GroundUnderThings): boolean {
  return [standpoint, stop, landmark].some(
    (under) => under !== null && [under.from, under.slope.from, under.aspect.from].includes('measured'),
  )
}

function differences(plan: Plan, under: GroundUnderThings, units: UnitSystem): string[] {
  return rowsOf(plan, under).flatMap(([name, of]) => differenceSentence(name, of, units) ?? [])
}

interface UnderThingsProps {
  readonly plan: Plan
  readonly under: GroundUnderThings
  /** Metres between the samples of the elevations. */
  readonly resolution: number
}

function UnderThings({ plan, under, resolution }: UnderThingsProps) {
  const { units } = settings.value
  return (
    <>
      <table class="figures ground-table">
        <thead>
          <tr>
            <th scope="col">{say.under.caption}</th>
            <th scope="col">{say.under.elevation}</th>
            <th scope="col">{say.under.slope}</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(plan, under).map(([name, of]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                {elevation(of.elevation, units)}
                <small>{sourceText(of, resolution, units)}</small>
              </td>
              <td>
                {slopeText(of) ?? say.light.unknown}
                <small>{tiltSourceAgainst(of)}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{say.under.note}</p>
    </>
  )
}

function sourceText(under: GroundUnder, resolution: number, units: UnitSystem): string {
  const source = levelSourceText(under.from, resolution, units)
  return under.from === 'measured' && under.read !== null
    ? say.under.reads(source, elevation(under.read, units))
    : source
}

function DirectSun({ plan }: { readonly plan: Plan }) {
  const today = daylight.value
  if (today === null) return null
  const rows = lightPlaces(plan).map(
    ([place, name]) => [name, lightTimes(today.direct[place], today.day, today.zone)] as const,
  )
  return (
    <>
      <table class="figures ground-table">
        <thead>
          <tr>
            <th scope="col">{say.light.caption}</th>
            <th scope="col">{say.light.first}</th>
            <th scope="col">{say.light.last}</th>
          </tr>
        </thead>
        <tbody>
          <SunRow name={say.light.flat} times={lightTimes(flatSpans(today), today.day, today.zone)} />
          {rows.map(([name, times]) => (
            <SunRow key={name} name={name} times={times} />
          ))}
        </tbody>
      </table>
      <Gaps rows={rows} today={today} />
    </>
  )
}

function SunRow({ name, times }: { readonly name: string; readonly times: LightTimes }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {times.instead === null ? (
        <>
          <td>{times.first}</td>
          <td>{times.last}</td>
        </>
      ) : (
        <td colSpan={2}>{times.instead}</td>
      )}
    </tr>
  )
}

function Gaps({
  rows,
  today,
}: {
  readonly rows: readonly (readonly [string, LightTimes])[]
  readonly today: DayLight
}) {
  return (
    <>
      {rows.map(([name, { gaps }]) =>
        gaps.length === 0 ? null : (
          <p key={name} class="hint">
            {say.light.between(name, gaps.map((gap) => spanClock(gap, today.zone)).join(', '))}
          </p>
        ),
      )}
    </>
  )
}

function Source() {
  const { units } = settings.value
  const { found } = boardGround.value
  if (found === null) return null
  return (
    <Fold title={say.source}>
      {found.sources.map((part) => (
        <p key={part.id} class="hint">
          {say.sourceText(part.name, metres(part.resolution, units))}
          {part.attribution === '' ? '' : `. ${part.attribution}`}
        </p>
      ))}
      {found.known < 0.9995 ? <p class="hint">{say.covers(share(found.known))}</p> : null}
      <button type="button" class="button button-small ground-sources" onClick={() => (page.value = 'settings')}>
        {say.addSources}
      </button>
    </Fold>
  )
}
