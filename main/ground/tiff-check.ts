/** Owns the look at a TIFF's directories before the library takes anything from them: what they claim must fit into the file. */
import type { GeotiffSource } from './geotiff-source.ts'

export const MOST_IMAGES = 40

/** Entries of one directory: files of elevations have some twenty. */
const MOST_ENTRIES = 2_000
/** Bytes of one entry's value, save for the lists of where the parts lie. */
const LARGEST_VALUE = 16_000_000
/** Parts of one picture: a whole earth of an arc second in tiles of 256 has 13 million. */
const MOST_PARTS = 20_000_000
/** Samples along one side: half a metre over 5,000 km. */
const LONGEST_SIDE = 10_000_000

/** Bytes of a value by TIFF's types 1 to 13 and BigTIFF's 16 to 18. */
const SIZES: readonly number[] = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8]
/** Whole numbers that are never below zero. */
const WHOLE: ReadonlySet<number> = new Set([1, 3, 4, 16])

/** StripOffsets, StripByteCounts, TileOffsets, TileByteCounts. */
const LISTS: ReadonlySet<number> = new Set([273, 279, 324, 325])
/** ImageWidth, ImageLength, TileWidth, TileLength: one whole number each, and not zero. RowsPerStrip may be "all of them". */
const SIDES: ReadonlySet<number> = new Set([256, 257, 322, 323])
/** NewSubfileType, Compression, PhotometricInterpretation, SamplesPerPixel, RowsPerStrip, PlanarConfiguration, Predictor. */
const SINGLE: ReadonlySet<number> = new Set([...SIDES, 254, 259, 262, 277, 278, 284, 317])
/** BitsPerSample, SampleFormat. */
const NUMBERS: ReadonlySet<number> = new Set([258, 339])

interface Form {
  readonly little: boolean
  readonly big: boolean
}

/** Null when all of it fits; otherwise why it doesn't, to follow "it". */
export async function tiffFault(source: GeotiffSource): Promise<string | null> {
  const head = await source.view(0, 16)
  if (head === null) return 'it is not a TIFF'
  const order = head.getUint16(0)
  const little = order === 0x49_49
  const magic = head.getUint16(2, little)
  if ((!little && order !== 0x4d_4d) || (magic !== 42 && magic !== 43)) return 'it is not a TIFF'
  const form = { little, big: magic === 43 }
  let at = form.big ? Number(head.getBigUint64(8, little)) : head.getUint32(4, little)
  for (let image = 0; image < MOST_IMAGES && at !== 0; image++) {
    // oxlint-disable-next-line no-await-in-loop -- each tells where the next one lies
    const read = await directory(source, at, form)
    if (typeof read === 'string') return read
    at = read.next
  }
  return null
}

async function directory(source: GeotiffSource, at: number, form: Form): Promise<string | { readonly next: number }> {
  const { little, big } = form
  const [countBytes, entryBytes, nextBytes] = big ? [8, 20, 8] : [2, 12, 4]
  const head = await source.view(at, countBytes)
  if (head === null) return 'it was cut short'
  const count = big ? Number(head.getBigUint64(0, little)) : head.getUint16(0, little)
  if (count > MOST_ENTRIES) return 'its directory is damaged'
  const all = await source.view(at + countBytes, count * entryBytes + nextBytes)
  if (all === null) return 'it was cut short'
  for (let entry = 0; entry < count; entry++) {
    const fault = entryFault(all, entry * entryBytes, form, source.fileSize)
    if (fault !== null) return fault
  }
  const end = count * entryBytes
  return { next: big ? Number(all.getBigUint64(end, little)) : all.getUint32(end, little) }
}

function entryFault(view: DataView, at: number, { little, big }: Form, fileSize: number): string | null {
  const tag = view.getUint16(at, little)
  const type = view.getUint16(at + 2, little)
  const count = big ? Number(view.getBigUint64(at + 4, little)) : view.getUint32(at + 4, little)
  const place = at + (big ? 12 : 8)
  const bytes = (SIZES[type] ?? 0) * count
  const list = LISTS.has(tag)
  const whole = list || SINGLE.has(tag) || NUMBERS.has(tag)
  if ((SIZES[type] ?? 0) === 0 || (whole && !WHOLE.has(type))) return 'its directory is damaged'
  if (list ? count > MOST_PARTS : bytes > LARGEST_VALUE) return 'its directory is damaged'
  if (bytes > (big ? 8 : 4)) {
    const offset = big ? Number(view.getBigUint64(place, little)) : view.getUint32(place, little)
    if (offset + bytes > fileSize) return 'it was cut short'
  }
  if (SINGLE.has(tag) && count !== 1) return 'its directory is damaged'
  return SIDES.has(tag) ? sideFault(number(view, place, type, little)) : null
}

function sideFault(side: number): string | null {
  if (side < 1) return 'it says that it holds no samples'
  return side > LONGEST_SIDE ? `it says that it has ${side.toLocaleString('en')} samples along one side` : null
}

function number(view: DataView, place: number, type: number, little: boolean): number {
  if (type === 1) return view.getUint8(place)
  if (type === 3) return view.getUint16(place, little)
  return type === 4 ? view.getUint32(place, little) : Number(view.getBigUint64(place, little))
}
