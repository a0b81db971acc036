/** The ground under each thing of a plan: its level, slope and aspect, and whether each was measured or read off the elevations. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { gridPoint, slopeAndAspectAt } from '#core/ground/elevation-grid.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { heightRead } from './height-read.ts'
import { type LevelSource, type Levels, type Plan, footOfRead } from './plan.ts'

/** Where a slope or an aspect comes from. */
export type TiltSource = 'measured' | 'elevations'

/** A value that is measured or read off the elevations. */
export interface TiltFigure {
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
  /** Metres between the samples that this was read from; null where nothing was. */
  readonly step: number | null
  /** The source that was read, by its name; null where nothing was, or a window of several. */
  readonly source: string | null
  /** Whether the sea's surface was taken there, not what the source has below 0. */
  readonly sea: boolean
  /** Of a summit, metres above the sea of its top, reckoned with and read; null for all else. */
  readonly top: { readonly elevation: number; readonly read: number | null } | null
  /** Degrees from the level, 0..90. */
  readonly slope: TiltFigure
  /** Bearing 0..360 toward which the ground falls; without a value where it is unknown or level. */
  readonly aspect: TiltFigure
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

function tiltRead(measured: number | null, read: number | null): TiltFigure {
  if (measured !== null) return { value: measured, from: 'measured', read }
  return { value: read, from: read === null ? null : 'elevations', read }
}

function under(plan: Plan, at: LatLon, measured: Measured, elevation: number, from: LevelSource): GroundUnder {
  const grid = plan.terrain
  const point = grid === null ? null : gridPoint(grid, at)
  const tilt = grid === null || point === null ? null : slopeAndAspectAt(grid, point.east, point.north)
  const read = heightRead(plan, at)
  return {
    elevation,
    from,
    read: read?.height ?? null,
    step: read?.step ?? null,
    source: read?.source ?? null,
    sea: read?.sea === true,
    top: null,
    slope: tiltRead(measured.slope, tilt?.slope ?? null),
    aspect: tiltRead(measured.aspect, tilt?.aspect ?? null),
  }
}

/** The landmark's ground is that under its middle; null without a landmark. */
function underLandmark(plan: Plan, landmark: Landmark | null, levels: Levels): GroundUnder | null {
  const at = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  if (landmark === null || at === null) return null
  const measured = { slope: landmark.baseSlope, aspect: landmark.baseAspect }
  const found = under(plan, at, measured, levels.landmark, levels.from.landmark)
  const { read, elevation } = found
  return {
    ...found,
    read: read === null ? null : footOfRead(landmark, read),
    top: landmark.kind === 'summit' ? { elevation: elevation + landmark.height, read } : null,
  }
}

/** With elevations and without: what was measured is told either way. */
export function groundUnder(plan: Plan, levels: Levels): GroundUnderThings {
  const { standpoint, stop } = plan.spot
  return {
    standpoint: under(plan, standpoint.at, standpoint, levels.standpoint, levels.from.standpoint),
    stop: under(plan, stop.at, stop, levels.stop, levels.from.stop),
    landmark: underLandmark(plan, plan.landmark, levels),
  }
}
