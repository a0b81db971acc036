/** Owns what may be asked for as a window of cells: a place, a size of cell, a number of cells. */
import { LARGEST_CELL, MOST_CELLS, SMALLEST_CELL } from '#app/contract/ground.ts'
import { isLatLon, type LatLon, latLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { done, failed, type Result } from '#core/result.ts'

export interface WindowWish {
  readonly centre: LatLon
  /** Metres. */
  readonly cell: number
  /** Cells from the middle one to each side. */
  readonly half: number
}

const NAMES = ['lat', 'lon', 'cell', 'half'] as const

export function readWindowWish(query: URLSearchParams): Result<WindowWish, 'bad-window'> {
  const [lat, lon, cell, half] = NAMES.map((name) => figure(query, name))
  const unread = NAMES.find((name) => figure(query, name) === null)
  if (lat === null || lat === undefined || lon === null || lon === undefined || unread !== undefined)
    return bad(`${unread ?? 'lat'} must be given once, as a plain number`)
  if (cell === null || cell === undefined || half === null || half === undefined)
    return bad('cell and half must be given')
  if (!isLatLon(lat, lon) || Math.abs(lon) > 540) return bad('lat must lie within 90 degrees and lon within a turn')
  if (cell < SMALLEST_CELL || cell > LARGEST_CELL) return bad(`cell must be ${SMALLEST_CELL} to ${LARGEST_CELL} metres`)
  const most = (MOST_CELLS - 1) / 2
  if (!Number.isInteger(half) || half < 1 || half > most) return bad(`half must be a whole number from 1 to ${most}`)
  return done({ centre: latLon(lat, lon), cell, half })
}

function figure(query: URLSearchParams, name: string): number | null {
  const [text, ...more] = query.getAll(name)
  if (text === undefined || more.length > 0 || !/^-?\d{1,12}(?:\.\d{1,20})?(?:e-\d{1,2})?$/.test(text)) return null
  return Number(text)
}

function bad(what: string): Result<never, 'bad-window'> {
  return failed('bad-window', `No ground was cut: ${what}.`)
}

/** Every cell unknown. */
export function emptyGrid({ centre, cell, half }: WindowWish): ElevationGrid {
  const side = 2 * half + 1
  return {
    centre,
    cell,
    columns: side,
    rows: side,
    west: -half * cell,
    north: half * cell,
    heights: new Float32Array(side * side).fill(Number.NaN),
  }
}
