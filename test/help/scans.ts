/** Scans for tests: small asks about a plan, and the same scan by brute force, an assessment for every single combination. */
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import { sunAt } from '#core/light/sky.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { planOf } from '#core/plan/plan.ts'
import { NO_DEMANDS, type ScanWishes } from '#core/record/scan-wishes.ts'
import { skylinesToward } from '#core/plan/plan-skylines.ts'
import type { Spot } from '#core/record/spot.ts'
import { standForFill } from '#core/plan/stand.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Upright } from '#core/scene/landmark.ts'
import { type MeasuredDemand, measureDemands } from '#core/scan/demands.ts'
import type { ScanRequest, ScanSteps } from '#core/scan/scan-request.ts'
import { scanPlaces } from '#core/scan/scan-places.ts'
import { fillSamples, focalSamples, heightSamples, instantSamples, placementSamples } from '#core/scan/scan-samples.ts'
import { meets, scoreOf } from '#core/scan/score.ts'
import { type PlanParts, ZOOM, examplePlan } from './plans.ts'

export const CENTRE: LatLon = { lat: 46.9, lon: 10.3 }

export const NOTHING_WISHED: ScanWishes = {
  ...NO_DEMANDS,
  lensHeight: { least: 1, most: 1.5 },
  days: null,
  hours: null,
}

export const MUST = { must: true, weight: 3 } as const
export const WISH = { must: false, weight: 3 } as const

/** Musts on both fills and the landmark whole. */
export const MUST_FILLS = {
  subjectFill: { ...MUST, axis: 'width', least: 0.3, most: 0.5 },
  landmarkFill: { ...MUST, axis: 'height', least: 0.1, most: 0.3 },
  landmarkWhole: { ...MUST, crops: false },
} as const

/** A second zoom, where the first one ends. */
export const LONG_ZOOM = { ...ZOOM, id: 'long', focalMin: 70, focalMax: 200, closestFocus: 1.1 }

export const FEW_STEPS: ScanSteps = {
  place: 40,
  heading: 90,
  bearing: 30,
  focalLengths: 2,
  fills: 2,
  heights: 2,
  days: 2,
  minutes: 120,
}

/** A tower of 60 m whose foot is at 0 m, so many metres from the middle toward a bearing. */
export function towerAt(bearing: number, distance: number, part: Partial<Upright> = {}): Upright {
  const at = destination(CENTRE, bearing, distance)
  return {
    id: 'tower',
    name: 'Tower',
    kind: 'upright',
    at,
    height: 60,
    width: 10,
    baseElevation: 0,
    baseSlope: null,
    baseAspect: null,
    ...part,
  }
}

/** A straight line through the middle, so many metres to both sides, that leads toward a bearing. */
export function lineThrough(bearing: number, half: number, part: Partial<StoppingGround> = {}): StoppingGround {
  const points = [destination(CENTRE, bearing + 180, half), destination(CENTRE, bearing, half)]
  return { id: 'line', name: 'Line', form: 'line', turn: 'either-way', points, ...part }
}

export interface AskParts extends PlanParts {
  readonly wishes?: Partial<ScanWishes>
  readonly ground?: readonly StoppingGround[]
  readonly steps?: Partial<ScanSteps>
  readonly terrain?: ElevationGrid | null
  readonly parkings?: readonly LatLon[]
}

/** A scan over a line of 160 m square to the way to a tower in the north. */
export function requestOf(parts: AskParts = {}): ScanRequest {
  const plan = examplePlan({
    at: CENTRE,
    landmark: towerAt(0, 500),
    ...parts,
    shoot: {
      stoppingGround: parts.ground ?? [lineThrough(90, 80)],
      scanWishes: { ...NOTHING_WISHED, ...parts.wishes },
      ...parts.shoot,
    },
  })
  return {
    shoot: plan.shoot,
    spot: plan.spot,
    terrain: parts.terrain ?? null,
    pins: [],
    zone: 'Europe/Berlin',
    parkings: parts.parkings ?? [],
    steps: { ...FEW_STEPS, ...parts.steps },
  }
}

export interface Brute {
  readonly place: number
  readonly heading: number
  readonly bearing: number
  readonly lensId: string
  readonly spot: Spot
  readonly score: number
  readonly measured: readonly MeasuredDemand[]
}

/** Every sampled combination by itself: stood by the board's own solver, assessed, measured; those that meet all musts. */
export function byBruteForce(
  request: ScanRequest,
  mayStand: (stop: LatLon, camera: LatLon) => boolean = () => true,
): Brute[] {
  const { shoot, terrain, steps } = request
  const landmark = shoot.landmarks[0]
  const found: Brute[] = []
  for (const place of scanPlaces(request)) {
    const away =
      landmark?.kind === 'upright' && request.spot.landmarkId !== null
        ? (geodesicLine(place.at, landmark.at).bearing ?? 0) + 180
        : 0
    for (const heading of place.headings)
      for (let turn = 0; turn < 360; turn += steps.bearing)
        for (const { lens, focalLength } of focalSamples(shoot.bag.lenses, steps.focalLengths))
          for (const placement of placementSamples(request))
            for (const lensHeight of heightSamples(shoot.scanWishes, steps.heights))
              for (const subjectFill of fillSamples(request)) {
                const bearing = away + turn
                const spot: Spot = {
                  ...request.spot,
                  stop: { at: place.at, heading, elevation: null, slope: null, aspect: null },
                  standpoint: {
                    at: destination(place.at, bearing, 20),
                    lensHeight,
                    elevation: null,
                    slope: null,
                    aspect: null,
                  },
                  hold: 'focal-length',
                  shot: { ...request.spot.shot, focalLength, lensId: lens.id, placement, subjectFill },
                }
                const stood = standForFill(planOf(shoot, spot, terrain))
                if (!stood.ok || !mayStand(place.at, stood.value.standpoint.at)) continue
                for (const when of instantSamples(request)) {
                  const judged = judgedBy(request, { ...stood.value, when })
                  if (judged !== null) found.push({ place: place.index, heading, bearing, lensId: lens.id, ...judged })
                }
              }
  }
  return found
}

/** Null for a spot that misses a must or is no picture. */
export function judgedBy(
  request: ScanRequest,
  spot: Spot,
): { readonly spot: Spot; readonly score: number; readonly measured: readonly MeasuredDemand[] } | null {
  const plan = planOf(request.shoot, spot, request.terrain)
  const found = assess(plan)
  const { subject, subjectExtent, landmark, landmarkExtent } = found
  if (subject === null || !subject.whole || found.problems.includes('focus-too-near')) return null
  const before =
    landmark !== null &&
    landmark.inFrame &&
    landmarkExtent !== null &&
    !landmarkExtent.partlyBehind &&
    (landmarkExtent.near + landmarkExtent.far) / 2 < (subjectExtent?.near ?? 0)
  if (before) return null
  const { azimuth } = sunAt(spot.stop.at, spot.when)
  const scene = lightSceneOf(plan, found, skylinesToward(plan, found.levels, azimuth))
  const measured = measureDemands(plan, found, scene, request.parkings, request.zone)
  if (measured.some(({ must, margin }) => must && !meets(margin))) return null
  return { spot, score: scoreOf(measured), measured }
}
