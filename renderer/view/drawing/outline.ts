/** The outlines of the things on the ground, as places in true size: the subject's rectangle, the landmark's footprint and faces. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, localFrame, placeUnder, toEarth } from '#core/geo/local-frame.ts'
import type { Stop } from '#core/record/spot.ts'
import { subjectPoint } from '#core/scene/box.ts'
import type { Landmark, SpanLandmark } from '#core/scene/landmark.ts'
import { circlePoints, spanStations } from '#core/scene/bounding-points.ts'
import type { Subject } from '#core/scene/subject.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'

function placeAt(frame: LocalFrame, east: number, north: number): LatLon {
  return placeUnder(toEarth(frame, east, north, 0))
}

/** A place so many metres from a frame's origin along a bearing. */
export function outlinePlaceAlong(frame: LocalFrame, bearing: number, distance: number): LatLon {
  const turn = bearing * RADIANS_PER_DEGREE
  return placeAt(frame, Math.sin(turn) * distance, Math.cos(turn) * distance)
}

export interface SubjectOutline {
  /** Front right, front left, rear left, rear right. */
  readonly corners: readonly LatLon[]
  /** Tip of the notch, ahead of the front. */
  readonly tip: LatLon
}

export function subjectOutline(subject: Subject, stop: Stop): SubjectOutline {
  const frame = localFrame(stop.at, 0)
  const at = (ahead: number, right: number): LatLon => {
    const point = subjectPoint(stop.heading, ahead, right, 0)
    return placeAt(frame, point.east, point.north)
  }
  const ahead = subject.length / 2
  const right = subject.width / 2
  return {
    corners: [at(ahead, right), at(ahead, -right), at(-ahead, -right), at(-ahead, right)],
    tip: at(ahead + subject.width * 0.6, 0),
  }
}

export interface LandmarkOutline {
  /** The footprint, not closed. */
  readonly ring: readonly LatLon[]
  /** For each face that gets a tick, the two points of the ring between which it lies. */
  readonly faces: readonly (readonly [number, number])[]
}

function spanOutline(span: SpanLandmark): LandmarkOutline {
  const half = span.width / 2
  const stations = spanStations(span, 0)
  const side = (aside: number): LatLon[] =>
    stations.map(({ frame, across }) => placeAt(frame, across[0] * aside, across[1] * aside))
  const left = side(-half)
  const count = left.length
  const middle = Math.max(0, Math.floor((count - 2) / 2))
  return {
    ring: [...left, ...side(half).toReversed()],
    faces: [
      [middle, middle + 1],
      [2 * count - 2 - middle, 2 * count - 1 - middle],
    ],
  }
}

export function landmarkOutline(landmark: Landmark): LandmarkOutline {
  if (landmark.kind === 'span') return spanOutline(landmark)
  if (landmark.kind === 'building') {
    const count = landmark.footprint.length
    return {
      ring: landmark.footprint,
      faces: landmark.footprint.map((_, index) => [index, (index + 1) % count]),
    }
  }
  const round = circlePoints(localFrame(landmark.at, 0), landmark.width / 2, 0).map(placeUnder)
  const count = round.length
  const quarter = count / 4
  // A round thing has no faces; the four quarters of the compass stand for them.
  const faces = [0, 1, 2, 3].map(
    (turn) => [(turn * quarter + count - 1) % count, (turn * quarter + 1) % count] as const,
  )
  return { ring: round, faces }
}
