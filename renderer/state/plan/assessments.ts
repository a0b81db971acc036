/** Assessments of spots wherever they are shown: each worked out once for as long as what it goes by stays the same, a name or a note not among it. */
import type { PlanSkylines } from '#core/light/light-scene.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { type DayLight, lightOfDay, lightSceneOf } from '#core/plan/day-light.ts'
import { type GroundProfile, groundProfile } from '#core/plan/ground-profile.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { skylinesOf } from '#core/plan/plan-skylines.ts'
import type { Spot } from '#core/record/spot.ts'
import { type Zone, civilDayOf } from '#core/time/civil.ts'
import { assessment as boardAssessment, plan as boardPlan } from './board-plan.ts'
import { pinPlaces, pinsAtHand } from './pin-heights.ts'
import { sameParts } from '#renderer/job/same-parts.ts'
import { statesOfSpots } from './states-of-spots.ts'
import { terrainAtHand } from './terrain.ts'

/** What an assessment does not go by: whatever else a record holds, it may. The landmark looked at is a part of the plan itself. */
export const BESIDE_SPOT: ReadonlySet<string> = new Set<keyof Spot>([
  'id',
  'shootId',
  'revision',
  'name',
  'notes',
  'stars',
  'status',
  'rank',
  'landmarkId',
  'access',
  'permission',
  'hazards',
  'hazardNote',
])
export const BESIDE_SHOOT: ReadonlySet<string> = new Set<keyof Shoot>([
  'id',
  'revision',
  'name',
  'landmarks',
  'zone',
  'stoppingGround',
  'keepOuts',
  'scanWishes',
  'madeAt',
])

function partsOf(record: object, beside: ReadonlySet<string>): readonly unknown[] {
  return Object.entries(record).flatMap(([name, part]) => (beside.has(name) ? [] : [part]))
}

/** All that a plan's assessment goes by, by identity: an edit of one thing leaves the others as they were. */
export function planParts({ shoot, spot, pins, ...others }: Plan): readonly unknown[] {
  return [...partsOf(spot, BESIDE_SPOT), ...partsOf(shoot, BESIDE_SHOOT), ...Object.values(others), ...pins]
}

interface Known {
  readonly parts: readonly unknown[]
  readonly found: Assessment
  skylines: { readonly around: PlanSkylines | null } | null
  light: { readonly zone: Zone; readonly day: DayLight } | null
  line: { readonly profile: GroundProfile | null } | null
}

const states = statesOfSpots<Known>()

function stateOf(plan: Plan): Known {
  const parts = planParts(plan)
  const before = states.find(plan.spot, parts)
  if (before !== null) return before
  const made: Known = { parts, found: boardsOwn(parts) ?? assess(plan), skylines: null, light: null, line: null }
  states.keep(plan.spot, made)
  return made
}

/** What is on the board is assessed there already. */
function boardsOwn(parts: readonly unknown[]): Assessment | null {
  const [plan, found] = [boardPlan.peek(), boardAssessment.peek()]
  return plan !== null && sameParts(planParts(plan), parts) ? found : null
}

/** The plan of a spot that is not on the board, over the ground that is at hand. */
export function planAtHand(shoot: Shoot, spot: Spot): Plan {
  const flat = planOf(shoot, spot)
  return {
    ...flat,
    terrain: terrainAtHand(spot.stop.at, flat.landmark),
    pins: pinsAtHand(pinPlaces(shoot, spot)),
  }
}

export function assessmentOf(plan: Plan): Assessment {
  return stateOf(plan).found
}

/** The skylines around a plan's things; null without elevations. */
export function keptSkylinesOf(plan: Plan): PlanSkylines | null {
  const state = stateOf(plan)
  state.skylines ??= { around: skylinesOf(plan) }
  return state.skylines.around
}

/** The light of the spot's own day. */
export function daylightOf(plan: Plan, zone: Zone): DayLight {
  const state = stateOf(plan)
  if (state.light?.zone !== zone) {
    const scene = lightSceneOf(plan, state.found, keptSkylinesOf(plan))
    state.light = { zone, day: lightOfDay(scene, plan.shoot.light, civilDayOf(plan.spot.when, zone), zone) }
  }
  return state.light.day
}

/** The ground on the way to the landmark; null without elevations or landmark. */
export function groundLineOf(plan: Plan): GroundProfile | null {
  const state = stateOf(plan)
  state.line ??= { profile: groundProfile(plan, state.found.levels) }
  return state.line.profile
}
