/** Quennick harbour: a quay along the shore, a mole that shelters it, and the lane between, fitted to the shore as it came out. */
import { type IslandPoint, bearingBetween, step } from './island-frame.ts'
import { HARBOUR_PLAN } from './island-places.ts'
import { fromShore } from './terrain.ts'

export interface Quays {
  /** Polygons, anticlockwise, not closed: the long quay and the mole. */
  readonly areas: readonly (readonly IslandPoint[])[]
  /** Low walls along the seaward edges. */
  readonly walls: readonly (readonly IslandPoint[])[]
  /** Where the lane from the village comes onto the quay. */
  readonly gate: IslandPoint
  /** The lane from the quay's face to the gate. */
  readonly lane: readonly IslandPoint[]
  /** Middles of the sheds behind the quay. */
  readonly sheds: readonly IslandPoint[]
  /** Along the quay's face, degrees clockwise from north. */
  readonly bearing: number
  /** Bearing of the mole's outer arm. */
  readonly moleBearing: number
  /** On the mole's outer arm, where a bicycle may stop. */
  readonly stop: IslandPoint
}

/** The shore's place on the ray from the bay's middle along `bearing`. */
function shoreAlong(bearing: number): IslandPoint {
  for (let reach = 20; reach < 400; reach += 1) {
    const point = step(HARBOUR_PLAN, bearing, reach)
    if (fromShore(point) > 0) return point
  }
  throw new Error('the harbour has no shore')
}

/** A band between two offsets left and right of a line, anticlockwise. */
function band(line: readonly IslandPoint[], right: number, left: number): IslandPoint[] {
  const side = (offset: number): IslandPoint[] =>
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

/** Bearings from the bay's middle to the ends of the quay. */
const QUAY_FROM = 289
const QUAY_TO = 221

export function buildQuays(): Quays {
  const north = shoreAlong(QUAY_FROM)
  const south = shoreAlong(QUAY_TO)
  const along = bearingBetween(north, south)
  const seaward = along - 90
  const face = [step(step(north, along, -6), seaward, 5), step(step(south, along, 6), seaward, 5)] as const
  const back: IslandPoint[] = []
  for (let bearing = QUAY_TO; bearing <= QUAY_FROM; bearing += 4) back.push(step(shoreAlong(bearing), bearing, 9))
  const quay = [...face.toReversed(), ...back.toReversed()]
  const bend = step(face[1], seaward + 6, 92)
  const moleLine = [
    step(step(face[1], along, -5), seaward + 6, -14),
    step(bend, along, -5),
    step(bend, seaward - 50, 72),
  ]
  const middle = { east: (face[0].east + face[1].east) / 2, north: (face[0].north + face[1].north) / 2 }
  const gate = step(shoreAlong((QUAY_FROM + QUAY_TO) / 2), seaward + 180, 30)
  return {
    areas: [quay.toReversed(), band(moleLine, 6, -6)],
    walls: [band(moleLine, 5.6, 4.6)],
    gate,
    lane: [step(step(middle, along, 34), seaward + 180, 9), step(step(middle, along, 8), seaward + 180, 10), gate],
    sheds: [-46, -24, 34, 52].map((off) => step(step(gate, along, off), seaward + 180, 4 + Math.abs(off) * 0.05)),
    bearing: along,
    stop: step(bend, seaward - 50, 48),
    moleBearing: seaward - 50,
  }
}
