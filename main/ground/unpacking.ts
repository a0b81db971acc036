/** Owns the unpacking of a GeoTIFF's strips and tiles: by each packing that is read, never into more than was promised. */
import { inflateSync, zstdDecompressSync } from 'node:zlib'
import { unpackLzw } from './lzw.ts'

/** Some writers fill the last strip up, or end with a few bytes more. */
const SLACK = 65_536

/** TIFF's numbers: packings without loss. */
const UNPACKERS: Readonly<Record<number, (packed: Uint8Array, size: number) => Uint8Array>> = {
  1: (packed) => packed,
  5: unpackLzw,
  8: inflate,
  32_773: unpackRuns,
  32_946: inflate,
  50_000: (packed, size) => zstdDecompressSync(packed, { maxOutputLength: size + SLACK }),
}

/** Names of those that are not read, so that they can be told. */
const NAMES: Readonly<Record<number, string>> = {
  2: 'fax coding',
  3: 'fax coding',
  4: 'fax coding',
  6: 'JPEG',
  7: 'JPEG',
  34_712: 'JPEG 2000',
  34_887: 'LERC',
  34_925: 'LZMA',
  50_001: 'WebP',
  50_002: 'JPEG XL',
  52_546: 'JPEG XL',
}

export function isPackingRead(packing: number): boolean {
  return UNPACKERS[packing] !== undefined
}

export function packingName(packing: number): string {
  return NAMES[packing] ?? `packing number ${packing}`
}

/** `size` is what a whole part has. Throws when the bytes are damaged or hold more than that. */
export function unpackPart(packing: number, packed: Uint8Array, size: number): Uint8Array {
  const unpack = UNPACKERS[packing]
  if (unpack === undefined) throw new Error('packed in a way that is not read')
  return unpack(packed, size)
}

/** The most bytes that a part of so many can be packed into: none of the packings grows by more than a half (LZW of noise). */
export function mostPacked(size: number): number {
  return size * 2 + SLACK
}

function inflate(packed: Uint8Array, size: number): Uint8Array {
  return inflateSync(packed, { maxOutputLength: size + SLACK })
}

/** PackBits (TIFF 6.0, section 9): runs of the same byte, and bytes as they are. */
function unpackRuns(packed: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size)
  let [at, filled] = [0, 0]
  while (at < packed.length && filled < size) {
    const head = ((packed[at++] ?? 0) << 24) >> 24
    // −128 says nothing.
    if (head === -128) continue
    const count = Math.min(head < 0 ? 1 - head : head + 1, size - filled)
    if (head < 0) out.fill(packed[at++] ?? 0, filled, filled + count)
    else {
      out.set(packed.subarray(at, at + count), filled)
      at += head + 1
    }
    filled += count
  }
  return out.subarray(0, filled)
}
