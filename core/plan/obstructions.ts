/** Trees and walls of a shoot: a new one across the way to the landmark, one changed among the others. */
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import type { Plan } from './plan.ts'
import type { ObstructionRecord, Shoot } from '#core/record/shoot.ts'

/** Metres of a new one: length, height, and how far along the way to the landmark it stands. */
const LENGTH = 40
const HEIGHT = 8
const SHARE = 0.6

/** A line of a length whose middle lies at a place, square to a bearing, from left to right as one looks along it. */
export function lineAcross(middle: LatLon, bearing: number, length: number): readonly [LatLon, LatLon] {
  return [destination(middle, bearing - 90, length / 2), destination(middle, bearing + 90, length / 2)]
}

/** A new obstruction across the way to the landmark; without one, across the look to the subject at another place. */
export function newObstruction(id: string, plan: Plan, otherwise: LatLon | null): ObstructionRecord {
  const { standpoint, stop } = plan.spot
  const goal = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
  const way = geodesicLine(standpoint.at, goal ?? stop.at)
  const bearing = way.bearing ?? 0
  const middle =
    goal === null ? (otherwise ?? stop.at) : destination(standpoint.at, bearing, Math.max(way.distance * SHARE, 0))
  return { id, name: '', line: lineAcross(middle, bearing, LENGTH), height: HEIGHT }
}

export function withObstruction(shoot: Shoot, after: ObstructionRecord): Shoot {
  return {
    ...shoot,
    obstructions: shoot.obstructions.map((obstruction) => (obstruction.id === after.id ? after : obstruction)),
  }
}
