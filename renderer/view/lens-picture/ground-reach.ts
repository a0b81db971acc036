/** How far off a thing stands in each direction: ground nearer than that lies before it, all other behind it. */
import type { View } from '#core/frame/projection.ts'
import { type LocalPoint, localFrame, toLocal } from '#core/geo/local-frame.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { GroundLooks } from './ground-looks.ts'

type Level = Pick<LocalPoint, 'east' | 'north'>

/** Metres along a direction to where it meets a stretch; Infinity when it does not. */
function meets(east: number, north: number, from: Level, to: Level): number {
  const [alongEast, alongNorth] = [to.east - from.east, to.north - from.north]
  const turn = east * alongNorth - north * alongEast
  if (turn === 0) return Infinity
  const share = (from.east * north - from.north * east) / turn
  const distance = (from.east * alongNorth - from.north * alongEast) / turn
  return share >= 0 && share <= 1 && distance > 0 ? distance : Infinity
}

/** Where a direction meets nothing the thing is as far off as in the last one to the left that does, or the first to the right. */
function filled(distances: readonly number[], otherwise: number): number[] {
  let last = distances.find((distance) => distance !== Infinity) ?? otherwise
  return distances.map((distance) => {
    if (distance !== Infinity) last = distance
    return last
  })
}

/**
 * Metres to the landmark's near side for every look, a bridge where the look meets its line. A summit is in the elevations: its cone
 * stands where its point is, behind its own flank, and shows only where it is said to be higher than they have it.
 */
export function landmarkReach(
  landmark: Landmark,
  level: number,
  view: View,
  { from, step, looks }: GroundLooks,
): number[] {
  const points = landmarkPoints(landmark).map((at) => toLocal(view.frame, localFrame(at, level).origin))
  const [first] = points
  const nearest = points.reduce((least, { east, north }) => Math.min(least, Math.hypot(east, north)), Infinity)
  if (landmark.kind === 'summit' || first === undefined) return looks.map(() => nearest)
  if (landmark.kind === 'upright') return looks.map(() => Math.max(0, nearest - landmark.width / 2))
  const ring = landmark.kind === 'building' ? [...points, first] : points
  const half = landmark.kind === 'span' ? landmark.width / 2 : 0
  const met = looks.map((_, index) => {
    const azimuth = (from + index * step) * RADIANS_PER_DEGREE
    const [east, north] = [Math.sin(azimuth), Math.cos(azimuth)]
    return ring.reduce((least, to, at) => Math.min(least, meets(east, north, ring[at - 1] ?? to, to)), Infinity)
  })
  return filled(met, nearest).map((distance) => Math.max(0, distance - half))
}
