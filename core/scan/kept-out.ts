/** Keep-outs as a scan asks them: may the subject stop here, may the camera stand there, must nobody step across between them. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalFrame } from '#core/geo/local-frame.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import {
  type PlaneBox,
  type PlanePoint,
  type PlaneShape,
  planeBoxAround,
  crosses,
  holds,
  onPlane,
  planeAt,
  within,
} from './drawn-shape.ts'

interface Kept {
  readonly shape: PlaneShape
  readonly closed: boolean
  /** Metres from a line's middle to its edge. */
  readonly half: number
  readonly box: PlaneBox
}

export interface KeptOutGround {
  readonly plane: LocalFrame
  readonly subject: readonly Kept[]
  readonly camera: readonly Kept[]
  readonly barriers: readonly Kept[]
}

/** Readies the keep-outs; `near` is a place of the scan. One drawn with too few points keeps nobody out. */
export function keptOut(keepOuts: readonly KeepOut[], near: LatLon): KeptOutGround {
  const plane = planeAt(near)
  const kept = keepOuts.flatMap((keepOut) => {
    const closed = keepOut.form === 'area'
    if (keepOut.points.length < (closed ? 3 : 2)) return []
    const shape = keepOut.points.map((at) => onPlane(plane, at))
    const half = closed ? 0 : keepOut.width / 2
    return [{ keepOut, shape, closed, half, box: planeBoxAround(shape, half) }]
  })
  return {
    plane,
    subject: kept.filter(({ keepOut }) => keepOut.whom !== 'camera'),
    camera: kept.filter(({ keepOut }) => keepOut.whom !== 'subject'),
    barriers: kept.filter(({ keepOut }) => keepOut.noCrossing),
  }
}

function standsIn({ shape, closed, half, box }: Kept, point: PlanePoint): boolean {
  if (point.east < box.west || point.east > box.east || point.north < box.south || point.north > box.north) return false
  return closed ? holds(shape, point) : within(shape, point, half)
}

export function subjectKeptOut(out: KeptOutGround, at: LatLon): boolean {
  if (out.subject.length === 0) return false
  const point = onPlane(out.plane, at)
  return out.subject.some((kept) => standsIn(kept, point))
}

/** Whether the camera may not stand at a place with the subject at another. */
export function cameraKeptOut(out: KeptOutGround, stop: LatLon, standpoint: LatLon): boolean {
  if (out.camera.length === 0 && out.barriers.length === 0) return false
  const point = onPlane(out.plane, standpoint)
  if (out.camera.some((kept) => standsIn(kept, point))) return true
  if (out.barriers.length === 0) return false
  const from = onPlane(out.plane, stop)
  return out.barriers.some(({ shape, closed }) => crosses(shape, closed, from, point))
}
