/** The ground seen, in bands of distance: how high in each direction all ground within a distance reaches, and where it is water. */
import { type SeenGround, pointsWithin } from '#core/ground/seen-ground.ts'
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

/** Where no ground is known it goes on level, `below` metres under the lens. */
function levelTop(reach: number, below: number): number {
  return -below / reach
}

function topOf(seen: SeenGround, count: number, reach: number, below: number): number {
  const known = count === 0 ? levelTop(reach, below) : (seen.slopes[count - 1] as number)
  // Beyond the elevations the ground goes on to the level horizon.
  return reach === Infinity ? Math.max(known, 0) : known
}

/** Of the points from one number to another. Water ends where the ground before it does. */
function waterOf(seen: SeenGround, from: number, to: number, top: number): Water | null {
  let [first, last] = [-1, -1]
  for (let at = from; at < to; at++) {
    if (seen.water[at] === 0) continue
    if (first < 0) first = at
    last = at
  }
  const atEnd = seen.water[seen.water.length - 1] === 1 && to === seen.water.length && top === 0
  if (first < 0 && !atEnd) return null
  const before = first < 0 ? to - 1 : first - 1
  const low = before < 0 ? -1 : (seen.slopes[before] as number)
  return { low, high: atEnd ? top : (seen.slopes[last] as number) }
}

function distanceOf(band: number, looks: readonly SeenGround[], counts: readonly number[]): number {
  if (band > 0) return Math.min(REACHES[band] ?? Infinity, 15_000) / Math.SQRT2
  // The nearest ends where the ground drops out of view, which may be close.
  const ends = looks.map((seen, index) => seen.distances[(counts[index] ?? 0) - 1] ?? REACHES[0] ?? 0)
  return ends.reduce((sum, end) => sum + end, 0) / ends.length
}

/** From the nearest to the farthest. `below` is the lens's height over its ground. */
export function groundBands({ looks }: GroundLooks, below: number): GroundBand[] {
  let before = looks.map(() => 0)
  return REACHES.map((reach, band) => {
    const counts = looks.map((seen) => pointsWithin(seen, reach))
    const tops = looks.map((seen, index) => topOf(seen, counts[index] ?? 0, reach, below))
    const water = looks.map((seen, index) => waterOf(seen, before[index] ?? 0, counts[index] ?? 0, tops[index] ?? 0))
    before = counts
    return { reach, distance: distanceOf(band, looks, counts), tops, water }
  })
}
