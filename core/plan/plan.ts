/** A plan: all that an assessment needs of one spot and its shoot, and the levels its things stand at. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type PinHeight, type ReadGround, heightRead } from './height-read.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'

export interface Plan {
  readonly shoot: Shoot
  readonly spot: Spot
  /** The landmark looked at; null when the spot has none. */
  readonly landmark: Landmark | null
  /** Elevations around the spot; null where none are to be had. */
  readonly terrain: ElevationGrid | null
  /** Heights read exactly at some of its places, and beside them. */
  readonly pins: readonly PinHeight[]
}

/** The landmark that a spot looks at; null when it looks at none. */
export function landmarkOf(
  { landmarks }: Pick<Shoot, 'landmarks'>,
  { landmarkId }: Pick<Spot, 'landmarkId'>,
): Landmark | null {
  return landmarks.find(({ id }) => id === landmarkId) ?? null
}

export function planOf(
  shoot: Shoot,
  spot: Spot,
  terrain: ElevationGrid | null = null,
  pins: readonly PinHeight[] = [],
): Plan {
  const landmark = landmarkOf(shoot, spot)
  return { shoot, spot, landmark, terrain, pins }
}

/** Where a level comes from: measured by hand, read off the elevations, or taken level with what is known. */
export type LevelSource = 'measured' | 'elevations' | 'assumed'

/** Metres above the sea of the ground under each thing, and whence each is known. */
export interface Levels {
  readonly standpoint: number
  readonly stop: number
  readonly landmark: number
  readonly from: { readonly standpoint: LevelSource; readonly stop: LevelSource; readonly landmark: LevelSource }
  /** True when the landmark's foot is taken level with the standpoint because one of the two is unknown. */
  readonly landmarkAssumed: boolean
}

/** A level as far as it is known; null where it isn't. */
export interface KnownLevel {
  readonly level: number | null
  readonly from: LevelSource
}

/** A measured level counts before one read off the elevations. */
export function knownLevel(measured: number | null, ground: ReadGround, at: LatLon | null): KnownLevel {
  if (measured !== null) return { level: measured, from: 'measured' }
  const read = at === null ? null : heightRead(ground, at)
  return read === null ? { level: null, from: 'assumed' } : { level: read.height, from: 'elevations' }
}

/** What is known of the landmark's foot. */
export function footLevel(landmark: Landmark | null, ground: ReadGround): KnownLevel {
  if (landmark === null) return { level: null, from: 'assumed' }
  const known = knownLevel(landmark.baseElevation, ground, landmarkMiddle(landmarkPoints(landmark)))
  if (known.from !== 'elevations' || known.level === null) return known
  return { ...known, level: footOfRead(landmark, known.level) }
}

/** The foot by what the ground has at a landmark's middle: a tower stands on it, a bridge over it, but of a summit it is the top. */
export function footOfRead(landmark: Landmark, read: number): number {
  return landmark.kind === 'summit' ? read - landmark.height : read
}

export function levelsOf(plan: Plan): Levels {
  const { standpoint, stop } = plan.spot
  const { landmark } = plan
  return levelsFrom(
    knownLevel(standpoint.elevation, plan, standpoint.at),
    knownLevel(stop.elevation, plan, stop.at),
    footLevel(landmark, plan),
    landmark !== null,
  )
}

/**
 * Unknown ground is taken level with the known: the subject with the standpoint, both with the landmark's foot. Heights are above the
 * sea; the geoid is taken as level over the plan.
 */
export function levelsFrom(stands: KnownLevel, stops: KnownLevel, foot: KnownLevel, landmark: boolean): Levels {
  const here = stands.level ?? stops.level
  const level = here ?? foot.level ?? 0
  return {
    standpoint: level,
    stop: stops.level ?? level,
    landmark: foot.level ?? level,
    from: { standpoint: stands.from, stop: stops.from, landmark: foot.from },
    landmarkAssumed: landmark && (here === null || foot.level === null),
  }
}
