/** How much of the landmark shows over the ground: the upright lines along it, each looked at from the lens. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, elevationAtPlace, gridPoint } from '#core/ground/elevation-grid.ts'
import type { Raised } from '#core/ground/sight.ts'
import { type Upright, sightline } from '#core/ground/sightline.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle, spanTops } from '#core/scene/shell.ts'
import type { Shoot } from '#core/record/shoot.ts'

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

/** A post where it stands on the grid. */
export function onGrid(grid: ElevationGrid, { at, low, high }: Post): Upright {
  return { ...gridPoint(grid, at), low, high }
}

/** The landmark's posts where they stand on the grid; `level` is that of its foot. */
export function postsOnGrid(grid: ElevationGrid, landmark: Landmark, level: number): Upright[] {
  return postsOf(landmark, level, grid).map((post) => onGrid(grid, post))
}

/** Share of all posts' height that shows; null when any of them lies over unknown ground alone. */
export function shownShare(
  posts: readonly Upright[],
  grid: ElevationGrid,
  eye: Raised,
  { refraction, screens }: Pick<Shoot, 'refraction' | 'screens'>,
): number | null {
  let whole = 0
  let shown = 0
  for (const post of posts) {
    const share = sightline(grid, eye, post, refraction, screens).visibleShare
    if (share === null) return null
    whole += post.high - post.low
    shown += share * (post.high - post.low)
  }
  return whole > 0 ? shown / whole : null
}
