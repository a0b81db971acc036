/** Owns what may be asked for as a window of cells: a place, a size of cell, a number of cells. */
import { LARGEST_CELL, MOST_CELLS, SMALLEST_CELL } from '#app/contract/ground.ts'
import { isLatLon, type LatLon, latLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type SquareWindow, squareGrid } from '#core/ground/elevation-grid.ts'
import { done, failed, type Result } from '#core/result.ts'

export interface WindowWish {
  /** Where the plane of the cells touches the ellipsoid; windows of one plane lie within each other without a seam. */
  readonly centre: LatLon
  /** Metres from there to the middle of the window. */
  readonly east: number
  readonly north: number
  /** Metres. */
  readonly cell: number
  /** Cells from the middle one to each side. */
  readonly half: number
  /** True: a cell is the highest sample of its middle half: between coarse cells no crest is lost, and none grows wide. */
  readonly peaks: boolean
}

/** Samples across a cell that wants its crest: one as wide as the cell is a mean, in which no crest is left. */
const SAMPLES_FOR_PEAKS = 4

/** Metres between the samples that a window is best cut from. */
export function pixelFor({ cell, peaks }: Pick<WindowWish, 'cell' | 'peaks'>): number {
  return peaks ? cell / SAMPLES_FOR_PEAKS : cell
}

const NAMES = ['lat', 'lon', 'cell', 'half'] as const
/** Metres that a window may lie off the place where its plane touches: farther off the plane leaves the earth. */
const FARTHEST_OFF = 20_000

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
  const [east, north] = [offset(query, 'east'), offset(query, 'north')]
  if (east === null || north === null) return bad(`east and north must be ${-FARTHEST_OFF} to ${FARTHEST_OFF} metres`)
  return done({ centre: latLon(lat, lon), east, north, cell, half, peaks: query.has('peaks') })
}

/** 0 when it is not given. */
function offset(query: URLSearchParams, name: 'east' | 'north'): number | null {
  if (!query.has(name)) return 0
  const metres = figure(query, name)
  return metres === null || Math.abs(metres) > FARTHEST_OFF ? null : metres
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
export function emptyGrid(window: SquareWindow): ElevationGrid {
  return squareGrid(window, new Float32Array((2 * window.half + 1) ** 2).fill(Number.NaN))
}
