/** Trees and walls in the picture: strips of their height at their true place, as far as the ground before them lets them show. */
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { type ElevationGrid, type GridPoint, elevationAt } from '#core/ground/elevation-grid.ts'
import { AT_END } from '#core/ground/grid-line.ts'
import {
  type PlacedObstruction,
  type Obstruction,
  placedObstructions,
  shareOfCrossing,
} from '#core/ground/obstruction.ts'
import type { SeenGround } from '#core/ground/seen-ground.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type TrueAxes, alongBearing, bearingAlong, trueAxesAt } from '#core/ground/true-north.ts'
import { turnBetween } from '#core/units/angle.ts'
import type { ImagePoint } from './clip.ts'
import { type Footing, coverWithin } from './ground-bands.ts'
import { type LookStand, lookPlace } from './look-place.ts'
import { outlinePath } from './pen.ts'

export interface ObstructionStrip {
  /** Metres, in the mean. */
  readonly distance: number
  /** Units of softness. */
  readonly deviation: number
  readonly path: string
}

/** Each from far to near. */
export interface ObstructionStrips {
  /** Behind the farther of the two things. */
  readonly behind: readonly ObstructionStrip[]
  /** Before that, and behind the nearer. */
  readonly between: readonly ObstructionStrip[]
  /** Before both. */
  readonly before: readonly ObstructionStrip[]
}

export const NO_STRIPS: ObstructionStrips = { behind: [], between: [], before: [] }

export interface StripStand extends LookStand {
  readonly grid: ElevationGrid
  readonly eye: Raised
  readonly footing: Footing
  readonly soft: (distance: number) => number
  /** Metres to the farther and to the nearer thing in every look; null where there is none. */
  readonly farther: readonly number[] | null
  readonly nearer: readonly number[] | null
}

type Where = keyof ObstructionStrips

/** An obstruction where one direction meets it. */
interface Met {
  /** The number of the look, which may lie between two. */
  readonly index: number
  readonly distance: number
  /** Slopes, metres up by metre along, between which it shows. */
  readonly low: number
  readonly high: number
  readonly where: Where
}

/** Looks from one end of a stretch to the other, ends exactly; those of the picture alone. */
function indicesOf(stand: StripStand, axes: TrueAxes, one: GridPoint, other: GridPoint): number[] {
  const { seen, eye } = stand
  const bearingTo = (point: GridPoint): number =>
    bearingAlong(axes, { east: point.east - eye.east, north: point.north - eye.north })
  const start = bearingTo(one)
  const turn = turnBetween(start, bearingTo(other))
  const middle = seen.from + ((seen.looks.length - 1) * seen.step) / 2
  const from = (middle + turnBetween(middle, start) - seen.from) / seen.step
  const span = turn / seen.step
  const around = 360 / seen.step
  const last = seen.looks.length - 1
  // A long stretch near by may come into the picture from behind the lens.
  for (const shift of [0, -around, around]) {
    const low = Math.max(0, Math.min(from, from + span) + shift)
    const high = Math.min(last, Math.max(from, from + span) + shift)
    if (!(high > low)) continue
    const inner = Array.from(
      { length: Math.max(0, Math.ceil(high) - Math.floor(low) - 1) },
      (_, at) => Math.floor(low) + 1 + at,
    )
    return [low, ...inner, high]
  }
  return []
}

/** Where a look between two others has the values of both. */
function atLook(values: readonly number[], index: number): number {
  const before = Math.floor(index)
  const [low = 0, high = low] = [values[before], values[before + 1]]
  return index === before ? low : low + (high - low) * (index - before)
}

/** Slope up to which the ground before a distance covers what stands there. */
function coverAt({ seen, footing }: StripStand, index: number, distance: number): number {
  const cover = (look: SeenGround | undefined): number =>
    look === undefined ? -Infinity : coverWithin(look, distance, footing)
  const before = Math.floor(index)
  const low = cover(seen.looks[before])
  if (index === before) return low
  const high = cover(seen.looks[before + 1])
  return low === -Infinity || high === -Infinity ? Math.max(low, high) : low + (high - low) * (index - before)
}

function whereAt({ farther, nearer }: StripStand, index: number, distance: number): Where {
  if (farther !== null && distance >= atLook(farther, index)) return 'behind'
  return nearer === null || distance >= atLook(nearer, index) ? 'between' : 'before'
}

