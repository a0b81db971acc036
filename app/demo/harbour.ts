/** Quennick harbour: a quay along the shore, a mole that shelters it, and the lane between, fitted to the shore as it came out. */
import { type PlanePoint, bearingBetween, step } from './island-frame.ts'
import { HARBOUR_PLAN } from './island-places.ts'
import { fromShore } from './terrain.ts'

export interface Quays {
  /** Polygons, anticlockwise, not closed: the long quay and the mole. */
  readonly areas: readonly (readonly PlanePoint[])[]
  /** Low walls along the seaward edges. */
  readonly walls: readonly (readonly PlanePoint[])[]
  /** The lane from the shore along the quay. */
  readonly road: readonly PlanePoint[]
  /** Mid quay, where a vehicle may stop. */
  readonly stop: PlanePoint
}

/** The shore's place on the ray from the bay's middle along `bearing`. */
function shoreAlong(bearing: number): PlanePoint {
  for (let reach = 20; reach < 400; reach += 1) {
    const point = step(HARBOUR_PLAN, bearing, reach)
    if (fromShore(point) > 0) return point
  }
  throw new Error('the harbour has no shore')
}

/** A band between two offsets left and right of a line, anticlockwise. */
function band(line: readonly PlanePoint[], right: number, left: number): PlanePoint[] {
  const side = (offset: number): PlanePoint[] =>
    line.map((point, place) => {
      const before = line[place - 1]
      const after = line[place + 1]
      const into = before === undefined ? null : bearingBetween(before, point)
      const onward = after === undefined ? into : bearingBetween(point, after)
      const first = into ?? onward ?? 0
      const turn = ((((onward ?? first) - first + 540) % 360) - 180) / 2
      return step(point, first + turn + 90, offset / Math.cos((turn * Math.PI) / 180))
    })
  return [...side(right), ...side(left).toReversed()]
}

/** Bearings from the bay's middle to the ends of the quay and to the root of the mole. */
const QUAY_FROM = 295
const QUAY_TO = 215

export function buildQuays(): Quays {
  const north = shoreAlong(QUAY_FROM)
  const south = shoreAlong(QUAY_TO)
  const along = bearingBetween(north, south)
  const seaward = along - 90
  const face = [step(north, seaward, 16), step(south, seaward, 16)] as const
  const quay = band(face, 46, 0)
  const root = step(face[1], along, -4)
  const bend = step(root, seaward + 8, 95)
  const moleLine = [step(root, seaward + 8, -30), bend, step(bend, seaward - 52, 70)]
  const mole = band(moleLine, 6, -6)
  const lane = [step(face[0], along + 90, 9), step(face[1], along + 90, 9)] as const
  return {
    areas: [quay, mole],
    walls: [band(moleLine, 5, 4.2)],
    road: [step(lane[0], along + 90, 26), step(lane[0], along + 30, 20), step(lane[1], along, -14)],
    stop: step(step(face[0], along, 30), along + 90, 5),
  }
}
