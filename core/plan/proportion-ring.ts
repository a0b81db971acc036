/** The proportion ring: the standpoints around the subject from which it and the landmark keep one proportion. */
import { sideOf } from '#core/frame/fill.ts'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/shell.ts'
import { settingOf } from './assess.ts'
import type { Plan } from './plan.ts'
import { bearingOfStandpoint, standingAt } from './stand.ts'

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
  let distance = (geodesicDistance(at, middle) * ratio) / (1 - ratio)
  for (let round = 0; round < 100; round++) {
    // d = ratio * D(d) contracts, for D changes by at most as much as d does.
    const next = ratio * geodesicDistance(destination(at, bearing, distance), middle)
    if (Math.abs(next - distance) < 1e-9 * distance) return next
    distance = next
  }
  return distance
}

/** The ring as a closed line of places; null when there is no such ring. */
export function proportionRing(plan: Plan, presentProportion: number, count = 72): LatLon[] | null {
  const ratio = ratioForProportion(plan, presentProportion)
  if (ratio === null || ratio >= 1) return null
  const line: LatLon[] = []
  for (let index = 0; index <= count; index++) {
    const bearing = (360 * (index % count)) / count
    const distance = ringDistance(plan, bearing, ratio)
    if (distance === null) return null
    line.push(destination(plan.spot.stop.at, bearing, distance))
  }
  return line
}

/** The plan with its standpoint slid along its bearing onto the ring; unchanged when there is none. */
export function onProportionRing(plan: Plan, presentProportion: number): Plan {
  const bearing = bearingOfStandpoint(plan)
  const ratio = ratioForProportion(plan, presentProportion)
  if (bearing === null || ratio === null) return plan
  const distance = ringDistance(plan, bearing, ratio)
  return distance === null ? plan : standingAt(plan, bearing, distance)
}
