/** The ground seen, in bands of distance: how high in each direction all ground within a distance reaches, and where it is water. */
import { curvatureDrop, horizonDistance } from '#core/geo/curvature-and-refraction.ts'
import { type SeenGround, pointsWithin, slopeWithin } from '#core/ground/seen-ground.ts'
import type { GroundLooks } from './ground-looks.ts'

/** Metres to which the bands reach; the last has what is left, and the level beyond the elevations. */
export const REACHES: readonly number[] = [60, 120, 240, 480, 960, 1_920, 3_840, 7_680, Infinity]

/** Slopes between which water is seen, metres up by metre along. */
interface Water {
  readonly low: number
  readonly high: number
}

export interface GroundBand {
  readonly reach: number
  /** Metres, about: by which its haze and softness are told. */
  readonly distance: number
  /** Slope, for every look, that ground within the reach covers what lies behind up to. */
  readonly tops: readonly number[]
  /** The water of this band alone. */
  readonly water: readonly (Water | null)[]
}

/** The ground that camera and subject stand on. */
export interface Footing {
  /** Metres of the lens over its ground, which is level where none is known. */
  readonly below: number
  /** Metres to the subject's far side, and the slope there of the ground that carries it: however coarse the elevations, it is seen. */
  readonly carries: number
  readonly slope: number
}

/** What the picture goes on with where no ground is known. */
interface Beyond {
  readonly footing: Footing
  /** Slope of the open sea at a distance, no farther than its horizon. */
  readonly sea: (distance: number) => number
}

/** Slope of the open sea at a distance, no farther than its horizon. */
export function seaSlope({ elevation, refraction }: GroundLooks, distance: number): number {
  const at = Math.min(distance, horizonDistance(elevation, refraction))
  return at > 0 ? -(elevation + curvatureDrop(at, refraction)) / at : 0
}

/** Up to which ground no farther than a distance covers what stands there, that under the subject with it. */
export function coverWithin(seen: SeenGround, distance: number, { carries, slope }: Footing): number {
  const covers = slopeWithin(seen, distance)
  return distance > carries ? Math.max(covers, slope) : covers
}

function endsInWater({ water }: SeenGround): boolean {
  return water[water.length - 1] === 1
}

/** Beyond the elevations water goes on to its horizon, and all other ground to the level one. */
function topOf(seen: SeenGround, reach: number, { footing, sea }: Beyond): number {
  const { distances } = seen
  const read = distances.length === 0 || reach < (distances[0] ?? 0) ? -footing.below / reach : slopeWithin(seen, reach)
  const known = Math.max(read, footing.slope)
  if (reach < (distances.at(-1) ?? 0)) return known
  if (endsInWater(seen)) return Math.max(known, sea(reach))
  return reach === Infinity ? Math.max(known, 0) : known
}

/** The water of a band: its points from one number to another, and as far up as it goes on between the last and the next. */
function waterOf(seen: SeenGround, from: number, to: number, top: number, under: number): Water | null {
  const { water, slopes, edges } = seen
  let [first, last] = [-1, -1]
  for (let at = from; at < to; at++) {
    if (water[at] === 0) continue
    if (first < 0) first = at
    last = at
  }
  const count = water.length
  const goesOn = to > 0 && water[to - 1] === 1 && (to === count || (water[to] === 1 && edges[to - 1] === 0))
  if (first < 0 && !goesOn) return null
  // Up from the ground before it, or from what the band before has of it.
  const low = first > from ? (slopes[first - 1] as number) : under
  return { low, high: goesOn ? top : (slopes[last] as number) }
}

function distanceOf(band: number, looks: readonly SeenGround[], counts: readonly number[]): number {
  if (band > 0) return Math.min(REACHES[band] ?? Infinity, 15_000) / Math.SQRT2
  // The nearest ends where the ground drops out of view, which may be close.
  const ends = looks.map((seen, index) => seen.distances[(counts[index] ?? 0) - 1] ?? REACHES[0] ?? 0)
  return ends.reduce((sum, end) => sum + end, 0) / ends.length
}

/** From the nearest to the farthest. */
export function groundBands(ground: GroundLooks, footing: Footing): GroundBand[] {
  const { looks } = ground
  const unknown: Beyond = { footing, sea: (distance) => seaSlope(ground, distance) }
  let before = looks.map(() => 0)
  let under = looks.map(() => -1)
  return REACHES.map((reach, band) => {
    const counts = looks.map((seen) => pointsWithin(seen, reach))
    const tops = looks.map((seen) => topOf(seen, reach, unknown))
    const water = looks.map((seen, index) =>
      waterOf(seen, before[index] ?? 0, counts[index] ?? 0, tops[index] ?? 0, under[index] ?? -1),
    )
    before = counts
    under = tops
    return { reach, distance: distanceOf(band, looks, counts), tops, water }
  })
}
