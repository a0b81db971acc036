/** Every answer in one line: its figure, a few words beside it, and what is wrong with it if anything is. */
import type { DayLight } from '#core/plan/day-light.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { LightReading } from '#core/plan/light-reading.ts'
import { bearingOfStandpoint } from '#core/plan/stand.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import type { Spot } from '#core/record/spot.ts'
import type { PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { tightest } from '#core/tolerance/tolerance.ts'
import { type Zone, formatClock } from '#core/time/civil.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { LEAST_CUT } from '#core/frame/framing.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { glanceWords as say } from '#renderer/words/en-glance.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { words } from '#renderer/words/en.ts'
import { aperture, bearing, metres, millimetres } from './figure.ts'
import { shownFigure } from './ground-text.ts'
import { shortSpanText } from './light-text.ts'
import { lensTaken, spotName } from './names.ts'
import { type ProblemPlace, problemsOf } from './problem-text.ts'
import { offsetText } from './tolerance-text.ts'

/** One answer in its line. */
export interface AnswerGlance {
  readonly figure: string
  readonly note: string
  /** A word or two for what is wrong, in place of the note; empty where the figure says it; null when nothing is. */
  readonly wrong: string | null
}

function fine(figure: string, note = ''): AnswerGlance {
  return { figure, note, wrong: null }
}

function firstWrong(found: Assessment, place: ProblemPlace): string | null {
  for (const problem of problemsOf(found, place)) {
    const word = say.wrong[problem]
    if (word !== null) return word
  }
  return null
}

/** The subject is meant to be whole; a landmark may run out of the frame. */
function frameWrong({ subject }: Assessment): string | null {
  if (subject === null) return null
  const { inFrame, cutLeft, cutRight, cutTop, cutBottom } = subject
  if (!inFrame) return say.notInFrame
  return Math.max(cutLeft, cutRight, cutTop, cutBottom) >= LEAST_CUT ? say.cut : null
}

export function lensGlance(plan: Plan, found: Assessment): AnswerGlance {
  return {
    figure: found.focalLength === null ? say.unknown : millimetres(found.focalLength),
    note: lensTaken(plan.shoot.bag.lenses, found.lens) ?? '',
    wrong: firstWrong(found, 'lens') ?? frameWrong(found),
  }
}

export function sharpGlance(found: Assessment, units: UnitSystem): AnswerGlance {
  const { sharp } = found
  if (sharp === null) return { ...fine(say.unknown), wrong: firstWrong(found, 'sharp') }
  const { near, far } = sharp.limits
  return {
    figure: aperture(sharp.used.mark),
    note: far === null ? say.beyond(metres(near, units)) : say.depth(metres(near, units), metres(far, units)),
    wrong: firstWrong(found, 'sharp'),
  }
}

/** "now raking from front left". */
function nowText(light: LightReading): string {
  if (!light.sun.up) return say.nowDown
  const { main } = light.subject
  if (light.from === null || main === null) return ''
  const struck = lightWords.strikes[main.strike]
  if (main.strike === 'in-shade') return say.now(struck)
  const { side, hand } = light.from
  return say.now(`${struck} ${say.from[side](hand === null ? null : lightWords.hands[hand])}`)
}

export function lightGlance(plan: Plan, found: Assessment, today: DayLight | null, zone: Zone): AnswerGlance {
  const note = nowText(found.light)
  if (today === null) return fine(say.unknown, note)
  if (wishesMade(plan.shoot.light).length === 0) return fine(formatClock(plan.spot.when, zone), note)
  const [first] = today.windows.common
  return first === undefined
    ? { figure: say.never, note, wrong: say.neverToday }
    : fine(shortSpanText(first, today.zone), note)
}

export function groundGlance(plan: Plan, found: Assessment, settled: boolean, units: UnitSystem): AnswerGlance {
  if (found.ground === null) return fine(say.unknown, settled ? say.levelGround : say.waiting)
  if (plan.landmark === null) return fine(say.unknown, say.noLandmark)
  const { landmarkShown } = found.ground
  if (landmarkShown === null) return fine(say.unknown, say.levelGround)
  const figure = say.shows(shownFigure(landmarkShown))
  const by = found.ground.toLandmark?.hiddenBy ?? null
  const note = landmarkShown >= 0.9995 ? '' : by === null ? say.restHidden : say.hiddenBy(metres(by.distance, units))
  return { figure, note, wrong: landmarkShown <= 0.0005 ? say.hidden : null }
}

/** Of what was worked out last; undefined before anything was. */
export function marginGlance(found: PlanTolerances | null | undefined, units: UnitSystem): AnswerGlance {
  if (found === undefined) return fine(say.unknown, say.working)
  if (found === null) return fine(say.unknown, say.notInFrame)
  if (found.held.length === 0) return { ...fine(say.unknown, say.nothingHeld), wrong: say.fails }
  const [first] = tightest(found.tolerances, 1)
  const wrong = found.failing.length === 0 ? null : say.fails
  if (first === undefined) return { ...fine(say.loose), wrong }
  return { ...fine(offsetText(first.move, first.offset, units), say.ways[first.move]), wrong }
}

export function whereGlance(plan: Plan, found: Assessment, units: UnitSystem): AnswerGlance {
  const away = bearingOfStandpoint(plan)
  return {
    figure: metres(found.toSubject.distance, units),
    note: away === null ? '' : say.apart(bearing(wrapBearing(away + 180))),
    wrong: firstWrong(found, 'where'),
  }
}

export function wayGlance({ access }: Spot): AnswerGlance {
  const { walkMinutes, parking, surface } = access
  const note = surface.trim() === '' ? (parking === null ? '' : say.parked) : surface.trim()
  return walkMinutes === null
    ? fine(note === '' ? say.notNoted : say.unknown, note)
    : fine(say.walk(String(walkMinutes)), note)
}

export function permissionGlance({ permission }: Spot): AnswerGlance {
  const { state, whom } = permission
  return { figure: words.spot.permissions[state], note: whom.trim(), wrong: state === 'refused' ? '' : null }
}

/** So many hazards are named in the line; more are counted. */
const NAMED = 2

export function hazardGlance({ hazards, hazardNote }: Spot): AnswerGlance {
  const all = hazards.map((hazard) => words.spot.hazards[hazard]).join(', ')
  const note = hazardNote.trim()
  if (hazards.length === 0) return fine(say.notNoted, note)
  return hazards.length > NAMED ? fine(say.hazards(hazards.length), note === '' ? all : note) : fine(all, note)
}

export function spotGlance(spot: Spot): AnswerGlance {
  const stars = '★'.repeat(spot.stars)
  return fine(`${words.spot.statuses[spot.status]} ${stars}`.trim(), spotName(spot))
}
