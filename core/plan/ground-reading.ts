/** What the ground allows at a spot: what of subject and landmark it lets the camera see, and what hides the rest. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { type KnownReach, knownReach } from '#core/ground/known-reach.ts'
import type { Raised } from '#core/ground/sight.ts'
import type { Sightline, Tightest } from '#core/ground/sightline.ts'
import {
  type Post,
  footOnGrid,
  levelOnGrid,
  mainPost,
  onGrid,
  postSight,
  postsOnGrid,
  shownShare,
} from './landmark-shown.ts'
import type { Levels, Plan } from './plan.ts'

export interface HiddenBy {
  readonly at: LatLon
  /** Metres from the lens. */
  readonly distance: number
  /** Metres by which it stands above the line to the foot. */
  readonly above: number
  /** Index of the user's obstruction that it is; null for the ground itself. */
  readonly obstruction: number | null
}

export interface SightReading {
  /** Metres along the ground. */
  readonly distance: number
  /** Metres from foot to top of what is looked at. */
  readonly height: number
  /** Metres hidden from the foot upward; null when the ground between is unknown. */
  readonly hidden: number | null
  /** Share of the height that shows, 0..1; null when the ground between is unknown. */
  readonly share: number | null
  readonly hiddenBy: HiddenBy | null
  readonly ground: Sightline['ground']
}

export interface GroundReading {
  /** How far the elevations go around the place. */
  readonly reach: KnownReach
  readonly toSubject: SightReading
  /** To the landmark's middle; null without one. */
  readonly toLandmark: SightReading | null
  /** Share of the whole landmark's height that shows, over all along it; null without one, or over unknown ground. */
  readonly landmarkShown: number | null
}

function placed(grid: ElevationGrid, tightest: Tightest | null): HiddenBy | null {
  if (tightest === null) return null
  const { distance, clearance, obstruction } = tightest
  return { at: placeOnGrid(grid, tightest.east, tightest.north), distance, above: -clearance, obstruction }
}

function reading(grid: ElevationGrid, eye: Raised, post: Post, plan: Plan): SightReading {
  const { sight, low, high } = postSight(grid, eye, onGrid(grid, post), plan.shoot.refraction, plan.shoot.obstructions)
  return {
    distance: sight.distance,
    height: high - low,
    hidden: sight.hidden,
    share: sight.visibleShare,
    hiddenBy: placed(grid, sight.hiddenBy),
    ground: sight.ground,
  }
}

/** The lens on the grid. */
export function lensOn(grid: ElevationGrid, plan: Plan, levels: Levels): Raised {
  const { at, lensHeight } = plan.spot.standpoint
  return eyeOnGrid(grid, at, levels, lensHeight)
}

/** The lens so high above a standpoint. */
export function eyeOnGrid(grid: ElevationGrid, at: LatLon, levels: Levels, lensHeight: number): Raised {
  const level = levelOnGrid(grid, at, levels.standpoint, levels.from.standpoint)
  return { ...gridPoint(grid, at), elevation: level + lensHeight }
}

/** The subject as an upright line on the grid's ground. */
export function subjectPost(grid: ElevationGrid, { spot, shoot }: Plan, levels: Levels): Post {
  const { at } = spot.stop
  const low = levelOnGrid(grid, at, levels.stop, levels.from.stop)
  return { at, low, high: low + shoot.subject.height, flank: 0 }
}

/** Null without elevations. */
export function groundReading(plan: Plan, levels: Levels): GroundReading | null {
  const { terrain: grid, landmark, shoot } = plan
  if (grid === null) return null
  const eye = lensOn(grid, plan, levels)
  const foot = landmark === null ? 0 : footOnGrid(grid, landmark, levels.landmark, levels.from.landmark)
  const main = landmark === null ? null : mainPost(landmark, foot)
  return {
    reach: knownReach(grid),
    toSubject: reading(grid, eye, subjectPost(grid, plan, levels), plan),
    toLandmark: main === null ? null : reading(grid, eye, main, plan),
    landmarkShown: landmark === null ? null : shownShare(postsOnGrid(grid, landmark, foot), grid, eye, shoot),
  }
}
