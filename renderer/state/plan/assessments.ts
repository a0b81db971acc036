/** Assessments of spots that are not on the board, each computed once for as long as spot, shoot and the ground at hand stay the same. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import type { PinHeight } from '#core/plan/height-read.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { pinPlaces, pinsAtHand } from './pin-heights.ts'
import { terrainAtHand } from './terrain.ts'

interface Known {
  readonly shoot: Shoot
  readonly terrain: ElevationGrid | null
  readonly pins: readonly PinHeight[]
  readonly found: Assessment
}

const known = new WeakMap<Spot, Known>()

const pinsBefore = new WeakMap<Spot, readonly PinHeight[]>()

/** The same object while the spot's pins stay the same. */
function samePins(spot: Spot, pins: readonly PinHeight[]): readonly PinHeight[] {
  const before = pinsBefore.get(spot)
  if (before?.length === pins.length && before.every((pin, index) => pin === pins[index])) return before
  pinsBefore.set(spot, pins)
  return pins
}

/** The plan of a spot that is not on the board, over the ground that is at hand. */
export function planAtHand(shoot: Shoot, spot: Spot): Plan {
  const flat = planOf(shoot, spot)
  return {
    ...flat,
    terrain: terrainAtHand(spot.stop.at, flat.landmark),
    pins: samePins(spot, pinsAtHand(pinPlaces(shoot, spot))),
  }
}

export function assessmentOf(shoot: Shoot, spot: Spot): Assessment {
  const plan = planAtHand(shoot, spot)
  const before = known.get(spot)
  if (before?.shoot === shoot && before.terrain === plan.terrain && before.pins === plan.pins) return before.found
  const found = assess(plan)
  known.set(spot, { shoot, terrain: plan.terrain, pins: plan.pins, found })
  return found
}
