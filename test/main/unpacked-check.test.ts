/** What lies beside the archive is checked by hash before it is used: changed, missing or unlisted, nothing starts. */
import { createHash } from 'node:crypto'
import { appendFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { checkAddon, checkUnpackedData } from '#main/unpacked-check.ts'

const ADDON = `node_modules/better-sqlite3/prebuilds/${process.platform}-${process.arch}.node`
const ELSEWHERE = 'node_modules/better-sqlite3/prebuilds/plan9-mips.node'
const ZONES = 'out/zones/boundaries.dat'

let root: string

function put(path: string, text: string): string {
  mkdirSync(dirname(join(root, path)), { recursive: true })
  writeFileSync(join(root, path), text)
  return createHash('sha256').update(text).digest('hex')
}

const addon = () => checkAddon(root, join(root, 'out'))
const data = () => checkUnpackedData(root, join(root, 'out'))

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'standpoint-unpacked-'))
  const hashes = { [ADDON]: put(ADDON, 'the addon'), [ZONES]: put(ZONES, 'zones '.repeat(500_000)), [ELSEWHERE]: '00' }
  put('out/checks/unpacked.json', JSON.stringify(hashes))
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

test('as it was packed it is sound, whatever other machines are packed with', async () => {
  expect([(await addon()).ok, (await data()).ok]).toEqual([true, true])
})

test.each([
  ['an addon with one byte more', () => appendFileSync(join(root, ADDON), 'x'), addon, ADDON],
  ['another addon', () => put(ADDON, 'the Addon'), addon, ADDON],
  ['no addon', () => rmSync(join(root, ADDON)), addon, ADDON],
  ['zones with one byte changed', () => put(ZONES, 'Zones '.repeat(500_000)), data, ZONES],
  ['no zones', () => rmSync(join(root, ZONES)), data, ZONES],
  ['no list', () => rmSync(join(root, 'out/checks/unpacked.json')), addon, 'list'],
  ['no list of data', () => rmSync(join(root, 'out/checks/unpacked.json')), data, 'list'],
])('%s is named, with what to do', async (_, spoil, check, named) => {
  spoil()
  const answer = await check()
  expect(answer).toMatchObject({
    ok: false,
    fault: { reason: 'not-as-packed', message: expect.stringContaining(named) },
  })
  expect(answer).toMatchObject({ fault: { message: expect.stringContaining('Install the program again') } })
})

test('what is wrong with the data is no fault of the addon, which is looked at first and alone', async () => {
  rmSync(join(root, ZONES))
  expect((await addon()).ok).toBe(true)
})
