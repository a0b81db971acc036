/** The proportion ring: the standpoints around the subject from which it and the landmark keep one proportion. */
import { sideOf } from '#core/frame/fill.ts'
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, placeUnder, toEarth } from '#core/geo/local-frame.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { settingOf } from './plan-scene.ts'
import type { Plan } from './plan.ts'

/** The proportion that the two wished fills amount to: landmark's millimetres over the subject's. */
export function wishedProportion(plan: Plan): number {
  const { shot } = plan.spot
  const setting = settingOf(plan, shot.orientation)
  return (
    (shot.landmarkFill.share * sideOf(setting, shot.landmarkFill.axis)) /
    (shot.subjectFill.share * sideOf(setting, shot.subjectFill.axis))
  )
}

/**
 * Ratio of the distances lens-subject and lens-landmark that gives the wished proportion, from the present one: image sizes go
 * with size over distance, so proportion / (distance ratio) is the ratio of true sizes. Exact for things seen from a constant
 * side (heights; spans square to the sightline); for a subject or span that turns its end to the camera along the ring it is
 * approximate, as the width seen changes.
 */
export function ratioForProportion(plan: Plan, presentProportion: number): number | null {
  const middle = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  if (middle === null) return null
  const here = plan.spot.standpoint.at
  const near = geodesicDistance(here, plan.spot.stop.at)
  const far = geodesicDistance(here, middle)
  if (near <= 0 || far <= 0 || presentProportion <= 0) return null
  return ((near / far) * wishedProportion(plan)) / presentProportion
}

/**
 * Metres from the subject, toward `bearing`, at which the distances to subject and landmark have a ratio below 1: the nearer
 * crossing with the circle of Apollonius, made exact on the ellipsoid. Null when that bearing has none (ratio 1 or more).
 */
export function ringDistance(plan: Plan, bearing: number, ratio: number): number | null {
  const middle = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  if (middle === null || !(ratio > 0) || ratio >= 1) return null
  const { at } = plan.spot.stop
  const line = geodesicLine(at, middle)
  let distance = levelRing(line.distance, bearing - (line.bearing ?? 0), ratio)
  for (let round = 0; round < 100; round++) {
    // d = ratio * D(d) contracts, for D changes by at most as much as d does.
    const next = ratio * geodesicDistance(destination(at, bearing, distance), middle)
    if (Math.abs(next - distance) < 1e-9 * distance) return next
    distance = next
  }
  return distance
}

/** On level ground: d^2 = r^2 (d^2 + g^2 - 2 d g cos(turn)), the root that is positive. */
function levelRing(gap: number, turn: number, ratio: number): number {
  const squared = ratio * ratio
  const along = squared * gap * Math.cos(turn * RADIANS_PER_DEGREE)
  return (Math.sqrt(along * along + (1 - squared) * squared * gap * gap) - along) / (1 - squared)
}

/** Farther than this, metres, the level circle bends off the ellipsoid by more than a line's width on the screen. */
const LEVEL_UP_TO = 2_000

/** The ring as a closed line of places; null when there is no such ring. */
export function proportionRing(plan: Plan, presentProportion: number, count = 72): LatLon[] | null {
  const middle = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  const ratio = ratioForProportion(plan, presentProportion)
  if (middle === null || ratio === null || ratio >= 1) return null
  const { at } = plan.spot.stop
  const gap = geodesicLine(at, middle)
  const frame = localFrame(at, 0)
  const line: LatLon[] = []
  for (let index = 0; index <= count; index++) {
    const bearing = (360 * (index % count)) / count
    const level = levelRing(gap.distance, bearing - (gap.bearing ?? 0), ratio)
    if (level < LEVEL_UP_TO) {
      const turn = bearing * RADIANS_PER_DEGREE
      line.push(placeUnder(toEarth(frame, level * Math.sin(turn), level * Math.cos(turn), 0)))
      continue
    }
    const distance = ringDistance(plan, bearing, ratio)
    if (distance === null) return null
    line.push(destination(at, bearing, distance))
  }
  return line
}
