/** How near a point is to a set of lines, answered from buckets so that a whole map of questions stays cheap. */
import { type IslandPoint, islandDistance } from './island-frame.ts'
import { evenlySpaced } from './outline.ts'

const BUCKET = 60

export class Nearness {
  readonly #buckets = new Map<string, IslandPoint[]>()

  constructor(lines: readonly (readonly IslandPoint[])[]) {
    for (const line of lines) for (const point of evenlySpaced(line, 6)) this.#put(point)
  }

  #put(point: IslandPoint): void {
    const key = `${Math.floor(point.east / BUCKET)} ${Math.floor(point.north / BUCKET)}`
    const bucket = this.#buckets.get(key)
    if (bucket === undefined) this.#buckets.set(key, [point])
    else bucket.push(point)
  }

  /** Metres to the nearest line, or 60 when none is as near as that. */
  metres(point: IslandPoint): number {
    let nearest = BUCKET
    const column = Math.floor(point.east / BUCKET)
    const row = Math.floor(point.north / BUCKET)
    for (let north = -1; north <= 1; north++) {
      for (let east = -1; east <= 1; east++) {
        for (const other of this.#buckets.get(`${column + east} ${row + north}`) ?? []) {
          nearest = Math.min(nearest, islandDistance(point, other))
        }
      }
    }
    return nearest
  }
}
