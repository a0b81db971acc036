/** How much of the landmark shows over the ground: the upright lines along it, each looked at from the lens. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, elevationAtPlace, gridPoint } from '#core/ground/elevation-grid.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type Sightline, type UprightTarget, sightline } from '#core/ground/sightline.ts'
import { type Landmark, type Summit, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle, spanTops } from '#core/scene/bounding-points.ts'
import { SUMMIT_COUNTS_FROM, summitSight } from './summit-shown.ts'
import type { LevelSource } from './plan.ts'
import type { Shoot } from '#core/record/shoot.ts'

/** An upright line from foot to top, metres above the sea. */
export interface Post {
  readonly at: LatLon
  readonly low: number
  readonly high: number
  /** Metres around it within which the ground is the landmark itself; 0 but for summits. */
  readonly flank: number
}

/** A post where it stands on a grid. */
export interface StandingPost extends UprightTarget {
  readonly flank: number
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
  const post = (at: LatLon, height: number): Post => ({ at, low: level, high: level + height, flank: 0 })
  if (landmark.kind === 'upright') return [post(middle, landmark.height)]
  if (landmark.kind === 'summit') return [upperPart(landmark, level)]
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
  if (landmark.kind === 'summit') return upperPart(landmark, level)
  return { at, low: level, high: level + landmark.height, flank: 0 }
}

function upperPart({ at, height, width }: Summit, level: number): Post {
  return { at, low: level + height * SUMMIT_COUNTS_FROM, high: level + height, flank: width / 2 }
}

/** A post where it stands on the grid. */
export function onGrid(grid: ElevationGrid, { at, low, high, flank }: Post): StandingPost {
  return { ...gridPoint(grid, at), low, high, flank }
}

/** The landmark's posts where they stand on the grid; `level` is that of its foot. */
export function postsOnGrid(grid: ElevationGrid, landmark: Landmark, level: number): StandingPost[] {
  return postsOf(landmark, level, grid).map((post) => onGrid(grid, post))
}

/** The line of sight to a post, and the ends of what is looked at, metres above the sea on the post's own line. */
export interface PostSight {
  readonly sight: Sightline
  readonly low: number
  readonly high: number
  /** Metres from the eye at which what is looked at begins. */
  readonly begins: number
}

export function postSight(
  grid: ElevationGrid,
  eye: Raised,
  post: StandingPost,
  refraction: number,
  obstructions: readonly Obstruction[],
): PostSight {
  if (post.flank > 0) return summitSight(grid, eye, post, refraction, obstructions)
  const sight = sightline(grid, eye, post, refraction, obstructions)
  return { sight, low: post.low, high: post.high, begins: sight.distance }
}

/**
 * The level at which a thing stands on a grid's ground. One read at the very place may lie a little under the window's cells, which
 * would then bury it: the higher counts. A measured one counts as it is. `above` is how far above its level the ground it is read by lies.
 */
export function levelOnGrid(grid: ElevationGrid, at: LatLon, level: number, from: LevelSource, above = 0): number {
  return from === 'elevations' ? Math.max(level, (elevationAtPlace(grid, at) ?? -Infinity) - above) : level
}

/** The landmark's foot as it stands on a grid's ground. */
export function footOnGrid(grid: ElevationGrid, landmark: Landmark, level: number, from: LevelSource): number {
  const at = landmarkMiddle(landmarkPoints(landmark))
  if (at === null) return level
  return levelOnGrid(grid, at, level, from, landmark.kind === 'summit' ? landmark.height : 0)
}

/** Share of all posts' height that shows; null when any of them lies over unknown ground alone. */
export function shownShare(
  posts: readonly StandingPost[],
  grid: ElevationGrid,
  eye: Raised,
  { refraction, obstructions }: Pick<Shoot, 'refraction' | 'obstructions'>,
): number | null {
  let whole = 0
  let shown = 0
  for (const post of posts) {
    const { sight, low, high } = postSight(grid, eye, post, refraction, obstructions)
    const share = sight.visibleShare
    if (share === null) return null
    whole += high - low
    shown += share * (high - low)
  }
  return whole > 0 ? shown / whole : null
}
