/** Owns GeoTIFF files: the one file that names geotiff, with what has to be done around it for heights to be right. */
import type { FileHandle } from 'node:fs/promises'
import { GeoTIFF, type GeoTIFFImage } from 'geotiff'
import type { Bounds } from '#core/geo/bounds.ts'
import { done, failed, type Result } from '#core/result.ts'
import { type GeoTags, geotiffBounds, type GeotiffPlace, geotiffPlace } from './geotiff-place.ts'
import { unfitness } from './geotiff-fit.ts'
import { type GeotiffSource, readLongLists, sourceOf } from './geotiff-source.ts'
import { chunkSize, type LevelFacts, levelFacts } from './geotiff-level.ts'
import { chunkLoader, packingOf, partOf, predictorOf } from './geotiff-parts.ts'
import { noDataOf } from './geotiff-values.ts'
import { type HeightTally, newTally } from './possible-height.ts'
import type { Raster } from './raster.ts'
import { MOST_IMAGES, tiffFault } from './tiff-check.ts'

/** Plain facts: they pass from the thread that reads the file to the one that answers. */
export interface GeotiffFacts {
  readonly place: GeotiffPlace
  readonly bounds: Bounds
  /** The finest first. */
  readonly levels: readonly LevelFacts[]
}

export interface OpenGeotiff {
  readonly facts: GeotiffFacts
  /** Of each level, in the same order. */
  readonly loaders: readonly Raster['load'][]
  readonly tally: HeightTally
}

export async function openGeotiff(
  fileName: string,
  open: () => Promise<FileHandle>,
  bytes: number,
): Promise<Result<OpenGeotiff>> {
  try {
    const source = sourceOf(open, bytes)
    const fault = await tiffFault(source)
    if (fault !== null) return notReadable(fileName, fault)
    return await described(fileName, source, await imagesOf(source))
  } catch (error) {
    // Only what is said here is fit to be read; the library's words speak of its insides.
    const ours = error instanceof Error && error.message.startsWith('it ')
    return notReadable(fileName, ours ? error.message : 'it is not a TIFF, or damaged')
  }
}

function notReadable(fileName: string, why: string): Result<never> {
  const reason = why.replace(/\.$/, '').slice(0, 200)
  return failed(
    'not-a-geotiff',
    `${fileName} cannot be read as a GeoTIFF (${reason}). Download it again, or write it again.`,
  )
}

/** Images of the file one after the other; a chain of them that never ends is left after forty. */
async function imagesOf(source: GeotiffSource): Promise<GeoTIFFImage[]> {
  const tiff = await GeoTIFF.fromSource(source)
  const images: GeoTIFFImage[] = []
  for (let index = 0; index < MOST_IMAGES; index++) {
    // oxlint-disable-next-line no-await-in-loop -- each tells where the next one lies
    const image = await tiff.getImage(index).catch((error: unknown) => {
      if (index > 0 && error instanceof Error && error.message.startsWith('No image at index')) return null
      throw error
    })
    if (image === null) break
    // oxlint-disable-next-line no-await-in-loop -- as above
    if (!image.littleEndian) await readLongLists(image.fileDirectory, source)
    images.push(image)
  }
  return images
}

async function described(
  fileName: string,
  source: GeotiffSource,
  images: readonly GeoTIFFImage[],
): Promise<Result<OpenGeotiff>> {
  const [first] = images
  if (first === undefined) return notReadable(fileName, 'it holds no picture')
  const unfit = unfitnessOf(first, images.some(isMask), fileName)
  if (unfit !== null) return unfit
  const metadata = await first.getGDALMetadata(0)
  const place = geotiffPlace(await tagsOf(first, metadata), fileName)
  if (!place.ok) return place
  const bounds = geotiffBounds(place.value)
  if (bounds === null) return notReadable(fileName, 'it lies outside the earth')
  if (await cutShort(first, source.fileSize))
    return notReadable(fileName, 'it was cut short: its last parts are missing')
  const noData = noDataOf(await text(first, 'GDAL_NODATA'))
  const tally = newTally()
  const { metresPerUnit } = place.value
  const shared = { fileName, source, noData, metresPerUnit, metadata, tally }
  const levels = [
    first,
    ...images.slice(1).filter((image) => isOverview(image) && unfitnessOf(image, false, '') === null),
  ]
    .map((image) => ({ facts: levelFacts(image, place.value, bounds), load: chunkLoader(image, shared) }))
    .toSorted((one, other) => one.facts.resolution - other.facts.resolution)
  return done({
    facts: { place: place.value, bounds, levels: levels.map(({ facts }) => facts) },
    loaders: levels.map(({ load }) => load),
    tally,
  })
}

function subfile(image: GeoTIFFImage): number {
  return image.fileDirectory.getValue('NewSubfileType') ?? 0
}

function isMask(image: GeoTIFFImage): boolean {
  return (subfile(image) & 4) !== 0
}

function isOverview(image: GeoTIFFImage): boolean {
  return (subfile(image) & 1) !== 0 && !isMask(image)
}

function unfitnessOf(image: GeoTIFFImage, masked: boolean, fileName: string): Result<never> | null {
  const { columns, rows } = chunkSize(image)
  const facts = {
    bands: image.getSamplesPerPixel(),
    photometric: image.fileDirectory.getValue('PhotometricInterpretation') ?? 1,
    format: image.getSampleFormat(),
    bits: image.getBitsPerSample(),
    packing: packingOf(image),
    predictor: predictorOf(image),
    littleEndian: image.littleEndian,
    masked,
    columns: image.getWidth(),
    rows: image.getHeight(),
    partColumns: columns,
    partRows: rows,
  }
  return unfitness(facts, fileName)
}

async function tagsOf(image: GeoTIFFImage, metadata: Readonly<Record<string, unknown>> | null): Promise<GeoTags> {
  const list = async (name: 'ModelPixelScale' | 'ModelTiepoint' | 'ModelTransformation') => {
    const values: unknown = await image.fileDirectory.loadValue(name)
    return values === undefined || values === null ? null : Array.from(values as ArrayLike<number>)
  }
  const unit = metadata?.['UNITTYPE']
  return {
    keys: image.getGeoKeys(),
    scale: await list('ModelPixelScale'),
    tiepoints: await list('ModelTiepoint'),
    transformation: await list('ModelTransformation'),
    unit: typeof unit === 'string' ? unit : null,
    columns: image.getWidth(),
    rows: image.getHeight(),
  }
}

async function text(image: GeoTIFFImage, name: 'GDAL_NODATA'): Promise<string | null> {
  const value: unknown = await image.fileDirectory.loadValue(name)
  return typeof value === 'string' ? value : null
}

/** Looks at the parts that lie farthest back: first, middle and last ones, and every one of a short list. */
async function cutShort(image: GeoTIFFImage, bytes: number): Promise<boolean> {
  const { columns, rows } = chunkSize(image)
  const parts = Math.ceil(image.getWidth() / columns) * Math.ceil(image.getHeight() / rows)
  const step = Math.max(1, Math.floor(parts / 500))
  for (let index = parts - 1; index >= 0; index -= step) {
    // oxlint-disable-next-line no-await-in-loop -- the list is read once and looked up after that
    const { offset, count } = await partOf(image, index)
    if (offset + count > bytes) return true
  }
  return false
}
