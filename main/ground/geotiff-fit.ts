/** Owns which pictures in a TIFF can be taken for elevations, and what is said of the others. */
import { failed, type Result } from '#core/result.ts'
import { sampleKind } from './geotiff-values.ts'
import { isPackingRead, packingName } from './unpacking.ts'

/** By TIFF's own numbers. */
export interface PictureFacts {
  /** Values in each place. */
  readonly bands: number
  readonly photometric: number
  readonly format: number
  readonly bits: number
  readonly packing: number
  readonly predictor: number
  readonly littleEndian: boolean
  /** A mask among the file's pictures. */
  readonly masked: boolean
  readonly columns: number
  readonly rows: number
  /** Of a strip or tile. */
  readonly partColumns: number
  readonly partRows: number
}

/** Most samples of a part: it is unpacked whole, and four must fit into the cache at once. */
export const LARGEST_PART = 8_000_000

/** White or black is zero: a single value, no colour. */
const SINGLE_VALUE: ReadonlySet<number> = new Set([0, 1])

/** TIFF's sample formats: whole numbers, whole numbers with a sign. */
const SHADES: ReadonlySet<number> = new Set([1, 2])
const FLOATING = 3

function numbersName(format: number): string {
  if (format === FLOATING) return 'floating numbers'
  return SHADES.has(format) ? 'whole numbers' : 'numbers of another kind, such as complex ones,'
}

/** Null when it can be. */
export function unfitness(facts: PictureFacts, fileName: string): Result<never, 'not-elevation'> | null {
  const why = whyUnfit(facts)
  return why === null ? null : failed('not-elevation', `${fileName} ${why}`)
}

function whyUnfit(facts: PictureFacts): string | null {
  const {
    bands,
    photometric,
    format,
    bits,
    packing,
    predictor,
    littleEndian,
    masked,
    columns,
    rows,
    partColumns,
    partRows,
  } = facts
  if (bands !== 1)
    return `has ${bands} values in each place, as a photograph has. Choose a file of elevation data alone.`
  if (format === FLOATING && bits === 16)
    return 'keeps its heights as floating numbers of 16 bits, which step by 1 m above 1,024 m and by 4 m above 4,096 m: they are not read. Save it again from its source by gdal_translate -ot Float32.'
  if (!SINGLE_VALUE.has(photometric) || (SHADES.has(format) && bits < 16))
    return `holds colours or shades (${bits} bits), not heights. Choose a file with whole or floating numbers of 16 bits or more.`
  if (sampleKind(format, bits) === null)
    return `holds ${numbersName(format)} of ${bits} bits, which are not read. Save it again, for instance by gdal_translate -ot Float32.`
  if (!isPackingRead(packing))
    return `is packed by ${packingName(packing)}, which is not read. Save it again, for instance by gdal_translate -co COMPRESS=DEFLATE.`
  // GDAL itself writes such files in an order of its own and reads them back wrong.
  if (predictor === 3 && !littleEndian)
    return 'keeps floating numbers with the high byte first and by predictor 3, which programs disagree on. Save it again by gdal_translate -co PREDICTOR=2 from its source.'
  if (masked) return 'marks its gaps by a mask, which is not read. Save it again by gdalwarp -dstnodata -9999.'
  if (!(partColumns > 0 && partRows > 0 && columns > 0 && rows > 0)) return 'holds no samples at all.'
  if (partColumns * partRows > LARGEST_PART)
    return `is stored in parts of ${partColumns} × ${partRows} samples, too large to be read piece by piece. Save it again by gdal_translate -co TILED=YES.`
  return null
}
