/** The R*Tree of spots: keeps it in step with the spots, and asks it for a box that may cross the antimeridian. */
import type { ReadHandle, SqlValue, WriteHandle } from './handle.ts'

export interface Bounds {
  readonly south: number
  readonly north: number
  /** Greater than east when the box crosses the antimeridian. */
  readonly west: number
  readonly east: number
}

/** Enters the spots with these keys, taking their position from the spots' own rows. */
export function enterPlaces(handle: WriteHandle, keys: readonly number[]): void {
  handle.run(
    `INSERT OR REPLACE INTO spot_place (key, west, east, south, north, lat, lon)
       SELECT key, lon, lon, lat, lat, lat, lon FROM spot WHERE key IN (SELECT value FROM json_each(?))`,
    JSON.stringify(keys),
  )
}

export function leavePlaces(handle: WriteHandle, keys: readonly number[]): void {
  handle.run('DELETE FROM spot_place WHERE key IN (SELECT value FROM json_each(?))', JSON.stringify(keys))
}

/** The box as one or two that do not cross: stored longitudes run from -180 up to, never reaching, 180. */
export function plainBoxes(bounds: Bounds): readonly Bounds[] {
  if (bounds.west > bounds.east)
    return [
      { ...bounds, east: 180 },
      { ...bounds, west: -180 },
    ]
  // Its east edge is the meridian stored as -180; when west is -180 too the box already holds it.
  if (bounds.east === 180 && bounds.west > -180) return [bounds, { ...bounds, west: -180, east: -180 }]
  return [bounds]
}

/** For a query over `spot_place AS place`: the tree narrows by its rounded bounds, the exact position decides. */
export const IN_BOX =
  'place.east >= ? AND place.west <= ? AND place.north >= ? AND place.south <= ? ' +
  'AND place.lon BETWEEN ? AND ? AND place.lat BETWEEN ? AND ?'

export function boxValues({ west, east, south, north }: Bounds): readonly SqlValue[] {
  return [west, east, south, north, west, east, south, north]
}

/** How many spots stand in the boxes, counting no further than `most`. */
export function countPlaces(handle: ReadHandle, boxes: readonly Bounds[], most: number): number {
  let count = 0
  for (const box of boxes) {
    const sql = `SELECT count(*) AS count FROM (SELECT 1 FROM spot_place AS place WHERE ${IN_BOX} LIMIT ?)`
    count += handle.row<{ count: number }>(sql, ...boxValues(box), most - count)?.count ?? 0
    if (count >= most) break
  }
  return count
}
