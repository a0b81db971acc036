/** The line of standpoints from which sun or moon stands behind a landmark at one instant, on flat ground at the landmark's level. */
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import { type LatLon, isLatLon } from '#core/geo/lat-lon.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import { type Result, done, failed } from '#core/result.ts'
import { type CrestEdge, crestAltitude, crestEdges, outlineDistance } from '#core/scene/crest.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { turnBetween } from '#core/units/angle.ts'
import { EARLIEST, LATEST } from './alignment-request.ts'
import { type Body, CENTRE, type DiscPoint, LOWER_LIMB, bodyAt, discPlace, isUp } from './body.ts'
import { apparentAltitude } from './refraction.ts'

export interface StandLineRequest {
  readonly body: Body
  /** Epoch milliseconds. */
  readonly instant: number
  readonly landmark: Landmark
  /** Metres above the sea of the ground on which landmark and lens both stand. */
  readonly level: number
  /** Metres of the lens above that ground. */
  readonly lensHeight: number
  /** Refraction coefficient k. */
  readonly refraction: number
  /** Metres to the line's far end; above NEAREST, up to FARTHEST. */
  readonly reach: number
}

export interface StandLinePoint {
  readonly at: LatLon
  /** Metres along the ground to the landmark's middle. */
  readonly distance: number
  /** Degrees above the level at which the body's centre appears from there. */
  readonly altitude: number
}

export interface StandLine {
  /** From near to far, two or more. */
  readonly points: readonly StandLinePoint[]
  /** Where the body's centre stands exactly on the landmark's crest above its middle; null when nowhere within reach. */
  readonly onTop: LatLon | null
  /** Where its lower limb touches that crest. */
  readonly resting: LatLon | null
}

export type StandLineReason = 'no-place' | 'no-dates' | 'reach' | 'lens' | 'not-up' | 'overhead'

/** Metres of the line's near end, and of the farthest far end. */
export const NEAREST = 20
export const FARTHEST = 100_000
const POINTS = 72
/** Metres from the landmark's outline within which nobody stands to look up at it. */
const CLOSEST = 0.1
/** Metres within which the place is found that has the body on the crest. */
const CLOSE_ENOUGH = 1e-3
/** Degrees within which the body is straight behind the landmark's middle. */
const BEHIND = 1e-7
const ROUNDS = 40

/** The standpoint at a distance from which the body is straight behind the middle; null where its azimuth turns too fast. */
function standAt(body: Body, instant: number, middle: LatLon, distance: number): LatLon | null {
  let away = bodyAt(body, middle, instant).azimuth + 180
  for (let round = 0; round < ROUNDS; round++) {
    const at = destination(middle, away, distance)
    const toward = geodesicLine(at, middle).bearing
    if (toward === null) return null
    const off = turnBetween(toward, bodyAt(body, at, instant).azimuth)
    if (Math.abs(off) < BEHIND) return at
    away += off
  }
  return null
}

/** Metres from near to far, each the same part farther than the one before. */
function distancesTo(reach: number): number[] {
  return Array.from({ length: POINTS }, (_, index) => NEAREST * (reach / NEAREST) ** (index / (POINTS - 1)))
}

/** How far the crest above the middle appears over a point of the disc, degrees, by the distance of the standpoint; null where that has no meaning. */
function crestOver(request: StandLineRequest, middle: LatLon, edges: readonly CrestEdge[], point: DiscPoint) {
  return (distance: number): { readonly at: LatLon; readonly over: number } | null => {
    const at = standAt(request.body, request.instant, middle, distance)
    if (at === null) return null
    const disc = bodyAt(request.body, at, request.instant)
    const frame = localFrame(at, request.level + request.lensHeight)
    const crest = crestAltitude(edges, frame, disc.azimuth, request.refraction)
    return crest === null ? null : { at, over: crest - apparentAltitude(discPlace(disc, point).altitude) }
  }
}

/** Outside the landmark its crest sinks with distance: the place is found by halving between its outline and the far end. */
function standOnCrest(outline: number, reach: number, over: ReturnType<typeof crestOver>): LatLon | null {
  let near = outline + CLOSEST
  let far = reach
  if (!(near < far) || !((over(near)?.over ?? -1) >= 0 && (over(far)?.over ?? 1) < 0)) return null
  while (far - near > CLOSE_ENOUGH) {
    const middle = (near + far) / 2
    if ((over(middle)?.over ?? 0) < 0) far = middle
    else near = middle
  }
  return over(far)?.at ?? null
}

function whyNot(request: StandLineRequest, middle: LatLon | null): Result<LatLon, StandLineReason> {
  if (middle === null || !isLatLon(middle.lat, middle.lon))
    return failed('no-place', 'The landmark is not on the map yet. Place it first.')
  if (!(request.instant >= EARLIEST && request.instant < LATEST))
    return failed('no-dates', 'Sun and moon are computed for the years 1900 to 2100. Choose a date within them.')
  if (!(request.reach > NEAREST && request.reach <= FARTHEST))
    return failed(
      'reach',
      `A line of ${request.reach} m: give more than ${NEAREST} m and at most ${FARTHEST / 1000} km.`,
    )
  if (!Number.isFinite(request.lensHeight + request.level + request.refraction))
    return failed('lens', 'The heights of lens and ground are no numbers. Give them in metres.')
  return done(middle)
}

export function standLine(request: StandLineRequest): Result<StandLine, StandLineReason> {
  const checked = whyNot(request, landmarkMiddle(landmarkPoints(request.landmark)))
  if (!checked.ok) return checked
  const middle = checked.value
  const { body, instant } = request
  if (!isUp(bodyAt(body, middle, instant)))
    return failed('not-up', `The ${body} is below the horizon at that time. Choose a time at which it is up.`)
  const points: StandLinePoint[] = []
  for (const distance of distancesTo(request.reach)) {
    const at = standAt(body, instant, middle, distance)
    if (at === null) break
    const disc = bodyAt(body, at, instant)
    if (!isUp(disc)) break
    points.push({ at, distance, altitude: apparentAltitude(disc.altitude) })
  }
  if (points.length < 2)
    return failed('overhead', `The ${body} is too nearly overhead to be behind anything. Choose another time.`)
  const edges = crestEdges(request.landmark, request.level)
  const far = points.at(-1)?.distance ?? request.reach
  const outline = outlineDistance(request.landmark, middle, bodyAt(body, middle, instant).azimuth + 180)
  return done({
    points,
    onTop: standOnCrest(outline, far, crestOver(request, middle, edges, CENTRE)),
    resting: standOnCrest(outline, far, crestOver(request, middle, edges, LOWER_LIMB)),
  })
}
