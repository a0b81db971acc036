/** What the ground allows at a spot: what of subject and landmark it lets the camera see, and what hides the rest. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, elevationAtPlace, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type Sightline, type Tightest, sightline } from '#core/ground/sightline.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle, spanTops } from '#core/scene/shell.ts'
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
  readonly toSubject: SightReading
  /** To the landmark's middle; null without one. */
  readonly toLandmark: SightReading | null
  /** Share of the whole landmark's height that shows, over all along it; null without one, or over unknown ground. */
  readonly landmarkShown: number | null
}

/** A summit's own flank hides its foot from everywhere: what counts is its upper part. */
const SUMMIT_COUNTS_FROM = 0.9

/** An upright line from foot to top, metres above the sea. */
export interface Post {
  readonly at: LatLon
  readonly low: number
  readonly high: number
}

/**
 * Upright lines along the landmark by which its visible share is told: its points and those midway, from the foot, or from the
 * ground where a bridge's ends or a building's corners stand in rising ground: what is buried is no part to be seen.
 */
function postsOf(landmark: Landmark, level: number, grid: ElevationGrid): Post[] {
  if (landmark.kind === 'upright' || landmark.kind === 'summit') return wholePosts(landmark, level)
  return wholePosts(landmark, level).flatMap((post) => {
    const low = Math.max(post.low, elevationAtPlace(grid, post.at) ?? -Infinity)
    return low < post.high ? [{ ...post, low }] : []
  })
}

function wholePosts(landmark: Landmark, level: number): Post[] {
  const points = landmarkPoints(landmark)
  const middle = landmarkMiddle(points)
  if (middle === null) return []
  const post = (at: LatLon, height: number, from = 0): Post => ({ at, low: level + from, high: level + height })
  if (landmark.kind === 'upright') return [post(middle, landmark.height)]
  if (landmark.kind === 'summit') return [post(middle, landmark.height, landmark.height * SUMMIT_COUNTS_FROM)]
  if (landmark.kind === 'building') return [middle, ...points].map((at) => post(at, landmark.height))
  const tops = spanTops(landmark)
  return points.flatMap((at, index) => {
    const own = post(at, tops[index] ?? landmark.height)
    const next = points[index + 1]
    const between = next === undefined ? null : landmarkMiddle([at, next])
    return between === null
      ? [own]
      : [own, post(between, landmark.form === 'suspension' ? landmark.deckHeight : landmark.height)]
  })
}

/** The post that stands for the landmark: at its middle, to its full height. */
export function mainPost(landmark: Landmark, level: number): Post | null {
  const at = landmarkMiddle(landmarkPoints(landmark))
  if (at === null) return null
  const from = landmark.kind === 'summit' ? landmark.height * SUMMIT_COUNTS_FROM : 0
  return { at, low: level + from, high: level + landmark.height }
}

function placed(grid: ElevationGrid, tightest: Tightest | null): HiddenBy | null {
  if (tightest === null) return null
  const { distance, clearance, screen } = tightest
  return { at: placeOnGrid(grid, tightest.east, tightest.north), distance, above: -clearance, screen }
}

function look(grid: ElevationGrid, eye: Raised, post: Post, { shoot }: Plan): Sightline {
  const target = { ...gridPoint(grid, post.at), low: post.low, high: post.high }
  return sightline(grid, eye, target, shoot.refraction, shoot.screens)
}

function reading(grid: ElevationGrid, eye: Raised, post: Post, plan: Plan): SightReading {
  const sight = look(grid, eye, post, plan)
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

/** Share of all posts' height that shows; null when any of them lies over unknown ground alone. */
function shownShare(posts: readonly Post[], grid: ElevationGrid, eye: Raised, plan: Plan): number | null {
  let whole = 0
  let shown = 0
  for (const post of posts) {
    const share = look(grid, eye, post, plan).visibleShare
    if (share === null) return null
    whole += post.high - post.low
    shown += share * (post.high - post.low)
  }
  return whole > 0 ? shown / whole : null
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
    toSubject: reading(grid, eye, subject, plan),
    toLandmark: main === null ? null : reading(grid, eye, main, plan),
    landmarkShown: landmark === null ? null : shownShare(postsOf(landmark, levels.landmark, grid), grid, eye, plan),
  }
}
