/** A look around from one eye: what it knows of the ground, and what it has found so far in the direction in hand. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature.ts'
import { type BlockMaxima, maximaOf } from './block-maxima.ts'
import { type ElevationGrid, elevationAt } from './elevation-grid.ts'
import { type Crossings, roomForCrossings } from './grid-line.ts'
import type { Raised } from './sight.ts'
import { type TrueAxes, trueAxesAt } from './true-north.ts'

/** Changed by every `lookTowards`: it holds the answers for the azimuth looked at last. */
export interface Look {
  /** Degrees above the level at which the highest ground appears; NaN where no ground is known. */
  altitude: number
  /** Metres to it. */
  distance: number
  /** Whether unknown ground lies within the grid in that direction. */
  unknown: boolean
  /** Steepest rise so far of the azimuth in hand, metres by metre. */
  steepest: number
  /** The fine strip already looked at, -1 for none. */
  tried: number
  readonly grid: ElevationGrid
  readonly eye: Raised
  readonly maxima: BlockMaxima
  readonly axes: TrueAxes
  readonly crossings: Crossings
  /** Metres by square metre that the ground sinks below the level, refraction taken off. */
  readonly curve: number
  /** Metres above the sea under the eye, and of the highest ground of the grid. */
  readonly ground: number
  readonly top: number
}

const FINE_CELLS = 8

export function lookFrom(grid: ElevationGrid, eye: Raised, refraction: number): Look {
  const maxima = maximaOf(grid)
  return {
    altitude: Number.NaN,
    distance: Number.NaN,
    unknown: false,
    steepest: -Infinity,
    tried: -1,
    grid,
    eye,
    maxima,
    axes: trueAxesAt(grid, eye),
    crossings: roomForCrossings(FINE_CELLS),
    curve: (1 - refraction) / (2 * MEAN_EARTH_RADIUS),
    ground: elevationAt(grid, eye.east, eye.north) ?? Number.NaN,
    top: maxima.coarse.heights.reduce((one, other) => Math.max(one, other), -Infinity),
  }
}

/** Whether ground no higher than `highest` between two distances could stand above what was found so far. */
export function couldRise(look: Look, highest: number, near: number, far: number): boolean {
  const rise = highest - look.eye.elevation
  const needed = look.steepest + look.curve * near
  // Multiplied, since a division costs as much as all the rest; what lies below the eye looks least steep from afar.
  return rise < 0 ? needed < 0 && rise > needed * far : near <= 0 || rise > needed * near
}
