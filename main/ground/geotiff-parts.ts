/** Owns the reading of a GeoTIFF's strips and tiles one by one: found, unpacked and made heights; what was never written is unknown. */
import type { GeoTIFFImage } from 'geotiff'
import { bytesOf, heightsFrom, type SampleKind, sampleKind, type ValueRules } from './geotiff-values.ts'
import { stripsTogether } from './geotiff-level.ts'
import type { GeotiffSource } from './geotiff-source.ts'
import type { HeightTally } from './possible-height.ts'
import type { Chunk, Raster } from './raster.ts'
import { mostPacked, unpackPart } from './unpacking.ts'

/** TIFF's number for the predictor. */
const PREDICTOR = 317

function kindOf(image: GeoTIFFImage): SampleKind | null {
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

/** What all pictures of a file share. */
export interface PartsOf {
  readonly fileName: string
  readonly source: GeotiffSource
  readonly noData: number | null
  readonly metresPerUnit: number
  readonly metadata: Readonly<Record<string, unknown>> | null
  readonly tally: HeightTally
}

export function chunkLoader(image: GeoTIFFImage, parts: PartsOf): Raster['load'] {
  const { fileName, source } = parts
  const together = stripsTogether(image)
  const [width, height] = [image.getTileWidth(), image.getTileHeight()]
  const across = Math.ceil(image.getWidth() / width)
  const down = Math.ceil(image.getHeight() / height)
  const rules = rulesOf(image, parts)
  const packing = packingOf(image)
  const size = width * height * bytesOf(rules.kind)

  async function part(x: number, y: number): Promise<Float32Array | null> {
    const { offset, count } = await partOf(image, y * across + x)
    // Never written: nothing is known there, whatever the file calls nothing.
    if (count === 0 || offset === 0) return null
    if (offset + count > source.fileSize) throw new Error('cut short')
    if (count > mostPacked(size)) throw new Error('damaged')
    const packed = new Uint8Array((await source.fetchSlice({ offset, length: count })).data)
    const unpacked = unpackPart(packing, packed, size)
    const heights = heightsFrom(unpacked.subarray(0, size), width, rules, parts.tally)
    const expected = width * image.getBlockHeight(y)
    if (heights.length < expected) throw new Error('damaged')
    return heights.subarray(0, expected)
  }

  async function joined(x: number, y: number): Promise<Float32Array | null> {
    if (together === 1) return part(x, y)
    const last = Math.min(down, (y + 1) * together)
    const heights = new Float32Array(width * height * (last - y * together)).fill(Number.NaN)
    for (let strip = y * together; strip < last; strip++) {
      // oxlint-disable-next-line no-await-in-loop -- one strip after the other keeps memory bounded
      const read = await part(x, strip)
      if (read !== null) heights.set(read, (strip - y * together) * height * width)
    }
    return heights
  }

  return async (x, y): Promise<Chunk> => {
    try {
      return { heights: await joined(x, y), trouble: null }
    } catch {
      return { heights: null, trouble: `A part of ${fileName} cannot be read: the file is damaged. Download it again.` }
    }
  }
}

/** The predictor is undone by ours: the library's own takes each file for one with the low byte first. */
function rulesOf(image: GeoTIFFImage, { noData, metadata, metresPerUnit }: PartsOf): ValueRules {
  const number = (name: string, usual: number): number => {
    const text = metadata?.[name]
    const value = typeof text === 'string' ? Number.parseFloat(text) : Number.NaN
    return Number.isFinite(value) ? value : usual
  }
  return {
    kind: kindOf(image) ?? 'float32',
    littleEndian: image.littleEndian,
    predictor: predictorOf(image),
    noData,
    scale: number('SCALE', 1) * metresPerUnit,
    offset: number('OFFSET', 0) * metresPerUnit,
  }
}
