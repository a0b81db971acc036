/** How near a point is to a set of lines, answered from buckets so that a whole map of questions stays cheap. */
import { type PlanePoint, distanceBetween } from './island-frame.ts'
import { even } from './outline.ts'

const BUCKET = 60

export class Nearness {
  readonly #buckets = new Map<string, PlanePoint[]>()

  constructor(lines: readonly (readonly PlanePoint[])[]) {
    for (const line of lines) for (const point of even(line, 6)) this.#put(point)
  }

  #put(point: PlanePoint): void {
    const key = `${Math.floor(point.east / BUCKET)} ${Math.floor(point.north / BUCKET)}`
    const bucket = this.#buckets.get(key)
    if (bucket === undefined) this.#buckets.set(key, [point])
    else bucket.push(point)
  }

  /** Metres to the nearest line, or 60 when none is as near as that. */
  metres(point: PlanePoint): number {
    let nearest = BUCKET
    const column = Math.floor(point.east / BUCKET)
    const row = Math.floor(point.north / BUCKET)
    for (let north = -1; north <= 1; north++) {
      for (let east = -1; east <= 1; east++) {
        for (const other of this.#buckets.get(`${column + east} ${row + north}`) ?? []) {
          nearest = Math.min(nearest, distanceBetween(point, other))
        }
      }
    }
    return nearest
  }
}
