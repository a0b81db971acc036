/** A look around from one eye: what it knows of the ground, and what it has found so far in the direction in hand. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { type BlockMaxima, maximaOf } from './block-maxima.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import { type Crossings, type GridLine, roomForCrossings } from './grid-line.ts'
import { ringsOf } from './rings.ts'
import type { Raised } from './sight.ts'
import { type TrueAxes, trueAxesAt } from './true-north.ts'

/** Unknown ground from a distance on, and the steepest that it could rise. */
export interface GroundDoubt {
  readonly slope: number
  readonly at: number
}

/** Changed by every `lookTowards`: it holds the answers for the azimuth looked at last. */
export interface Look {
  /** Degrees above the level at which the highest ground appears; the sea's horizon at the least. NaN where nothing at all is known. */
  altitude: number
  /** Metres to it. */
  distance: number
  /** Metres to the nearest unknown ground that could stand above it; NaN where none could. */
  unknown: number
  /** Steepest rise so far of the azimuth in hand, metres by metre. */
  steepest: number
  /** The fine strip already looked at, -1 for none, and the stretch that it belongs to. */
  tried: number
  triedOn: GridLine | null
  doubts: GroundDoubt[]
  /** True once unknown ground has been met that could be the highest on earth: none farther off could rise steeper. */
  certainDoubt: boolean
  /** Block maxima of the stretch in hand. */
  maxima: BlockMaxima
  readonly grid: ElevationGrid
  readonly eye: Raised
  readonly axes: TrueAxes
  readonly crossings: Crossings
  /** Metres by square metre that the ground sinks below the level, refraction taken off. */
  readonly curve: number
  /** Metres above the sea under the eye. */
  readonly ground: number
  /** Metres of the eye above the lowest that it could look over: the sea, or known ground that lies deeper. */
  readonly aboveLowest: number
}

const FINE_CELLS = 8

export function lookFrom(grid: ElevationGrid, eye: Raised, refraction: number): Look {
  const lowest = ringsOf(grid).reduce((least, ring) => Math.min(least, maximaOf(ring).bottom), 0)
  return {
    altitude: Number.NaN,
    distance: Number.NaN,
    unknown: Number.NaN,
    steepest: -Infinity,
    tried: -1,
    triedOn: null,
    doubts: [],
    certainDoubt: false,
    maxima: maximaOf(grid),
    grid,
    eye,
    axes: trueAxesAt(grid, eye),
    crossings: roomForCrossings(FINE_CELLS),
    curve: (1 - refraction) / (2 * MEAN_EARTH_RADIUS),
    ground: elevationAt(grid, eye.east, eye.north) ?? Number.NaN,
    aboveLowest: Math.max(0, eye.elevation - lowest),
  }
}

/** Whether ground no higher than `highest` between two distances could stand above what was found so far. */
export function couldRise(look: Look, highest: number, near: number, far: number): boolean {
  const rise = highest - look.eye.elevation
  const needed = look.steepest + look.curve * near
  // Multiplied, since a division costs as much as all the rest; what lies below the eye looks least steep from afar.
  return rise < 0 ? needed < 0 && rise > needed * far : near <= 0 || rise > needed * near
}
