/** How far off it may be, in words: offsets never rounded up, and a sentence for each way in which something fails. */
import { exhaustive } from '#core/exhaustive.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type ConditionKind, type Cut, type Failing, type How, cutSides } from '#core/tolerance/condition.ts'
import { type Move, unitOf } from '#core/tolerance/moves.ts'
import type { Tight, Tolerance } from '#core/tolerance/tolerance.ts'
import { METRES_PER_FOOT, METRES_PER_INCH, type UnitSystem } from '#core/units/length.ts'
import { degreesText, metres } from './figure.ts'
import { landmarkName, subjectName } from './names.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'

const say = toleranceWords

/** A hair above a step counts as the step: 0.43 may stand as 0.4299999. */
const HAIR = 1e-9

function floored(value: number, step: number): number {
  return Math.floor(value / step + HAIR) * step
}

/** A length that is not exceeded: down to the last digit that will be shown, as renderer/text/figure.ts shows them. */
function lengthText(value: number, units: UnitSystem): string {
  const inches = units === 'imperial' && value < METRES_PER_FOOT
  const unit = units === 'metric' ? 1 : inches ? METRES_PER_INCH : METRES_PER_FOOT
  const size = value / unit
  const digit = size >= 100 ? 1 : size >= 10 || inches ? 0.1 : 0.01
  const held = floored(value, digit * unit)
  return held === 0 ? say.atOnce : metres(held, units)
}

function durationText(seconds: number): string {
  if (seconds < 1) return say.atOnce
  if (seconds < 120) return say.seconds(String(Math.floor(seconds)))
  const minutes = Math.floor(seconds / 60)
  if (minutes < 60) return say.minutes(String(minutes))
  const [hours, rest] = [String(Math.floor(minutes / 60)), minutes % 60]
  return rest === 0 ? say.wholeHours(hours) : say.hours(hours, String(rest))
}

/** An offset in the unit of its move. */
export function offsetText(move: Move, offset: number, units: UnitSystem): string {
  const unit = unitOf(move)
  if (unit === 'seconds') return durationText(offset)
  if (unit === 'metres') return lengthText(offset, units)
  const held = floored(offset, 0.1)
  return held === 0 ? say.atOnce : degreesText(held)
}

function limitText(move: Move, limit: number, units: UnitSystem): string {
  const unit = unitOf(move)
  if (move === 'lens-lower') return say.all(metres(limit, units))
  if (unit === 'seconds') return say.over(durationText(limit))
  return say.over(unit === 'degrees' ? degreesText(limit, 0) : metres(limit, units))
}

/** What a table says of a tolerance. */
export function toleranceText(move: Move, { offset, limit }: Tolerance, units: UnitSystem): string {
  return offset === null ? limitText(move, limit, units) : offsetText(move, offset, units)
}

function isCut(how: How): how is Cut {
  return cutSides(how) !== null
}

/** Which of the two things a sentence about a condition names. */
function thingOf(kind: ConditionKind): 'subject' | 'landmark' {
  const ofSubject: readonly ConditionKind[] = [
    'subject-whole',
    'sharp',
    'subject-light',
    'subject-sun',
    'subjectFill',
    'subjectView',
  ]
  return ofSubject.includes(kind) ? 'subject' : 'landmark'
}

function bandText(kind: ConditionKind, name: string, tooLittle: boolean): string {
  if (kind === 'subjectView') return tooLittle ? say.fromFront(name) : say.fromRear(name)
  if (kind === 'softness') return tooLittle ? say.tooSharp(name) : say.tooSoft(name)
  if (kind === 'parking') return say.tooFarToPark
  return tooLittle ? say.fillsTooLittle(name) : say.fillsTooMuch(name)
}

/** "Merrin Bridge is cut at the top". */
export function failureText(plan: Plan, { kind, how }: Failing): string {
  const name = thingOf(kind) === 'subject' ? subjectName(plan.shoot.subject) : landmarkName(plan.landmark)
  if (isCut(how)) {
    const cut = say.cut(name, cutSides(how) ?? [])
    return kind === 'landmarkWhole' ? say.inCrop(cut) : cut
  }
  switch (how) {
    case 'nothing-framed':
      return say.nothingFramed
    case 'behind-camera':
      return say.behindCamera(name)
    case 'hidden':
      return kind === 'landmarkShown' ? say.shownTooLittle(name) : say.hidden(name)
    case 'ground-unknown':
      return say.groundUnknown
    case 'not-sharp':
      return say.notSharp(name)
    case 'focus-too-near':
      return say.focusTooNear
    case 'not-seen':
      return say.notSeen(name)
    case 'in-shade':
      return say.inShade(name)
    case 'sun-down':
      return say.sunDown
    case 'behind-ground':
      return kind === 'sun' ? say.sunBehindGround : say.behindGround(name)
    case 'too-square':
      return say.tooSquare(name)
    case 'sunlit':
      return say.sunlit(name)
    case 'not-behind':
      return say.notBehind(name)
    case 'sun-too-low':
      return say.sunTooLow
    case 'sun-too-high':
      return say.sunTooHigh
    case 'sun-in-frame':
      return say.sunInFrame
    case 'sun-out-of-frame':
      return say.sunOutOfFrame
    case 'not-soft':
      return say.notSoft
    case 'moon-down':
      return say.moonDown
    case 'outside-hours':
      return say.outsideHours
    case 'too-little':
      return bandText(kind, name, true)
    case 'too-much':
      return bandText(kind, name, false)
    case 'misplaced':
      return say.misplaced(name)
    case 'no-parking':
      return say.noParking
    default:
      return exhaustive(how)
  }
}

/** "0.43 m with the camera nearer: Cargo bicycle is cut at the bottom." */
export function tightText(plan: Plan, { move, offset, fails }: Tight, units: UnitSystem): string {
  return say.more(offsetText(move, offset, units), say.ways[move], failureText(plan, fails))
}

/** Null when nothing that is asked fails now. */
export function failingText(plan: Plan, failing: readonly Failing[]): string | null {
  return failing.length === 0 ? null : say.failing(failing.map((one) => failureText(plan, one)).join(say.and))
}
