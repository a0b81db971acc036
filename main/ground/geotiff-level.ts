/** Owns one level of detail of a GeoTIFF as a raster: its strips or tiles unpacked one by one, what was never written unknown. */
import { type GeoTIFFImage, getDecoder } from 'geotiff'
import type { Bounds } from '#core/geo/bounds.ts'
import { type GeotiffPlace, pixelFinder, resolutionOf } from './geotiff-place.ts'
import { heightsFrom, type SampleKind, sampleKind, type ValueRules } from './geotiff-values.ts'
import type { Chunk, Raster } from './raster.ts'

/** Strips of few rows are read together up to so many rows. */
const ROWS_TOGETHER = 128
/** TIFF's number for the predictor. */
const PREDICTOR = 317

export function kindOf(image: GeoTIFFImage): SampleKind | null {
  return sampleKind(image.getSampleFormat(), image.getBitsPerSample())
}

export function packingOf(image: GeoTIFFImage): number {
  return image.fileDirectory.getValue('Compression') ?? 1
}

/** It only means something with the packings that know it. */
export function predictorOf(image: GeoTIFFImage): number {
  const knows = [5, 8, 32_946, 50_000].includes(packingOf(image))
  return knows ? Number(image.fileDirectory.actualizedFields.get(PREDICTOR) ?? 1) : 1
}

export function chunkSize(image: GeoTIFFImage): { readonly columns: number; readonly rows: number } {
  return { columns: image.getTileWidth(), rows: image.getTileHeight() }
}

function listNames(image: GeoTIFFImage): readonly [offsets: string, counts: string] {
  return image.isTiled ? ['TileOffsets', 'TileByteCounts'] : ['StripOffsets', 'StripByteCounts']
}

export async function partOf(
  image: GeoTIFFImage,
  index: number,
): Promise<{ readonly offset: number; readonly count: number }> {
  const [offsets, counts] = listNames(image)
  const offset = Number(await image.fileDirectory.loadValueIndexed(offsets, index))
  const count = Number(await image.fileDirectory.loadValueIndexed(counts, index))
  if (!Number.isFinite(offset) || !Number.isFinite(count)) throw new Error('it does not say where its parts lie')
  return { offset, count }
}

export interface LevelParts {
  readonly id: string
  readonly fileName: string
  readonly bytes: number
  readonly first: GeoTIFFImage
  readonly place: GeotiffPlace
  readonly bounds: Bounds
  readonly noData: number | null
  readonly metadata: Readonly<Record<string, unknown>> | null
}

export function levelRaster(image: GeoTIFFImage, parts: LevelParts): Raster {
  const { first, place, bounds } = parts
  const [across, down] = [image.getWidth() / first.getWidth(), image.getHeight() / first.getHeight()]
  const find = pixelFinder(place, bounds)
  const size = chunkSize(image)
  // Strips are joined, tiles are taken as they are.
  const together = image.isTiled ? 1 : Math.max(1, Math.floor(ROWS_TOGETHER / size.rows))
  const degreesAcross = Math.hypot(place.affine.a, place.affine.d) / across
  const turn = place.system === null ? 360 / degreesAcross : null
  const columns = image.getWidth()
  return {
    id: `${parts.id}/${columns}`,
    columns,
    rows: image.getHeight(),
    chunkColumns: size.columns,
    chunkRows: size.rows * together,
    turn,
    round: turn !== null && Math.abs(turn - columns) < 0.01,
    reach: 0.5,
    remote: false,
    resolution: resolutionOf(place, bounds) / Math.min(across, down),
    pixelAt: (lat, lon) => {
      const { column, row } = find(lat, lon)
      return { column: (column + 0.5) * across - 0.5, row: (row + 0.5) * down - 0.5 }
    },
    load: chunkLoader(image, together, parts),
  }
}

type Decoder = Awaited<ReturnType<typeof getDecoder>>

function chunkLoader(image: GeoTIFFImage, together: number, parts: LevelParts): Raster['load'] {
  const { fileName, bytes } = parts
  const across = Math.ceil(image.getWidth() / image.getTileWidth())
  const down = Math.ceil(image.getHeight() / image.getTileHeight())
  const rules = rulesOf(image, parts)
  let decoder: Promise<Decoder> | null = null

  async function part(x: number, y: number): Promise<Float32Array | null> {
    const { offset, count } = await partOf(image, y * across + x)
    // Never written: nothing is known there, whatever the file calls nothing.
    if (count === 0 || offset === 0) return null
    if (offset + count > bytes) throw new Error('cut short')
    decoder ??= decoderOf(image)
    const { data } = await image.getTileOrStrip(x, y, 0, await decoder)
    const heights = heightsFrom(new Uint8Array(data), image.getTileWidth(), rules)
    const expected = image.getTileWidth() * image.getBlockHeight(y)
    if (heights.length < expected) throw new Error('damaged')
    return heights.subarray(0, expected)
  }

  async function joined(x: number, y: number): Promise<Float32Array | null> {
    if (together === 1) return part(x, y)
    const width = image.getTileWidth()
    const rows = image.getTileHeight()
    const last = Math.min(down, (y + 1) * together)
    const heights = new Float32Array(width * rows * (last - y * together)).fill(Number.NaN)
    for (let strip = y * together; strip < last; strip++) {
      // oxlint-disable-next-line no-await-in-loop -- one strip after the other keeps memory bounded
      const read = await part(x, strip)
      if (read !== null) heights.set(read, (strip - y * together) * rows * width)
    }
    return heights
  }

  return async (x, y): Promise<Chunk> => {
    try {
      return { heights: await joined(x, y), trouble: null }
    } catch {
      return { heights: null, trouble: `A part of ${fileName} cannot be read: the file is damaged. Fetch it again.` }
    }
  }
}

/** The predictor is undone here: the library's own takes each file for one with the low byte first. */
async function decoderOf(image: GeoTIFFImage): Promise<Decoder> {
  return getDecoder(packingOf(image), {
    tileWidth: image.getTileWidth(),
    tileHeight: image.getTileHeight(),
    planarConfiguration: 1,
    bitsPerSample: [image.getBitsPerSample()],
    predictor: 1,
  })
}

function rulesOf(image: GeoTIFFImage, { noData, metadata, place }: LevelParts): ValueRules {
  const number = (name: string, usual: number): number => {
    const told = metadata?.[name]
    const value = typeof told === 'string' ? Number.parseFloat(told) : Number.NaN
    return Number.isFinite(value) ? value : usual
  }
  return {
    kind: kindOf(image) ?? 'float32',
    littleEndian: image.littleEndian,
    predictor: predictorOf(image),
    noData,
    scale: number('SCALE', 1) * place.metresPerUnit,
    offset: number('OFFSET', 0) * place.metresPerUnit,
  }
}
