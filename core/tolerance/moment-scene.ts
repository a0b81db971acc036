/** The light scene of a plan that is moved about at one instant: the ground is looked at toward the sun alone, and again only for an eye that has moved. */
import { type Raised, sameEye } from '#core/ground/sight.ts'
import { LEVEL_HORIZON, type LightScene, type LightSkyline, type PlanSkylines } from '#core/light/light-scene.ts'
import type { SunLook } from '#core/light/wish-margin.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { skylineToward, skyEyes } from '#core/plan/plan-skylines.ts'

/** Makes the scenes of one walk; the refraction and the elevations are the same for all its plans. */
export function momentScenes(sun: SunLook): (plan: Plan, found: Assessment) => LightScene {
  const seen = new Map<keyof PlanSkylines, { readonly eye: Raised | null; readonly skyline: LightSkyline }>()
  return (plan, found) => {
    const grid = plan.terrain
    if (grid === null) return lightSceneOf(plan, found, LEVEL_HORIZON)
    const eyes = skyEyes(plan, found.levels, grid)
    const skyline = (from: keyof PlanSkylines): LightSkyline => {
      const eye = eyes[from]
      const before = seen.get(from)
      if (before !== undefined && sameEye(before.eye, eye)) return before.skyline
      const made = skylineToward(grid, eye, plan.shoot, sun.azimuth)
      seen.set(from, { eye, skyline: made })
      return made
    }
    // The lens looks for the sun only where it is wished in or out of the frame.
    const lens = plan.shoot.light.sun === null ? null : skyline('lens')
    return lightSceneOf(plan, found, { subject: skyline('subject'), landmark: skyline('landmark'), lens })
  }
}