/** Hair's breadth of a stretch by which a look past its end is brought back to it. */
const BACK = 1e-6

/** Where a look meets a stretch: by the crossing of sightlines, and at an end the end itself. */
function meet(
  stand: StripStand,
  axes: TrueAxes,
  index: number,
  one: GridPoint,
  other: GridPoint,
  height: number,
): Met | null {
  const { grid, eye, seen } = stand
  const way = alongBearing(axes, seen.from + index * seen.step)
  const reach = 2 * Math.max(distanceTo(eye, one), distanceTo(eye, other)) + 1
  const far = { east: eye.east + way.east * reach, north: eye.north + way.north * reach }
  const longer = (from: GridPoint, to: GridPoint): GridPoint => ({
    east: to.east + BACK * (to.east - from.east),
    north: to.north + BACK * (to.north - from.north),
  })
  const share = shareOfCrossing(eye, far, longer(other, one), longer(one, other))
  if (share === null) return null
  const distance = share * Math.hypot(far.east - eye.east, far.north - eye.north)
  if (distance < AT_END * grid.cell) return null
  const ground = elevationAt(
    grid,
    eye.east + share * (far.east - eye.east),
    eye.north + share * (far.north - eye.north),
  )
  if (ground === null) return null
  const curve = ((1 - seen.refraction) / (2 * MEAN_EARTH_RADIUS)) * distance
  const high = (ground + height - eye.elevation) / distance - curve
  const foot = (ground - eye.elevation) / distance - curve
  const low = Math.max(foot, coverAt(stand, index, distance))
  return low < high ? { index, distance, low, high, where: whereAt(stand, index, distance) } : null
}

function distanceTo(eye: Raised, point: GridPoint): number {
  return Math.hypot(point.east - eye.east, point.north - eye.north)
}

/** Neighbours that stand alike before or behind things, as one outline each. */
function runsOf(found: readonly (Met | null)[]): readonly (readonly Met[])[] {
  const runs: Met[][] = []
  let before: Met | null = null
  for (const met of found) {
    if (met !== null) {
      if (before?.where === met.where) runs.at(-1)?.push(met)
      // The one before closes the gap to where it comes before or behind a thing.
      else runs.push(before === null ? [met] : [{ ...before, where: met.where }, met])
    }
    before = met
  }
  return runs
}

function stripOf(stand: StripStand, run: readonly Met[]): ObstructionStrip | null {
  const place = (slope: 'low' | 'high'): ImagePoint[] =>
    run.flatMap((met) => lookPlace(stand, met.index, met[slope]) ?? [])
  const [tops, feet] = [place('high'), place('low')]
  if (tops.length < 2 || tops.length !== feet.length) return null
  const path = outlinePath([...tops, ...feet.toReversed()], stand.sheet)
  if (path === '') return null
  const distance = run.reduce((sum, met) => sum + met.distance, 0) / run.length
  return { distance, deviation: stand.soft(distance), path }
}

/** All that shows of the obstructions. */
export function obstructionStrips(stand: StripStand, obstructions: readonly Obstruction[]): ObstructionStrips {
  if (obstructions.length === 0) return NO_STRIPS
  const axes = trueAxesAt(stand.grid, stand.eye)
  const strips = {
    behind: [] as ObstructionStrip[],
    between: [] as ObstructionStrip[],
    before: [] as ObstructionStrip[],
  }
  const add = ({ corners, height }: PlacedObstruction): void => {
    corners.slice(1).forEach((other, at) => {
      const one = corners[at] ?? other
      const found = indicesOf(stand, axes, one, other).map((index) => meet(stand, axes, index, one, other, height))
      for (const run of runsOf(found)) {
        const strip = stripOf(stand, run)
        const [first] = run
        if (strip !== null && first !== undefined) strips[first.where].push(strip)
      }
    })
  }
  placedObstructions(stand.grid, obstructions).forEach(add)
  const ordered = (group: readonly ObstructionStrip[]): ObstructionStrip[] =>
    group.toSorted((one, other) => other.distance - one.distance)
  return { behind: ordered(strips.behind), between: ordered(strips.between), before: ordered(strips.before) }
}
