/** Owns .hgt files (SRTM): the tile a name stands for, the two sizes there are, and the samples by position. */
import type { FileHandle } from 'node:fs/promises'
import type { Bounds } from '#core/geo/bounds.ts'
import { unwrapNear } from '#core/geo/bounds.ts'
import { type LatLon, wrapLongitude } from '#core/geo/lat-lon.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { done, failed, type Result } from '#core/result.ts'
import { type HeightTally, isPossible, tallyTooHigh } from './possible-height.ts'
import type { Raster } from './raster.ts'

/** Samples along a side by size in bytes (JPL's SRTM notes): 3 and 1 arc seconds, edges shared with the neighbours. */
const SIDES: ReadonlyMap<number, number> = new Map([
  [2_884_802, 1201],
  [25_934_402, 3601],
])
export const LARGEST_HGT = 25_934_402

/** SRTM's own word for no data. */
const VOID = -32_768
/** Lines read at once. */
const CHUNK_ROWS = 128

/** The degree square that holds a place: its south-west corner, floored; 180 is −180. */
export function hgtName({ lat, lon }: LatLon): string {
  const south = Math.min(89, Math.floor(lat))
  const west = Math.floor(wrapLongitude(lon))
  const number = (value: number, digits: number): string => String(Math.abs(value)).padStart(digits, '0')
  return `${south < 0 ? 'S' : 'N'}${number(south, 2)}${west < 0 ? 'W' : 'E'}${number(west, 3)}`
}

/** South-west corner by the file's name, which is the centre of its south-west sample. What follows the name is of no matter. */
export function hgtCorner(fileName: string): Result<LatLon, 'bad-name'> {
  const parts = /^([NS])(\d{2})([EW])(\d{3})(?:\D.*)?\.hgt$/i.exec(fileName)
  if (parts === null) return badName(fileName, 'does not say which degree it covers')
  const [, northSouth = '', latText = '', eastWest = '', lonText = ''] = parts
  const lat = Number(latText) * (northSouth.toUpperCase() === 'S' ? -1 : 1)
  const lon = Number(lonText) * (eastWest.toUpperCase() === 'W' ? -1 : 1)
  if (lat < -90 || lat > 89 || lon < -180 || lon > 179)
    return badName(
      fileName,
      `names a degree that does not exist (latitudes go from S90 to N89, longitudes from W180 to E179)`,
    )
  return done({ lat: lat + 0, lon: lon + 0 })
}

function badName(fileName: string, what: string): Result<never, 'bad-name'> {
  return failed('bad-name', `${fileName} ${what}. Give it its usual name, such as N46E007.hgt.`)
}

/** Samples along a side, by the size alone: the file has no header. */
export function hgtSide(fileName: string, bytes: number): Result<number, 'bad-size'> {
  const side = SIDES.get(bytes)
  if (side !== undefined) return done(side)
  return failed(
    'bad-size',
    `${fileName} has ${bytes.toLocaleString('en')} bytes. An .hgt file has 2,884,802 (3 arc seconds) or 25,934,402 (1 arc second): it was cut short or is something else. Download it again.`,
  )
}

export function hgtBounds(corner: LatLon): Bounds {
  return { south: corner.lat, north: corner.lat + 1, west: corner.lon, east: corner.lon + 1 }
}

/** Metres between samples along a meridian. */
export function hgtResolution(side: number): number {
  return (MEAN_EARTH_RADIUS * RADIANS_PER_DEGREE) / (side - 1)
}

export function hgtRaster(id: string, corner: LatLon, side: number, load: Raster['load']): Raster {
  return {
    id,
    columns: side,
    rows: side,
    chunkColumns: side,
    chunkRows: CHUNK_ROWS,
    turn: 360 * (side - 1),
    round: false,
    reach: 0,
    remote: false,
    resolution: hgtResolution(side),
    pixelAt: (lat, lon) => ({
      column: (unwrapNear(lon, corner.lon + 0.5) - corner.lon) * (side - 1),
      row: (corner.lat + 1 - lat) * (side - 1),
    }),
    load,
  }
}

export function hgtLoader(
  corner: LatLon,
  side: number,
  open: () => Promise<FileHandle>,
  tally: HeightTally,
): Raster['load'] {
  return async (_x, y) => {
    const rows = Math.min(CHUNK_ROWS, side - y * CHUNK_ROWS)
    const bytes = await readAt(open, y * CHUNK_ROWS * side * 2, rows * side * 2).catch(() => null)
    if (bytes === null)
      return { heights: null, trouble: `${hgtName(corner)}.hgt cannot be read any more. Add it again.` }
    return { heights: hgtHeights(bytes, tally), trouble: null }
  }
}

/** Null when the file ends before. */
async function readAt(open: () => Promise<FileHandle>, position: number, length: number): Promise<Buffer | null> {
  const bytes = Buffer.alloc(length)
  const { bytesRead } = await (await open()).read(bytes, 0, length, position)
  return bytesRead < length ? null : bytes
}

/** 16-bit, high byte first. What stands beyond all heights is a gap, and counted. */
export function hgtHeights(bytes: Buffer, tally: HeightTally): Float32Array {
  const heights = new Float32Array(bytes.length / 2)
  for (let sample = 0; sample < heights.length; sample++) {
    const height = bytes.readInt16BE(sample * 2)
    const known = height !== VOID && isPossible(height)
    heights[sample] = known ? height : Number.NaN
    if (known) tally.known += 1
    else tallyTooHigh(tally, height)
  }
  return heights
}
