/** The tile cache keeps, evicts, and comes back from damage. */
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openTileCache, TILE_CACHE_FILE, type KeptTile, type TileCache, type TileKey } from '#main/store/tile-cache.ts'

let folder = ''
let open: TileCache[] = []

function cache(capBytes?: number): TileCache {
  const made = openTileCache(capBytes === undefined ? { folder } : { folder, capBytes })
  open.push(made)
  return made
}

function key(x: number, template = 'https://tiles.example.org/{z}/{x}/{y}.png'): TileKey {
  return { template, z: 5, x, y: 0 }
}

function tile(bytes: number): KeptTile {
  const body = Uint8Array.from({ length: bytes }, (_, index) => index % 251)
  return { type: 'image/png', body, etag: '"a"', lastModified: null, freshUntil: 1000, staleAllowed: true }
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tile-cache-'))
})

afterEach(() => {
  for (const one of open) one.close()
  open = []
  rmSync(folder, { recursive: true, force: true })
})

describe('what is kept', () => {
  test('comes back equal after closing and opening', () => {
    const first = openTileCache({ folder })
    first.put(key(1), tile(300), 0)
    first.close()
    const back = cache().get(key(1), 0)
    expect(back && { ...back, body: Uint8Array.from(back.body) }).toEqual(tile(300))
  })

  test('is apart by template, so a changed address shows nothing of the old one', () => {
    const held = cache()
    held.put(key(1), tile(10), 0)
    expect(held.get(key(1, 'https://other.example.org/{z}/{x}/{y}.png'), 0)).toBeNull()
  })

  test('is replaced, not doubled, when put again', () => {
    const held = cache()
    held.put(key(1), tile(10), 0)
    held.put(key(1), tile(30), 0)
    expect(held.size()).toBe(30)
  })

  test('is gone once removed', () => {
    const held = cache()
    held.put(key(1), tile(10), 0)
    held.remove(key(1))
    expect(held.get(key(1), 0)).toBeNull()
  })
})

describe('the size cap', () => {
  test('drops the tile longest unused, not the oldest', () => {
    const held = cache(1000)
    held.put(key(1), tile(400), 0)
    held.put(key(2), tile(400), 100_000)
    held.get(key(1), 200_000)
    held.put(key(3), tile(400), 300_000)
    expect([1, 2, 3].map((x) => held.get(key(x), 300_000) !== null)).toEqual([true, false, true])
    expect(held.size()).toBeLessThanOrEqual(1000)
  })

  test('is never passed, however small the tiles', () => {
    const held = cache(10_000)
    let largest = 0
    for (let x = 0; x < 31; x += 1) {
      for (let z = 0; z < 20; z += 1) held.put({ ...key(x), z }, tile(37), x * 100_000)
      largest = Math.max(largest, held.size())
    }
    expect(largest).toBeLessThanOrEqual(10_000)
    expect(largest).toBeGreaterThan(9_000)
  })

  test('leaves out a tile larger than the whole cache', () => {
    const held = cache(100)
    held.put(key(1), tile(50), 0)
    held.put(key(2), tile(200), 0)
    expect([held.get(key(1), 0) !== null, held.get(key(2), 0)]).toEqual([true, null])
  })
})

describe('clearing', () => {
  test('gives the disk back and says how much', () => {
    const held = cache()
    for (let x = 0; x < 30; x += 1) held.put(key(x), tile(20_000), 0)
    const freed = held.clear()
    expect(freed).toBeGreaterThan(600_000 - 20_000)
    expect(held.size()).toBe(0)
    expect(statSync(join(folder, TILE_CACHE_FILE)).size).toBeLessThan(100_000)
  })
})

describe('a damaged file', () => {
  test('that is no database is made again', () => {
    writeFileSync(join(folder, TILE_CACHE_FILE), 'this was once a cache '.repeat(500))
    const held = cache()
    held.put(key(1), tile(10), 0)
    expect(held.get(key(1), 0)?.body.byteLength).toBe(10)
    expect(readFileSync(join(folder, TILE_CACHE_FILE)).subarray(0, 15).toString()).toBe('SQLite format 3')
  })

  test('that was cut short loses its tiles and works on', () => {
    const first = openTileCache({ folder })
    for (let x = 0; x < 30; x += 1) first.put(key(x), tile(20_000), 0)
    first.close()
    truncateSync(join(folder, TILE_CACHE_FILE), 300_000)
    const held = cache()
    for (let x = 0; x < 30; x += 1) held.get(key(x), 0)
    held.put(key(99), tile(10), 0)
    expect(held.get(key(99), 0)?.body.byteLength).toBe(10)
  })

  test.each([
    ['its beginning', 4096],
    ['its bodies, found out only when one is read', 200_000],
  ])('overwritten in %s loses its tiles and works on', (_, offset) => {
    const first = openTileCache({ folder })
    for (let x = 0; x < 30; x += 1) first.put(key(x), tile(20_000), 0)
    first.close()
    const handle = openSync(join(folder, TILE_CACHE_FILE), 'r+')
    writeSync(handle, Buffer.alloc(200_000, 0x5a), 0, 200_000, offset)
    closeSync(handle)
    const held = cache()
    for (let x = 0; x < 30; x += 1) held.get(key(x), 0)
    held.put(key(99), tile(10), 0)
    expect(held.get(key(99), 0)?.body.byteLength).toBe(10)
    expect(held.size()).toBe(10)
  })

  test('of another layout is made again', () => {
    const first = openTileCache({ folder })
    first.put(key(1), tile(10), 0)
    first.close()
    const handle = openSync(join(folder, TILE_CACHE_FILE), 'r+')
    writeSync(handle, Buffer.from([0, 0, 0, 99]), 0, 4, 60)
    closeSync(handle)
    expect(cache().get(key(1), 0)).toBeNull()
  })

  test('that was deleted while closed is made again, folder and all', () => {
    cache().close()
    open = []
    rmSync(folder, { recursive: true })
    const held = cache()
    held.put(key(1), tile(10), 0)
    expect(existsSync(join(folder, TILE_CACHE_FILE))).toBe(true)
  })
})

test('keeps tiles in memory where no file can be made', () => {
  const blocked = join(folder, 'blocked')
  writeFileSync(blocked, 'a file where a folder should be')
  const held = openTileCache({ folder: join(blocked, 'inside') })
  held.put(key(1), tile(10), 0)
  expect(held.get(key(1), 0)?.body.byteLength).toBe(10)
  held.close()
})
