/** Fits a solid into a box exactly: its bounds, thickness included, become the box's own. */
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { type Solid, eachPoint, itemsOf, mapSolid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'

type Axis = keyof LocalPoint

interface Stretch {
  readonly scale: number
  readonly shift: number
}

/** No rod is thicker than this part of the box's smallest side, so that a very flat box still has room to be filled. */
const THICKEST = 0.45
const ROUNDS = 60

/**
 * Scale and shift along one axis so that points with radii fill low..high. The room taken grows with the scale, bent only
 * where another point becomes the outermost, so a few of Newton's steps land on it exactly.
 */
function stretch(points: readonly (readonly [number, number])[], low: number, high: number): Stretch {
  let scale = 1
  for (let round = 0; round < ROUNDS; round++) {
    let top: readonly [number, number] = [0, 0]
    let bottom: readonly [number, number] = [0, 0]
    let most = -Infinity
    let least = Infinity
    for (const point of points) {
      const above = point[0] * scale + point[1]
      const below = point[0] * scale - point[1]
      if (above > most) [most, top] = [above, point]
      if (below < least) [least, bottom] = [below, point]
    }
    const miss = most - least - (high - low)
    const slope = top[0] - bottom[0]
    if (Math.abs(miss) <= 1e-14 * (high - low)) return { scale, shift: high - most }
    if (slope <= 0) break
    scale -= miss / slope
  }
  throw new Error('a solid has no extent along one of its axes')
}

/** The solid filling a subject's box: centred, standing on the ground, front to the north. */
export function fitted(solid: Solid, size: Pick<Subject, 'length' | 'width' | 'height'>): Solid {
  const thickest = (Math.min(size.length, size.width, size.height) * THICKEST) / 2
  const thick = (radius: number): number => Math.min(radius, thickest)
  const found: Record<Axis, [number, number][]> = { east: [], north: [], up: [] }
  for (const item of itemsOf(solid)) {
    eachPoint(item, (point, radius) => {
      for (const axis of ['east', 'north', 'up'] as const) found[axis].push([point[axis], thick(radius)])
    })
  }
  const east = stretch(found.east, -size.width / 2, size.width / 2)
  const north = stretch(found.north, -size.length / 2, size.length / 2)
  const up = stretch(found.up, 0, size.height)
  const move = (point: LocalPoint): LocalPoint => ({
    east: point.east * east.scale + east.shift,
    north: point.north * north.scale + north.shift,
    up: point.up * up.scale + up.shift,
  })
  return mapSolid(solid, move, thick)
}
