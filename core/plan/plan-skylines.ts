/** The ground, and the trees and walls on it, against the sky around a plan's things: whole skylines for the day, single directions for the moment. */
import { type ElevationGrid, elevationAt, gridPoint } from '#core/ground/elevation-grid.ts'
import { lookFrom } from '#core/ground/horizon-look.ts'
import { lookTowards } from '#core/ground/horizon-ray.ts'
import type { Raised } from '#core/ground/sight.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import { obstructionEdgeTowards, obstructedSkyline } from '#core/ground/obstructed-skyline.ts'
import { type Skyline, skyline } from '#core/ground/skyline.ts'
import type { LightSkyline, PlanSkylines } from '#core/light/light-scene.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type Levels, type Plan, levelsOf } from './plan.ts'
import type { Shoot } from '#core/record/shoot.ts'

/** Null for what is not there, or where the ground under it is unknown. */
export interface Skylines {
  readonly subject: Skyline | null
  readonly landmark: Skyline | null
  readonly lens: Skyline | null
}

/** Where each skyline is looked from; null for what is not there, or over unknown ground. */
export interface SkyEyes {
  readonly subject: Raised | null
  readonly landmark: Raised | null
  readonly lens: Raised | null
}

/** An eye so many metres above a level, but never under the ground that the elevations have there. */
export function skyEye(grid: ElevationGrid, at: LatLon, level: number, height: number): Raised | null {
  const point = gridPoint(grid, at)
  const ground = elevationAt(grid, point.east, point.north)
  return ground === null ? null : { ...point, elevation: Math.max(level, ground) + height }
}

/** A landmark's light is told at half its height, a summit's at its top: below that it is rock. */
export function landmarkSkyEye(grid: ElevationGrid, landmark: Landmark, at: LatLon, foot: number): Raised | null {
  const { kind, height } = landmark
  return kind === 'summit' ? skyEye(grid, at, foot + height, 0) : skyEye(grid, at, foot, height / 2)
}

/** Looked from: the middle of the subject, the landmark, and the lens. */
export function skyEyes(plan: Plan, levels: Levels, grid: ElevationGrid): SkyEyes {
  const { stop, standpoint } = plan.spot
  const { landmark, shoot } = plan
  const middle = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  return {
    subject: skyEye(grid, stop.at, levels.stop, shoot.subject.height / 2),
    landmark: landmark === null || middle === null ? null : landmarkSkyEye(grid, landmark, middle, levels.landmark),
    lens: skyEye(grid, standpoint.at, levels.standpoint, standpoint.lensHeight),
  }
}

/** The ground, and the obstructions on it, against the sky all around an eye; null without one. */
export function skylineFrom(
  grid: ElevationGrid,
  from: Raised | null,
  refraction: number,
  obstructions: readonly Obstruction[],
): Skyline | null {
  return from === null ? null : obstructedSkyline(skyline(grid, from, refraction), grid, from, refraction, obstructions)
}

/** Some milliseconds' work: for a day, not for every frame of a drag. Null without elevations. */
export function skylinesOf(plan: Plan): Skylines | null {
  const { terrain: grid } = plan
  if (grid === null) return null
  const eyes = skyEyes(plan, levelsOf(plan), grid)
  const { refraction, obstructions } = plan.shoot
  const around = (from: Raised | null): Skyline | null => skylineFrom(grid, from, refraction, obstructions)
  return { subject: around(eyes.subject), landmark: around(eyes.landmark), lens: around(eyes.lens) }
}

/** What stands against the sky in one direction. */
export interface SkylineLook {
  /** Degrees above the level; null from an eye that is not there. */
  readonly altitude: number | null
  /** Metres to the nearest unknown ground that could stand higher; null where none could. */
  readonly unknown: number | null
}

const NO_EYE: SkylineLook = { altitude: null, unknown: null }

/** The ground, and obstructions on it, against the sky from one eye, direction by direction. */
export function skylineLooks(
  grid: ElevationGrid,
  from: Raised | null,
  refraction: number,
  obstructions: readonly Obstruction[],
): (azimuth: number) => SkylineLook {
  if (from === null) return () => NO_EYE
  const look = lookFrom(grid, from, refraction)
  return (azimuth) => {
    lookTowards(look, azimuth)
    const obstruction = obstructionEdgeTowards(grid, from, refraction, obstructions, azimuth)
    const unknown = Number.isNaN(look.unknown) ? null : look.unknown
    return { altitude: obstruction === null ? look.altitude : Math.max(look.altitude, obstruction.altitude), unknown }
  }
}

/** The skyline as it matters to a sun that stands in one direction and nowhere else: its altitude there, all round. */
export function skylineToward(
  grid: ElevationGrid,
  from: Raised | null,
  { refraction, obstructions }: Pick<Shoot, 'refraction' | 'obstructions'>,
  azimuth: number,
): LightSkyline {
  const { altitude, unknown } = skylineLooks(grid, from, refraction, obstructions)(azimuth)
  return {
    step: 360,
    altitudes: Float32Array.of(altitude ?? Number.NaN),
    unknown: Float32Array.of(unknown ?? Number.NaN),
  }
}

/** The skylines of a plan in one direction alone, exact there, for the light of one instant. Null without elevations. */
export function skylinesToward(plan: Plan, levels: Levels, azimuth: number): PlanSkylines | null {
  const { terrain: grid, shoot } = plan
  if (grid === null) return null
  const eyes = skyEyes(plan, levels, grid)
  const toward = (from: Raised | null): LightSkyline => skylineToward(grid, from, shoot, azimuth)
  return { subject: toward(eyes.subject), landmark: toward(eyes.landmark), lens: toward(eyes.lens) }
}
