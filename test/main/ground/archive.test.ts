/** Archives as they are unpacked: what goes wrong on the disk is told as that, and nothing half-written stays. */
import { closeSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import { unpack } from '#main/ground/archive.ts'
import { openFileReader } from '#main/ground/file-reader.ts'
import { hgtBytes, zipOf } from '#test/help/elevation-files.ts'
import { READER_CODE } from '#test/help/reader-code.ts'

/** What the file system answers instead of opening, writing or closing; '' while it does its work. */
const faults = vi.hoisted(() => ({ openSync: '', writeFileSync: '', closeSync: '' }))
/** Numbers of files that the file system was asked to close, those included that it would not. */
const closed = vi.hoisted((): unknown[] => [])

vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>()
  const failing = <Name extends keyof typeof faults>(name: Name) =>
    ((...words: unknown[]) => {
      const code = faults[name]
      if (name === 'closeSync') closed.push(words[0])
      if (code !== '' && isOurs(name, words[0])) throw Object.assign(new Error(code), { code })
      return Reflect.apply(real[name], null, words) as unknown
    }) as (typeof real)[Name]
  return {
    ...real,
    openSync: failing('openSync'),
    writeFileSync: failing('writeFileSync'),
    closeSync: failing('closeSync'),
  }
})

/** Of what the test itself writes nothing fails. */
function isOurs(name: keyof typeof faults, first: unknown): boolean {
  return name !== 'openSync' || String(first).includes('.incoming-')
}

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'archive-'))
})
afterEach(() => {
  Object.assign(faults, { openSync: '', writeFileSync: '', closeSync: '' })
  rmSync(folder, { recursive: true, force: true })
})

const HILLS = hgtBytes(1201, (column, row) => (column * row) % 997)

function put(bytes: Uint8Array): string {
  const archive = join(folder, 'squares.zip')
  writeFileSync(archive, bytes)
  return archive
}

async function unpacked(archive: string, alive: () => void = () => undefined, to = folder) {
  const wish = { folder: to, prefix: '.incoming-a', ending: /\.hgt$/i, largest: 30_000_000, most: 100_000_000 }
  return unpack({ ...wish, archive }, alive)
}

describe('a fault of the disk', () => {
  test.each([
    ['openSync', 'ENOSPC', 'disk-full'],
    ['openSync', 'EDQUOT', 'disk-full'],
    ['openSync', 'EACCES', 'not-written'],
    ['writeFileSync', 'ENOSPC', 'disk-full'],
    ['writeFileSync', 'EIO', 'not-written'],
    ['closeSync', 'EDQUOT', 'disk-full'],
  ] as const)('in %s, %s, is told as %s', async (name, code, reason) => {
    const archive = put(zipOf({ 'N46E007.hgt': HILLS, 'N47E007.hgt': HILLS }))
    faults[name] = code
    const { entries, fault } = await unpacked(archive)
    expect([entries, fault?.reason]).toEqual([[], reason])
    expect(fault?.message).not.toMatch(/damaged/)
    expect(readdirSync(folder)).toEqual(['squares.zip'])
  })

  test('in closing is no reason to close again: by then the number may be another file’s', async () => {
    const archive = put(zipOf({ 'N46E007.hgt': HILLS }))
    closed.length = 0
    faults.closeSync = 'EIO'
    await unpacked(archive)
    expect(closed).toHaveLength(1)
  })

  test('as a folder that is gone is no fault of the archive’s', async () => {
    const archive = put(zipOf({ 'N46E007.hgt': HILLS }))
    const { fault } = await unpacked(archive, undefined, join(folder, 'gone'))
    expect(fault).toMatchObject({ reason: 'not-written', message: expect.stringContaining('could not be written') })
  })
})

test('unpacked without a hitch it says that it is alive once a second, not at each piece', async () => {
  let signs = 0
  const begun = performance.now()
  const { entries, fault } = await unpacked(put(zipOf({ 'N46E007.hgt': HILLS, 'N47E007.hgt': HILLS })), () => {
    signs += 1
  })
  expect([entries.length, fault]).toEqual([2, null])
  expect(signs).toBeLessThanOrEqual((performance.now() - begun) / 1000)
  expect(readdirSync(folder).toSorted()).toEqual(['.incoming-a-1', '.incoming-a-2', 'squares.zip'])
})

test('an entry that goes on beyond all bounds is not unpacked to its end', async () => {
  const { entries, fault } = await unpacked(put(zipOf({ 'N46E007.hgt': new Uint8Array(120_000_000) })))
  expect([entries, fault?.reason]).toEqual([[{ name: 'N46E007.hgt', path: null }], 'too-much'])
  expect(readdirSync(folder)).toEqual(['squares.zip'])
})

/** What stands before an entry that is stored as it is. */
function entryHead(name: string, size: number): Buffer {
  const head = Buffer.alloc(30)
  head.writeUInt32LE(0x04034b50, 0)
  head.writeUInt16LE(20, 4)
  head.writeUInt32LE(size, 18)
  head.writeUInt32LE(size, 22)
  head.writeUInt16LE(name.length, 26)
  return Buffer.concat([head, Buffer.from(name)])
}

test(
  'what is no square costs no memory, however large: the squares beside it are found',
  { timeout: 120_000 },
  async () => {
    // More than the reading thread may have.
    const picture = 500_000_000
    const archive = join(folder, 'squares.zip')
    const first = entryHead('picture.tif', picture)
    const file = openSync(archive, 'w')
    writeSync(file, first, 0, first.length, 0)
    const second = Buffer.concat([entryHead('N46E007.hgt', HILLS.length), HILLS])
    writeSync(file, second, 0, second.length, first.length + picture)
    closeSync(file)
    const reader = openFileReader(READER_CODE)
    onTestFinished(() => reader.close())
    const answer = await reader.unpack(archive, 'squares.zip', { folder, prefix: '.incoming-a' })
    expect(answer).toMatchObject({ ok: true, value: { fault: null, entries: [{ name: 'N46E007.hgt' }] } })
    expect(readFileSync(join(folder, '.incoming-a-1')).equals(HILLS)).toBe(true)
  },
)
