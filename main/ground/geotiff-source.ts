/** Owns how the bytes of a GeoTIFF reach the library: by position, never beyond the end unnoticed, long lists in their own order. */
import type { FileHandle } from 'node:fs/promises'

interface Slice {
  readonly offset: number
  readonly length: number
}

interface SliceRead extends Slice {
  readonly data: ArrayBuffer
}

export interface GeotiffSource {
  readonly fetch: (slices: readonly Slice[]) => Promise<ArrayBuffer[]>
  readonly fetchSlice: (slice: Slice) => Promise<SliceRead>
  /** Null when the file ends before. */
  readonly view: (offset: number, length: number) => Promise<DataView | null>
  readonly fileSize: number
  readonly close: () => Promise<void>
}

/** More than any part of a file that is read here: a list of where the parts lie, of eight bytes each. */
const LARGEST_SLICE = 160_000_000

/** The library's own source hands on what it did not read as zeros; here only the room after the end is filled so. */
export function sourceOf(open: () => Promise<FileHandle>, bytes: number): GeotiffSource {
  const fetchSlice = async ({ offset, length }: Slice): Promise<SliceRead> => {
    if (!(offset >= 0 && offset < bytes && length >= 0 && length <= LARGEST_SLICE)) throw new Error('it was cut short')
    const wanted = Math.min(length, bytes - offset)
    // A length that the file only claims must not cost memory; the library reads a little beyond a short file's end.
    const data = new ArrayBuffer(Math.min(length, wanted + 65_536))
    const { bytesRead } = await (await open()).read(new Uint8Array(data), 0, wanted, offset)
    if (bytesRead < wanted) throw new Error('it was cut short')
    return { data, offset, length: data.byteLength }
  }
  const view = async (offset: number, length: number): Promise<DataView | null> => {
    if (!(offset >= 0 && length <= LARGEST_SLICE && offset + length <= bytes)) return null
    return new DataView((await fetchSlice({ offset, length })).data)
  }
  return {
    view,
    fetch: async (slices) => Promise.all(slices.map(async (slice) => (await fetchSlice(slice)).data)),
    fetchSlice,
    fileSize: bytes,
    close: async () => undefined,
  }
}

/** What is needed of the library's directory of an image. */
interface Directory {
  readonly deferredArrays: Map<string | number, { arrayOffset: number; itemSize: number; length: number }>
  readonly actualizedFields: Map<string | number, string | number | (string | number)[]>
}

/** StripOffsets, StripByteCounts, TileOffsets, TileByteCounts. */
const LISTS = [273, 279, 324, 325] as const

/** The library reads long lists of strips and tiles low byte first whatever the file says (geotiff.js #535): read here. */
export async function readLongLists(directory: Directory, source: GeotiffSource): Promise<void> {
  for (const tag of LISTS) {
    const list = directory.deferredArrays.get(tag)
    if (list === undefined) continue
    const { arrayOffset, itemSize, length } = list
    // oxlint-disable-next-line no-await-in-loop -- two lists at most
    const { data } = await source.fetchSlice({ offset: arrayOffset, length: itemSize * length })
    const view = new DataView(data)
    const read = (at: number): number =>
      itemSize === 2 ? view.getUint16(at) : itemSize === 4 ? view.getUint32(at) : Number(view.getBigUint64(at))
    directory.actualizedFields.set(
      tag,
      // A long list is held as numbers alone: as a list of the language's own it costs several times as much.
      Float64Array.from({ length }, (_, index) => read(index * itemSize)) as unknown as number[],
    )
    directory.deferredArrays.delete(tag)
  }
}
