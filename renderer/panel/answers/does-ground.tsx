/** Does the ground allow it? How much of the landmark shows and what hides the rest, the profile, levels, direct sun, trees and walls. */
import { openPage } from '#renderer/state/session/navigation.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import type { GroundProfile } from '#core/plan/ground-profile.ts'
import type { GroundReading } from '#core/plan/ground-reading.ts'
import type { GroundUnderThings } from '#core/plan/ground-under.ts'
import type { Plan } from '#core/plan/plan.ts'
import { metres, share } from '#renderer/text/figure.ts'
import { AnswerFigure, Fold } from '#renderer/part/question.tsx'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { Warnings } from '#renderer/part/warning.tsx'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { askTerrainAgain, boardGround } from '#renderer/state/plan/terrain.ts'
import { groundWords as say } from '#renderer/words/en-ground.ts'
import { DirectSun } from './direct-sun.tsx'
import {
  clearanceText,
  hiddenSentence,
  lowerLineName,
  shownFigure,
  subjectSightText,
} from '#renderer/text/ground-text.ts'
import { reachText } from '#renderer/text/reach-text.ts'
import { ProfileReader } from './profile.tsx'
import { Obstructions } from './obstructions.tsx'
import { UnderThings, anyMeasured, differences } from './under-things.tsx'

interface AnswerProps {
  readonly plan: Plan
  readonly found: Assessment
  /** The ground on the way to the landmark; null without elevations or landmark. */
  readonly line: GroundProfile | null
  readonly today: DayLight | null
}

export function DoesGround({ plan, found, line, today }: AnswerProps) {
  const { ground } = found
  return (
    <>
      {ground === null ? (
        <NoGround plan={plan} under={found.under} />
      ) : (
        <Allowed plan={plan} ground={ground} under={found.under} line={line} today={today} />
      )}
      <Trouble />
      <Obstructions plan={plan} />
    </>
  )
}

function NoGround({ plan, under }: { readonly plan: Plan; readonly under: GroundUnderThings }) {
  const { settled } = boardGround.value
  if (!settled) return <AnswerFigure figure="–" note={say.waiting} />
  return (
    <>
      <AnswerFigure figure="–" note={say.levelNote} />
      <p class="hint">{say.levelHint}</p>
      {anyMeasured(under) ? <UnderThings plan={plan} under={under} /> : null}
      {plan.shoot.obstructions.length === 0 ? null : <Warnings sentences={[say.obstructionsWait]} />}
      <button type="button" class="button ground-sources" onClick={() => openPage('settings')}>
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

interface AllowedProps extends Pick<AnswerProps, 'plan' | 'line' | 'today'> {
  readonly ground: GroundReading
  readonly under: GroundUnderThings
}

function Allowed({ plan, ground, under, line, today }: AllowedProps) {
  const { units } = settings.value
  const name = landmarkName(plan.landmark)
  const { toLandmark, landmarkShown } = ground
  const sentence = toLandmark === null ? null : hiddenSentence(plan, toLandmark, landmarkShown, units)
  const note =
    plan.landmark === null ? say.noLandmark : landmarkShown === null ? say.unknownNote(name) : say.shows(name)
  const partly = [toLandmark?.ground, ground.toSubject.ground].includes('partly-known')
  return (
    <>
      <AnswerFigure figure={shownFigure(plan.landmark === null ? null : landmarkShown)} note={note} />
      {sentence === null ? null : <p class="ground-sentence">{sentence}</p>}
      {line === null || sentence === null ? null : <ProfileReader line={line} sentence={sentence} />}
      <Warnings sentences={[...(partly ? [say.partlyKnown] : []), ...differences(plan, under, units)]} />
      <Readings>
        {line === null ? null : <Reading name={lowerLineName(plan)} value={clearanceText(plan, line, units)} />}
        <Reading
          name={say.subject(subjectName(plan.shoot.subject))}
          value={subjectSightText(plan, ground.toSubject, units)}
        />
        <Reading name={say.reach.name} value={reachText(ground.reach, units)} />
      </Readings>
      {today === null ? null : <DirectSun plan={plan} today={today} />}
      <UnderThings plan={plan} under={under} />
      <Source />
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
      {found.sea > 0 ? <p class="hint">{say.seaAssumed}</p> : null}
      {found.known < 0.9995 ? <p class="hint">{say.covers(share(found.known))}</p> : null}
      <button type="button" class="button button-small ground-sources" onClick={() => openPage('settings')}>
        {say.addSources}
      </button>
    </Fold>
  )
}
