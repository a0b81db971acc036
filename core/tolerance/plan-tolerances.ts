/** Tolerances: how far subject, camera, lens and clock may be off before the first thing that holds now no longer does. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { PlanSkylines } from '#core/light/light-scene.ts'
import { hoursSpans } from '#core/light/light-window.ts'
import { type SunLook, lookAtSun } from '#core/light/wish-margin.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { skylinesOf } from '#core/plan/plan-skylines.ts'
import { type Zone, civilDayOf } from '#core/time/civil.ts'
import { clockTolerances } from './clock-tolerance.ts'
import type { Condition, ConditionKind, Failing } from './condition.ts'
import { demandConditions } from './demand-condition.ts'
import { heldPlan } from './held-plan.ts'
import { type LightAsked, lightAsked, lightHow, heldMargin } from './light-condition.ts'
import { momentScenes } from './moment-scene.ts'
import { type MoveLine, PLACE_MOVES, type PlaceMove, moveLine, movedBy, reachOf } from './moves.ts'
import { firstFailure } from './offset-walk.ts'
import { pictureConditions } from './picture-condition.ts'
import { type PlacedPlan, placedPlan } from './placed-plan.ts'
import type { Tolerance, Tolerances } from './tolerance.ts'

export interface ToleranceRequest {
  readonly plan: Plan
  readonly zone: Zone
  /** Parking points of the shoot's spots. */
  readonly parkings: readonly LatLon[]
  /** The skylines around the plan's things, if at hand; null where there are no elevations. */
  readonly skylines?: PlanSkylines | null
}

export interface PlanTolerances {
  /** What holds now and is asked to go on holding. */
  readonly held: readonly ConditionKind[]
  /** What is asked but doesn't hold now, and is therefore left out. */
  readonly failing: readonly Failing[]
  readonly tolerances: Tolerances
}

function lightCondition(asked: LightAsked, instant: number, sun: SunLook): Condition {
  return {
    kind: asked.kind,
    fails: (placed) => {
      const scene = placed.scene()
      return heldMargin(asked, scene, instant, sun) >= 0 ? null : lightHow(asked, scene, sun)
    },
  }
}

/** The first of the conditions that fails at a placed plan. */
export function firstFailing(conditions: readonly Condition[], placed: PlacedPlan): Failing | null {
  for (const { kind, fails } of conditions) {
    const how = fails(placed)
    if (how !== null) return { kind, how }
  }
  return null
}

function toleranceOf(move: PlaceMove, plan: Plan, line: MoveLine, fails: (plan: Plan) => Failing | null): Tolerance {
  const reach = reachOf(move, line, plan)
  const { offset, failure } = firstFailure((by) => fails(movedBy(plan, move, by, line)), reach)
  return { offset, limit: reach.limit, fails: failure }
}

/**
 * In steps of a few milliseconds, one for each way of being off, so that a page can stay at hand meanwhile. Null when nothing is
 * framed to begin with.
 */
export function* toleranceSteps(request: ToleranceRequest): Generator<undefined, PlanTolerances | null> {
  const { zone, parkings } = request
  const { shoot } = request.plan
  const now = assess(request.plan)
  const line = moveLine(request.plan)
  if (now.view === null || line === null) return null
  const whole = shoot.scanWishes.landmarkWhole
  const plan = heldPlan(request.plan, now, whole?.must === true && whole.crops)
  const instant = plan.spot.when
  const sun = lookAtSun(plan.spot.stop.at, instant)
  const scenes = momentScenes(sun)
  const here = placedPlan(plan, scenes)
  const inFrame = here.found.landmark?.inFrame === true ? 'in-frame' : 'out-of-frame'
  const landmark = plan.landmark === null ? 'none' : inFrame
  const light = lightAsked(shoot.light, here.scene(), landmark, instant, sun)
  const conditions = [
    ...pictureConditions(plan, here.found),
    ...demandConditions(plan, parkings, zone),
    ...light.map((asked) => lightCondition(asked, instant, sun)),
  ]
  const failing = conditions.flatMap(({ kind, fails }): Failing[] => {
    const how = fails(here)
    return how === null ? [] : [{ kind, how }]
  })
  const out = new Set(failing.map(({ kind }) => kind))
  const held = conditions.filter(({ kind }) => !out.has(kind))
  yield

  const tolerances: Partial<Record<PlaceMove, Tolerance>> = {}
  for (const move of PLACE_MOVES) {
    tolerances[move] = toleranceOf(move, plan, line, (moved) => firstFailing(held, placedPlan(moved, scenes)))
    yield
  }
  const day = civilDayOf(instant, zone)
  const { hours } = shoot.light
  const hoursHold =
    hours !== null && hoursSpans(hours, day, zone).some((span) => span.from <= instant && instant <= span.until)
  const clock = clockTolerances({
    scene: lightSceneOf(plan, here.found, request.skylines === undefined ? skylinesOf(plan) : request.skylines),
    held: light.filter(({ kind }) => !out.has(kind)),
    hours: hoursHold ? hours : null,
    instant,
    day,
    zone,
  })
  return {
    held: [...held.map(({ kind }) => kind), ...(hoursHold ? (['hours'] as const) : [])],
    failing: [...failing, ...(hours !== null && !hoursHold ? [{ kind: 'hours', how: 'outside-hours' } as const] : [])],
    tolerances: { ...(tolerances as Record<PlaceMove, Tolerance>), ...clock },
  }
}

/** All at once: some tens of milliseconds. */
export function planTolerances(request: ToleranceRequest): PlanTolerances | null {
  const steps = toleranceSteps(request)
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}
