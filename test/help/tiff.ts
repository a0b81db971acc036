/** TIFFs made by hand, byte by byte, for what no writer would write: entries with any type and count, parts that hold what they like. */

/** TIFF's types: 3 two bytes, 4 four bytes, 11 and 12 floating. */
export type TiffEntry = readonly [
  tag: number,
  type: 2 | 3 | 4 | 11 | 12,
  values: readonly number[] | string,
  /** What the file says, where it is not the truth. */
  count?: number,
]

const SIZES = { 2: 1, 3: 2, 4: 4, 11: 4, 12: 8 } as const

/** A little-endian TIFF of one picture: its entries, then `part`, whose place stands in for StripOffsets (273). */
export function tiffOf(entries: readonly TiffEntry[], part: Uint8Array): Buffer {
  const sorted = entries.toSorted(([one], [other]) => one - other)
  const far: Buffer[] = []
  const directory = Buffer.alloc(2 + sorted.length * 12 + 4)
  let farAt = 8 + directory.length
  directory.writeUInt16LE(sorted.length, 0)
  const partAt = farAt + sorted.reduce((sum, entry) => sum + (sizeOf(entry) > 4 ? sizeOf(entry) : 0), 0)
  for (const [at, entry] of sorted.entries()) {
    const [tag, type, values, count] = entry
    const place = 2 + at * 12
    const bytes = valueBytes(type, tag === 273 ? [partAt] : values)
    directory.writeUInt16LE(tag, place)
    directory.writeUInt16LE(type, place + 2)
    directory.writeUInt32LE(count ?? values.length, place + 4)
    if (bytes.length <= 4) bytes.copy(directory, place + 8)
    else {
      directory.writeUInt32LE(farAt, place + 8)
      far.push(bytes)
      farAt += bytes.length
    }
  }
  const head = Buffer.from([0x49, 0x49, 42, 0, 8, 0, 0, 0])
  return Buffer.concat([head, directory, ...far, part])
}

function sizeOf([, type, values]: TiffEntry): number {
  return SIZES[type] * values.length
}

function valueBytes(type: TiffEntry[1], values: readonly number[] | string): Buffer {
  if (typeof values === 'string') return Buffer.from(values, 'latin1')
  const bytes = Buffer.alloc(SIZES[type] * values.length)
  for (const [at, value] of values.entries()) {
    if (type === 3) bytes.writeUInt16LE(value, at * 2)
    else if (type === 4) bytes.writeUInt32LE(value, at * 4)
    else if (type === 11) bytes.writeFloatLE(value, at * 4)
    else if (type === 12) bytes.writeDoubleLE(value, at * 8)
    else bytes.writeUInt8(value, at)
  }
  return bytes
}

/** Elevations of 16 bits in one strip, a second of arc apart, in degrees of WGS 84 from 10 E, 50 N. `change` takes the place of an entry. */
export function elevationTiff(
  { columns, rows, packing, part }: { columns: number; rows: number; packing: number; part: Uint8Array },
  ...change: readonly TiffEntry[]
): Buffer {
  const usual: readonly TiffEntry[] = [
    [256, 4, [columns]],
    [257, 4, [rows]],
    [258, 3, [16]],
    [259, 3, [packing]],
    [262, 3, [1]],
    [273, 4, [0]],
    [277, 3, [1]],
    [278, 4, [rows]],
    [279, 4, [part.length]],
    [339, 3, [2]],
    [33_550, 12, [1 / 3600, 1 / 3600, 0]],
    [33_922, 12, [0, 0, 0, 10, 50, 0]],
    [34_735, 3, [1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326]],
  ]
  const changed = new Map(change.map((entry) => [entry[0], entry]))
  return tiffOf([...usual.filter(([tag]) => !changed.has(tag)), ...change], part)
}
