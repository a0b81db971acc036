/** Keys that move and turn a thing: arrows by a step, brackets by a degree, each ten times as much with Shift. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, placeUnder, toEarth } from '#core/geo/local-frame.ts'
import { turnSubject } from '#core/plan/arrange.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Grip, type Moved, gripBroughtTo, gripPlace } from '#core/plan/grip.ts'

/** As much of a keyboard event as a step is read from. */
export interface Key {
  readonly key: string
  readonly code: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly altKey: boolean
  readonly metaKey: boolean
}

export type KeyStep =
  /** Metres. */
  | { readonly kind: 'shift'; readonly east: number; readonly north: number }
  /** Degrees, clockwise. */
  | { readonly kind: 'turn'; readonly by: number }

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
}

/** The brackets by what they write, and by their place for layouts that write them with AltGr. */
function turnOf(key: Key): number {
  if (key.key === '[' || key.key === '{' || key.code === 'BracketLeft') return -1
  return key.key === ']' || key.key === '}' || key.code === 'BracketRight' ? 1 : 0
}

/** What a key asks for; null when it is none of ours. `metres` is the step without Shift. */
export function keyStepOf(key: Key, metres: number): KeyStep | null {
  if (key.metaKey || (key.ctrlKey && !key.altKey)) return null
  const size = key.shiftKey ? 10 : 1
  const arrow = ARROWS[key.key]
  if (arrow !== undefined && !key.altKey) {
    return { kind: 'shift', east: arrow[0] * metres * size, north: arrow[1] * metres * size }
  }
  const turn = turnOf(key)
  return turn === 0 ? null : { kind: 'turn', by: turn * size }
}

function shifted(at: LatLon, east: number, north: number): LatLon {
  return placeUnder(toEarth(localFrame(at, 0), east, north, 0))
}

/** The plan after one step of a thing; null when the plan has no such thing or it can't be done to it. */
export function gripStepped(plan: Plan, grip: Grip, step: KeyStep): Moved | null {
  const { shoot, spot } = plan
  if (step.kind === 'turn') {
    const turns = grip.on === 'subject' || grip.on === 'heading' || grip.on === 'pair'
    return turns ? { shoot, spot: turnSubject(plan, spot.stop.heading + step.by) } : null
  }
  if (grip.on === 'heading') {
    // On the notch the sideways arrows turn: it has no place of its own.
    return step.east === 0 ? null : { shoot, spot: turnSubject(plan, spot.stop.heading + Math.sign(step.east)) }
  }
  const at = gripPlace(plan, grip)
  return at === null ? null : gripBroughtTo(plan, grip, shifted(at, step.east, step.north))
}
