/** Owns elevation tiles in Terrarium encoding: heights out of a PNG's bytes, and the tiles of a zoom as one raster. */
import { inflateSync } from 'node:zlib'
import { PNG } from 'pngjs'
import { metresPerPixel } from '#core/geo/web-mercator.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { done, failed, type Result } from '#core/result.ts'
import { isPossible } from './possible-height.ts'
import type { Chunk, Raster } from './raster.ts'

export const TILE_SIDE = 256

/** A border of zeros beside ground this high is a fault of the tile's making, no shore. Metres. */
const HIGH_BESIDE = 20

/** Metres above the sea by three bytes (the Tilezen formula); NaN for what can't be a height. */
export function terrariumHeight(red: number, green: number, blue: number): number {
  const height = red * 256 + green + blue / 256 - 32_768
  return isPossible(height) ? height : Number.NaN
}

/** Decoded from the bytes: a canvas would let the alpha channel spoil the colours. Alpha itself says nothing. */
export function decodeTerrarium(body: Uint8Array): Result<Float32Array, 'not-a-height-tile'> {
  const size = pngSize(body)
  if (size === null) return notATile('is not a PNG picture')
  // Looked at before decoding: a small file can claim a picture of gigabytes.
  if (size.width !== TILE_SIDE || size.height !== TILE_SIDE)
    return notATile(`is ${size.width} × ${size.height} instead of ${TILE_SIDE} × ${TILE_SIDE}`)
  if (size.depth !== 8) return notATile(`has ${size.depth} bits a colour instead of 8`)
  const pixels = decoded(body)
  if (pixels === null) return notATile('is damaged')
  const heights = new Float32Array(TILE_SIDE * TILE_SIDE)
  for (let pixel = 0; pixel < heights.length; pixel++) {
    const at = pixel * 4
    heights[pixel] = terrariumHeight(pixels[at] ?? 0, pixels[at + 1] ?? 0, pixels[at + 2] ?? 0)
  }
  for (const [start, step, inward] of BORDERS) distrustZeros(heights, start, step, inward)
  return done(heights)
}

/** First pixel, step along the border, step inward. */
const BORDERS = [
  [0, 1, TILE_SIDE],
  [TILE_SIDE * (TILE_SIDE - 1), 1, -TILE_SIDE],
  [0, TILE_SIDE, 1],
  [TILE_SIDE - 1, TILE_SIDE, -1],
] as const

/** A whole border of exact zeros beside high ground is unknown. */
function distrustZeros(heights: Float32Array, start: number, step: number, inward: number): void {
  let high = 0
  for (let at = 0; at < TILE_SIDE; at++) {
    const pixel = start + at * step
    if (heights[pixel] !== 0) return
    if ((heights[pixel + inward] ?? 0) > HIGH_BESIDE) high += 1
  }
  if (high < TILE_SIDE / 2) return
  for (let at = 0; at < TILE_SIDE; at++) heights[start + at * step] = Number.NaN
}

/** Width, height and depth out of the first chunk, which PNG (RFC 2083) fixes at the beginning. */
function pngSize(body: Uint8Array): { width: number; height: number; depth: number } | null {
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
  if (body.byteLength < 33 || !signature.every((byte, at) => body[at] === byte)) return null
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength)
  return { width: view.getUint32(16), height: view.getUint32(20), depth: view.getUint8(24) }
}

function decoded(body: Uint8Array): Uint8Array | null {
  try {
    if (body[INTERLACE] !== 0 && !interlacedFits(body)) return null
    return PNG.sync.read(Buffer.from(body.buffer, body.byteOffset, body.byteLength)).data
  } catch {
    return null
  }
}

/** Where the header says whether the picture comes in seven passes. */
const INTERLACE = 28

/** The library unpacks a picture in passes without a bound: looked at beforehand whether it holds no more than it says. */
function interlacedFits(body: Uint8Array): boolean {
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength)
  const parts: Uint8Array[] = []
  for (let at = 8; at + 12 <= body.byteLength; at += 12 + view.getUint32(at)) {
    if (view.getUint32(at + 4) === IDAT) parts.push(body.subarray(at + 8, at + 8 + view.getUint32(at)))
  }
  // Four colours at most, and a byte before each row of each pass.
  inflateSync(Buffer.concat(parts), { maxOutputLength: TILE_SIDE * TILE_SIDE * 4 + TILE_SIDE * 4 })
  return true
}

/** The letters of the chunks that hold the picture. */
const IDAT = 0x49_44_41_54

function notATile(what: string): Result<never, 'not-a-height-tile'> {
  return failed('not-a-height-tile', `An elevation tile ${what}. Check the address of the elevation tiles.`)
}

export type LoadTile = (zoom: number, x: number, y: number, signal: AbortSignal) => Promise<Chunk>

/** All tiles of a zoom. Pixel centres lie half a pixel inside their tile, so that column 0 has its centre there. */
export function terrariumRaster(id: string, zoom: number, lat: number, load: LoadTile): Raster {
  const side = TILE_SIDE * 2 ** zoom
  return {
    id: `${id}/${zoom}`,
    columns: side,
    rows: side,
    chunkColumns: TILE_SIDE,
    chunkRows: TILE_SIDE,
    turn: side,
    round: true,
    reach: 0.5,
    remote: true,
    resolution: metresPerPixel(lat, zoom),
    pixelAt: (at, lon) => ({
      column: (lon / 360 + 0.5) * side - 0.5,
      row: (0.5 - Math.asinh(Math.tan(at * RADIANS_PER_DEGREE)) / (2 * Math.PI)) * side - 0.5,
    }),
    load: (x, y, signal) => load(zoom, x, y, signal),
  }
}

/** More tiles than this are not asked for by one window: a coarser zoom has to do. */
const MOST_TILES = 100
/** A window that wants its crests may ask for more: in a zoom as coarse as its cells every crest is levelled. */
const MOST_FOR_PEAKS = 220
/** Metres: pins and fine windows ask for no more detail than the open data has. */
const FINEST = 8

/** The zoom whose pixels are no larger than a size in metres, as long as a window so wide needs no more tiles than is decent. */
export function zoomFor(lat: number, pixel: number, width: number, maxZoom: number, peaks: boolean): number {
  let zoom = 0
  const wanted = Math.max(pixel, FINEST)
  const most = peaks ? MOST_FOR_PEAKS : MOST_TILES
  while (zoom < maxZoom && metresPerPixel(lat, zoom) > wanted) zoom += 1
  while (zoom > 0 && tilesAcross(lat, zoom, width) ** 2 > most) zoom -= 1
  return zoom
}

function tilesAcross(lat: number, zoom: number, width: number): number {
  return width / (metresPerPixel(lat, zoom) * TILE_SIDE) + 1
}
