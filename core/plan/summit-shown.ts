/** A summit as the lens sees it: its upper part is its own ground, which hides nothing of it; where that begins toward the lens. */
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import { type Raised, bulge, sightElevation } from '#core/ground/sight.ts'
import { type Sightline, type UprightTarget, sightline } from '#core/ground/sightline.ts'

/** Of a summit's height the upper tenth counts: its foot is hidden by its own flanks, and from everywhere. */
export const SUMMIT_COUNTS_FROM = 0.9

/** A post whose upper part is the ground itself, out to so many metres. */
export interface SummitPost extends UprightTarget {
  readonly flank: number
}

/** The point toward the eye at which the flank has fallen to the part's lower end, or where the summit's width or half the way ends. */
function flankToward(grid: ElevationGrid, eye: Raised, summit: SummitPost, whole: number): Raised & { away: number } {
  const [east, north] = [(eye.east - summit.east) / whole, (eye.north - summit.north) / whole]
  const groundAt = (away: number): (Raised & { away: number }) | null => {
    const point = { east: summit.east + east * away, north: summit.north + north * away }
    const elevation = elevationAt(grid, point.east, point.north)
    return elevation === null ? null : { ...point, elevation, away }
  }
  const most = Math.min(summit.flank, whole / 2)
  let last = groundAt(0)
  const { low, high } = summit
  // Where all of it is said to stand above its ground, or far beneath, that ground is not the summit's own.
  if (last === null || last.elevation <= low || last.elevation > high + (high - low))
    return { ...summit, elevation: low, away: 0 }
  while (last.away < most) {
    const next = groundAt(Math.min(most, last.away + grid.cell / 2))
    if (next === null) return last
    if (next.elevation <= low) {
      const share = (last.elevation - low) / (last.elevation - next.elevation)
      return groundAt(last.away + share * (next.away - last.away)) ?? last
    }
    last = next
  }
  return last
}

/** Metres of a dome's shoulder that count where it stands above the line to the top. */
const SHOULDER = 1

export interface SummitSight {
  /** As of a post at the summit's own place. */
  readonly sight: Sightline
  /** Metres above the sea at which the lines over both ends of its upper part meet the summit's own upright line. */
  readonly low: number
  readonly high: number
  /** Metres from the eye at which what is looked at begins: the ground beyond is the summit itself. */
  readonly begins: number
}

/** The upper part looked at where it begins toward the eye, by lines that run on to the summit's own upright line. */
export function summitSight(
  grid: ElevationGrid,
  eye: Raised,
  summit: SummitPost,
  refraction: number,
  obstructions: readonly Obstruction[],
): SummitSight {
  const whole = Math.hypot(summit.east - eye.east, summit.north - eye.north)
  if (!(whole > 0)) {
    const { low, high } = summit
    return { sight: sightline(grid, eye, summit, refraction, obstructions), low, high, begins: 0 }
  }
  const { away, elevation: low, east, north } = flankToward(grid, eye, summit, whole)
  const distance = whole - away
  const top = sightElevation(eye.elevation, summit.high, distance, whole, refraction)
  const target = { east, north, low, high: Math.max(top, low + Math.min(SHOULDER, summit.high - summit.low)) }
  const sight = sightline(grid, eye, target, refraction, obstructions)
  const onAxis = (height: number): number =>
    eye.elevation + ((height + bulge(distance, whole, refraction) - eye.elevation) * whole) / distance
  const stretch = whole / distance
  return {
    sight: { ...sight, distance: whole, hidden: sight.hidden === null ? null : sight.hidden * stretch },
    low: onAxis(target.low),
    high: onAxis(target.high),
    begins: distance,
  }
}

/** Metres from a summit's point within which its highest ground is looked for, however wide it is said to be. */
const MOST_BESIDE = 300

/**
 * Where a summit is looked back from: its top, or the highest ground by it where its point was set beside that. A point within the
 * rock sees nothing, so how much of the upper part shows can't be asked of one point.
 */
export function highestOfSummit(grid: ElevationGrid, { east, north, high, flank }: SummitPost): Raised {
  const reach = Math.min(MOST_BESIDE, flank * (1 - SUMMIT_COUNTS_FROM))
  const steps = Math.floor(reach / grid.cell)
  const [column, row] = [Math.round((east - grid.west) / grid.cell), Math.round((grid.north - north) / grid.cell)]
  let highest: Raised = { east, north, elevation: high }
  for (let down = row - steps; down <= row + steps; down++) {
    for (let right = column - steps; right <= column + steps; right++) {
      const point = { east: grid.west + right * grid.cell, north: grid.north - down * grid.cell }
      if (Math.hypot(point.east - east, point.north - north) > reach) continue
      const elevation = elevationAt(grid, point.east, point.north)
      if (elevation !== null && elevation > highest.elevation) highest = { ...point, elevation }
    }
  }
  return highest
}
