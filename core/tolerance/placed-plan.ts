/** An arrangement as it stands after a move: what the conditions are asked of, without what none of them asks. */
import type { LightScene } from '#core/light/light-scene.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { groundReading } from '#core/plan/ground-reading.ts'
import { type Levels, type Plan, levelsOf } from '#core/plan/plan.ts'
import { keptWith } from '#core/kept-with.ts'

export interface PlacedPlan {
  readonly plan: Plan
  /** Its light, but for the scene, is read as over level ground: the skylines toward sun and moon would cost more than all the rest. */
  readonly found: Assessment
  /** Worked out when first asked for. */
  readonly scene: () => LightScene
}

/** The same plan with its levels written out and its elevations put away. */
function levelled(plan: Plan, levels: Levels): Plan {
  const { spot, landmark } = plan
  const known = (of: 'standpoint' | 'stop'): number | null => (levels.from[of] === 'assumed' ? null : levels[of])
  return {
    ...plan,
    terrain: null,
    landmark:
      landmark === null || levels.from.landmark !== 'elevations' ? landmark : standing(landmark, levels.landmark),
    spot: {
      ...spot,
      stop: { ...spot.stop, elevation: known('stop') },
      standpoint: { ...spot.standpoint, elevation: known('standpoint') },
    },
  }
}

/** The landmark at its level; the same object each time, since its faces are kept by it. */
const standing = keptWith((landmark: NonNullable<Plan['landmark']>, level: number) => ({
  ...landmark,
  baseElevation: level,
}))

export function placedPlan(plan: Plan, lightSceneOf: (plan: Plan, found: Assessment) => LightScene): PlacedPlan {
  const levels = levelsOf(plan)
  const flat = plan.terrain === null ? plan : levelled(plan, levels)
  const bare = assess(flat)
  const found = plan.terrain === null ? bare : { ...bare, ground: groundReading(plan, levels) }
  let scene: LightScene | null = null
  return { plan, found, scene: () => (scene ??= lightSceneOf({ ...flat, terrain: plan.terrain }, found)) }
}
