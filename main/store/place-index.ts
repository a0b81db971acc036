/** The R*Tree of spots: keeps it in step with the spots, and asks it for a box that may cross the antimeridian. */
import type { Bounds } from '#core/geo/bounds.ts'
import type { ReadHandle, SqlValue, WriteHandle } from './handle.ts'

/** Enters the spots with these keys, taking their position from the spots' own rows. */
export function enterPlaces(handle: WriteHandle, keys: readonly number[]): void {
  handle.run(
    `INSERT OR REPLACE INTO spot_place (key, west, east, south, north)
       SELECT key, lon, lon, lat, lat FROM spot WHERE key IN (SELECT value FROM json_each(?))`,
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

const EXACTLY = 'spot.lon BETWEEN ? AND ? AND spot.lat BETWEEN ? AND ?'

/**
 * For a query over `spot_place AS place`: the tree narrows by its bounds, which are rounded outward; where they reach over
 * the box's edge the exact position decides.
 */
export const IN_BOX = `place.east >= ? AND place.west <= ? AND place.north >= ? AND place.south <= ?
  AND ((place.west >= ? AND place.east <= ? AND place.south >= ? AND place.north <= ?)
    OR EXISTS (SELECT 1 FROM spot INDEXED BY spot_at WHERE spot.key = place.key AND ${EXACTLY}))`

export function boxValues({ west, east, south, north }: Bounds): readonly SqlValue[] {
  return [west, east, south, north, west, east, south, north, west, east, south, north]
}

/** Joins the exact position to rows that are found in another way, and keeps those in one of the boxes. */
export function joinInAny(keyColumn: string, boxes: readonly Bounds[]): string {
  const any = boxes.map(() => `(${EXACTLY})`).join(' OR ')
  return `CROSS JOIN spot INDEXED BY spot_at ON spot.key = ${keyColumn} AND (${any})`
}

export function anyBoxValues(boxes: readonly Bounds[]): readonly SqlValue[] {
  return boxes.flatMap(({ west, east, south, north }) => [west, east, south, north])
}

/** How many spots stand in the boxes, give or take those within 2 m of an edge, counting no further than `most`. */
export function countPlaces(handle: ReadHandle, boxes: readonly Bounds[], most: number): number {
  const sql = `SELECT count(*) AS count FROM (SELECT 1 FROM spot_place
    WHERE east >= ? AND west <= ? AND north >= ? AND south <= ? LIMIT ?)`
  let count = 0
  for (const { west, east, south, north } of boxes) {
    count += handle.row<{ count: number }>(sql, west, east, south, north, most - count)?.count ?? 0
    if (count >= most) break
  }
  return count
}
