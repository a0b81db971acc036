/** What the ground allows at a spot: what of subject and landmark it lets the camera see, and what hides the rest. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { type KnownReach, knownReach } from '#core/ground/known-reach.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type Sightline, type Tightest, sightline } from '#core/ground/sightline.ts'
import { type Post, mainPost, onGrid, postsOnGrid, shownShare } from './landmark-shown.ts'
import type { Levels, Plan } from './plan.ts'

export interface HiddenBy {
  readonly at: LatLon
  /** Metres from the lens. */
  readonly distance: number
  /** Metres by which it stands above the line to the foot. */
  readonly above: number
  /** Index of the user's screen that it is; null for the ground itself. */
  readonly screen: number | null
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
  /** Metres between the line to the foot and the ground where it runs tightest; null when unknown. */
  readonly clearance: number | null
  readonly ground: Sightline['ground']
}

export interface GroundReading {
  /** Metres between the elevations reckoned with. */
  readonly cell: number
  /** How far they go around the place. */
  readonly reach: KnownReach
  readonly toSubject: SightReading
  /** To the landmark's middle; null without one. */
  readonly toLandmark: SightReading | null
  /** Share of the whole landmark's height that shows, over all along it; null without one, or over unknown ground. */
  readonly landmarkShown: number | null
}

function placed(grid: ElevationGrid, tightest: Tightest | null): HiddenBy | null {
  if (tightest === null) return null
  const { distance, clearance, screen } = tightest
  return { at: placeOnGrid(grid, tightest.east, tightest.north), distance, above: -clearance, screen }
}

function reading(grid: ElevationGrid, eye: Raised, post: Post, plan: Plan): SightReading {
  const sight = sightline(grid, eye, onGrid(grid, post), plan.shoot.refraction, plan.shoot.screens)
  return {
    distance: sight.distance,
    height: post.high - post.low,
    hidden: sight.hidden,
    share: sight.visibleShare,
    hiddenBy: placed(grid, sight.hiddenBy),
    clearance: sight.toLow?.clearance ?? null,
    ground: sight.ground,
  }
}

/** The lens on the grid. */
export function lensOn(grid: ElevationGrid, plan: Plan, levels: Levels): Raised {
  const { standpoint } = plan.spot
  return { ...gridPoint(grid, standpoint.at), elevation: levels.standpoint + standpoint.lensHeight }
}

/** Null without elevations. */
export function groundReading(plan: Plan, levels: Levels): GroundReading | null {
  const { terrain: grid, landmark, spot, shoot } = plan
  if (grid === null) return null
  const eye = lensOn(grid, plan, levels)
  const { stop } = spot
  const main = landmark === null ? null : mainPost(landmark, levels.landmark)
  const subject: Post = { at: stop.at, low: levels.stop, high: levels.stop + shoot.subject.height }
  return {
    cell: grid.cell,
    reach: knownReach(grid),
    toSubject: reading(grid, eye, subject, plan),
    toLandmark: main === null ? null : reading(grid, eye, main, plan),
    landmarkShown:
      landmark === null ? null : shownShare(postsOnGrid(grid, landmark, levels.landmark), grid, eye, shoot),
  }
}
