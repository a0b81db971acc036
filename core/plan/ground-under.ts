/** The ground under each thing of a plan: its level, slope and aspect, and whether each was measured or read off the elevations. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, elevationAt, gridPoint, slopeAndAspectAt } from '#core/ground/elevation-grid.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/shell.ts'
import type { LevelSource, Levels, Plan } from './plan.ts'

/** Where a slope or an aspect comes from. */
export type TiltSource = 'measured' | 'elevations'

/** A value that is measured or read off the elevations. */
export interface Told {
  /** The one that counts: what was measured, else what the elevations say; null where unknown. */
  readonly value: number | null
  /** Null where the value is unknown. */
  readonly from: TiltSource | null
  /** By the elevations alone, whatever was measured; null where unknown. */
  readonly read: number | null
}

export interface GroundUnder {
  /** Metres above the sea that are reckoned with. */
  readonly elevation: number
  readonly from: LevelSource
  /** Metres above the sea by the elevations alone, whatever was measured; null where unknown. */
  readonly read: number | null
  /** Degrees from the level, 0..90. */
  readonly slope: Told
  /** Bearing 0..360 toward which the ground falls; without a value where it is unknown or level. */
  readonly aspect: Told
}

export interface GroundUnderThings {
  readonly standpoint: GroundUnder
  readonly stop: GroundUnder
  readonly landmark: GroundUnder | null
}

/** What was measured by hand of the ground at a place. */
interface Measured {
  readonly slope: number | null
  readonly aspect: number | null
}

function told(measured: number | null, read: number | null): Told {
  if (measured !== null) return { value: measured, from: 'measured', read }
  return { value: read, from: read === null ? null : 'elevations', read }
}

function under(
  grid: ElevationGrid | null,
  at: LatLon,
  measured: Measured,
  elevation: number,
  from: LevelSource,
): GroundUnder {
  const point = grid === null ? null : gridPoint(grid, at)
  const tilt = grid === null || point === null ? null : slopeAndAspectAt(grid, point.east, point.north)
  return {
    elevation,
    from,
    read: grid === null || point === null ? null : elevationAt(grid, point.east, point.north),
    slope: told(measured.slope, tilt?.slope ?? null),
    aspect: told(measured.aspect, tilt?.aspect ?? null),
  }
}

/** The landmark's ground is that under its middle; null without a landmark. */
function underLandmark(grid: ElevationGrid | null, landmark: Landmark | null, levels: Levels): GroundUnder | null {
  const at = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  if (landmark === null || at === null) return null
  const measured = { slope: landmark.baseSlope, aspect: landmark.baseAspect }
  return under(grid, at, measured, levels.landmark, levels.from.landmark)
}

/** With elevations and without: what was measured is told either way. */
export function groundUnder(plan: Plan, levels: Levels): GroundUnderThings {
  const { terrain: grid, landmark, spot } = plan
  const { standpoint, stop } = spot
  return {
    standpoint: under(grid, standpoint.at, standpoint, levels.standpoint, levels.from.standpoint),
    stop: under(grid, stop.at, stop, levels.stop, levels.from.stop),
    landmark: underLandmark(grid, landmark, levels),
  }
}
