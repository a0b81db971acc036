/** Packings of strips and tiles: unpacked right, never into more than was promised, and ended whatever the bytes are. */
import { deflateSync, zstdCompressSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { unpackLzw } from '#main/ground/lzw.ts'
import { isPackingRead, mostPacked, packingName, unpackPart } from '#main/ground/unpacking.ts'

const [PLAIN, LZW, DEFLATE, RUNS, OLD_DEFLATE, ZSTANDARD] = [1, 5, 8, 32_773, 32_946, 50_000] as const

/** Codes as TIFF 6.0, section 13 puts them: highest bit first, all of so many bits. */
function codes(list: readonly number[], bits = 9): Uint8Array {
  const text = list.map((code) => code.toString(2).padStart(bits, '0')).join('')
  const bytes = text.padEnd(Math.ceil(text.length / 8) * 8, '0').match(/.{8}/g) ?? []
  return Uint8Array.from(bytes, (byte) => Number.parseInt(byte, 2))
}

/** Codes that grow as the table does, which has an entry more after each code but the first. */
function grownCodes(list: readonly number[]): Uint8Array {
  let [text, next, bits] = ['', 257, 9]
  for (const code of list) {
    text += code.toString(2).padStart(bits, '0')
    if (code !== 256) next = Math.min(4096, next + 1)
    if (next >= (1 << bits) - 1 && bits < 12) bits += 1
  }
  return Uint8Array.from(text.padEnd(text.length + 8, '0').match(/.{8}/g) ?? [], (byte) => Number.parseInt(byte, 2))
}

describe('LZW', () => {
  // TIFF 6.0, section 13: its own example, "7 7 7 8 8 7 7 6 6" -> 256 7 258 8 8 258 6 6 257.
  test('the example of the specification', () => {
    expect([...unpackLzw(codes([256, 7, 258, 8, 8, 258, 6, 6, 257]), 20)]).toEqual([7, 7, 7, 8, 8, 7, 7, 6, 6])
  })

  test('no more than was promised, in the middle of a code too', () => {
    expect([...unpackLzw(codes([256, 7, 258, 8, 8, 258, 6, 6, 257]), 6)]).toEqual([7, 7, 7, 8, 8, 7])
    expect([...unpackLzw(codes([256, 7, 258, 259, 260, 261]), 4)]).toEqual([7, 7, 7, 7])
  })

  test('a code that is not there yet is damage', () => {
    expect(() => unpackLzw(codes([256, 7, 300, 257]), 20)).toThrow('damaged')
    expect(() => unpackLzw(codes([256, 258, 257]), 20)).toThrow('damaged')
  })

  test('a table that is full and never cleared comes to an end', () => {
    const many = Array.from({ length: 9000 }, (_, at) => (at * 7) % 256)
    expect([...unpackLzw(grownCodes([256, ...many, 4095, 257]), 50_000)].slice(0, 9000)).toEqual(many)
  })

  test('any bytes at all end, within what was promised', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 3000 }), fc.integer({ min: 0, max: 5000 }), (bytes, size) => {
        try {
          expect(unpackLzw(bytes, size).length).toBeLessThanOrEqual(size)
        } catch (error) {
          expect((error as Error).message).toBe('damaged')
        }
      }),
    )
  })
})

describe('PackBits', () => {
  // TIFF 6.0, section 9: its own example.
  const packed = [0xfe, 0xaa, 0x02, 0x80, 0x00, 0x2a, 0xfd, 0xaa, 0x03, 0x80, 0x00, 0x2a, 0x22, 0xf7, 0xaa]
  const plain = 'aaaaaa80002aaaaaaaaa80002a22aaaaaaaaaaaaaaaaaaaa'

  test('the example of the specification, and −128 says nothing', () => {
    expect(Buffer.from(unpackPart(RUNS, Uint8Array.from(packed), 100)).toString('hex')).toBe(plain)
    expect(Buffer.from(unpackPart(RUNS, Uint8Array.from([0x80, ...packed]), 100)).toString('hex')).toBe(plain)
  })

  test('no more than was promised', () => {
    expect(Buffer.from(unpackPart(RUNS, Uint8Array.from(packed), 4)).toString('hex')).toBe('aaaaaa80')
  })
})

describe('a bomb', () => {
  const zeros = new Uint8Array(100_000_000)
  test.each([
    ['deflate', DEFLATE, deflateSync(zeros)],
    ['old deflate', OLD_DEFLATE, deflateSync(zeros)],
    ['Zstandard', ZSTANDARD, zstdCompressSync(zeros)],
  ])('of %s is not unpacked', (_name, packing, bytes) => {
    const before = process.memoryUsage().rss
    expect(() => unpackPart(packing, bytes, 20_000)).toThrow(/larger than|maxOutputLength|ERR_BUFFER/i)
    expect(process.memoryUsage().rss - before).toBeLessThan(30_000_000)
  })
})

test('a whole part of each packing is no larger than is taken in', () => {
  const noise = Uint8Array.from({ length: 50_000 }, (_, at) => (at * 7919 + ((at * at) >> 3)) % 256)
  expect(deflateSync(noise).length).toBeLessThan(mostPacked(noise.length))
  expect(zstdCompressSync(noise).length).toBeLessThan(mostPacked(noise.length))
  expect([...unpackPart(DEFLATE, deflateSync(noise), noise.length)]).toEqual([...noise])
  expect([...unpackPart(ZSTANDARD, zstdCompressSync(noise), noise.length)]).toEqual([...noise])
})

test('packings that are not read have names', () => {
  expect([PLAIN, LZW, DEFLATE, RUNS, OLD_DEFLATE, ZSTANDARD].every(isPackingRead)).toBe(true)
  expect([34_887, 7, 34_712, 50_001, 12_345].map(packingName)).toEqual([
    'LERC',
    'JPEG',
    'JPEG 2000',
    'WebP',
    'packing number 12345',
  ])
  expect([34_887, 7, 34_712, 50_001, 12_345].some(isPackingRead)).toBe(false)
})
