/** The scan's musts as conditions: each measured as the scan measures it, and told how it fails. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Plan } from '#core/plan/plan.ts'
import { NO_DEMANDS, SCAN_WISH_KINDS, USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import type { Zone } from '#core/time/civil.ts'
import type { Condition, DemandCondition, How } from './condition.ts'
import { LANDMARK_DEMANDS, measureDemands } from '#core/scan/demands.ts'
import { cutOf } from './picture-condition.ts'
import { meets } from '#core/scan/score.ts'
import type { PlacedPlan } from './placed-plan.ts'

/** A must as every shoot begins with it is nobody's own before there is ground to scan. */
function isUsual({ shoot }: Plan, kind: DemandCondition): boolean {
  const [own, usual] = [shoot.scanWishes[kind], USUAL_SCAN_WISHES[kind]]
  return shoot.stoppingGround.length === 0 && JSON.stringify(own) === JSON.stringify(usual)
}

/**
 * The musts that are conditions of their own. The light is asked wish by wish; a landmark whole in the frame alone is asked of
 * every picture; what the ground shows can't be asked where no elevations are; and without a landmark nothing is asked of it.
 */
function mustsOf(plan: Plan, elevations: boolean): DemandCondition[] {
  const wishes = plan.shoot.scanWishes
  return SCAN_WISH_KINDS.filter((kind): kind is DemandCondition => {
    if (kind === 'light' || wishes[kind]?.must !== true || isUsual(plan, kind)) return false
    if (LANDMARK_DEMANDS.has(kind) && plan.landmark === null) return false
    if (kind === 'landmarkWhole') return wishes.landmarkWhole?.crops === true
    return kind !== 'landmarkShown' || elevations
  })
}

/** The side at which the landmark is cut the most in any crop of the frame as it is held. */
function cutInCrops({ plan, found }: PlacedPlan): How {
  if (found.landmark === null) return 'behind-camera'
  const { orientation } = plan.spot.shot
  const framings = found.crops.flatMap((crop) =>
    crop.orientation === orientation && crop.landmark !== null ? [crop.landmark] : [],
  )
  return (
    [found.landmark, ...framings].reduce<How | null>((how, framing) => how ?? cutOf(framing), null) ?? 'behind-camera'
  )
}

function howOf(kind: DemandCondition, value: number | null, placed: PlacedPlan): How {
  if (placed.found.view === null) return 'nothing-framed'
  if (kind === 'landmarkWhole') return cutInCrops(placed)
  if (kind === 'landmarkShown') return value === null ? 'ground-unknown' : 'hidden'
  if (kind === 'parking') return value === null ? 'no-parking' : 'too-much'
  if (value === null) return 'behind-camera'
  if (kind === 'landmarkPlace') return 'misplaced'
  const band = placed.plan.shoot.scanWishes[kind]
  if (band !== null && value < band.least) return 'too-little'
  // A landmark of the right size may still have left the frame.
  return band !== null && value > band.most ? 'too-much' : 'not-seen'
}

function demandCondition(kind: DemandCondition, parkings: readonly LatLon[], zone: Zone): Condition {
  return {
    kind,
    fails: (placed) => {
      const { plan, found } = placed
      const wishes = plan.shoot.scanWishes
      const alone = {
        ...plan,
        shoot: { ...plan.shoot, scanWishes: { ...wishes, ...NO_DEMANDS, [kind]: wishes[kind] } },
      }
      const [met] = measureDemands(alone, found, placed.scene(), parkings, zone)
      return met === undefined || meets(met.margin) ? null : howOf(kind, met.value, placed)
    },
  }
}

export function demandConditions(plan: Plan, parkings: readonly LatLon[], zone: Zone): Condition[] {
  return mustsOf(plan, plan.terrain !== null).map((kind) => demandCondition(kind, parkings, zone))
}
