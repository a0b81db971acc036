/** Keys of map services: enciphered or forgotten, never in plain text on disk. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { type Cipher, openKeys } from '#main/keys.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-keys-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** Bytes turned over: enough to tell plain from enciphered. */
const cipher: Cipher = {
  encrypt: async (text) => Buffer.from(text).map((byte) => byte ^ 0xff),
  decrypt: async (bytes) => Buffer.from(bytes.map((byte) => byte ^ 0xff)).toString(),
}

test('with a cipher a key survives the start, enciphered, readable by its owner alone', async () => {
  expect(await (await openKeys(folder, cipher)).set('a', 'hunter2')).toBe('stored')
  expect(await (await openKeys(folder, cipher)).keyOf('a')).toBe('hunter2')
  expect(readFileSync(join(folder, 'keys.json'), 'utf8')).not.toContain('hunter2')
  expect(statSync(join(folder, 'keys.json')).mode & 0o077).toBe(0)
})

test('without a cipher a key lives until the end and leaves no file', async () => {
  const keys = await openKeys(folder, null)
  expect(await keys.set('a', 'hunter2')).toBe('session')
  expect(await keys.keyOf('a')).toBe('hunter2')
  expect(readdirSync(folder)).toEqual([])
  expect(await (await openKeys(folder, null)).keyOf('a')).toBeNull()
})

test('a forgotten key is gone from memory and disk', async () => {
  const keys = await openKeys(folder, cipher)
  await keys.set('a', 'hunter2')
  expect(await keys.set('a', null)).toBe('none')
  expect(await keys.keyOf('a')).toBeNull()
  expect(await (await openKeys(folder, cipher)).keyOf('a')).toBeNull()
})

test('a cipher that fails keeps the key for the session', async () => {
  const broken = { ...cipher, encrypt: () => Promise.reject(new Error('locked')) }
  const keys = await openKeys(folder, broken)
  expect(await keys.set('a', 'hunter2')).toBe('session')
  expect(await keys.keyOf('a')).toBe('hunter2')
})

test.each(['', '{', '[]', '{"a":7}', '{"a":"!!"}'])('a damaged file (%j) is as none', async (text) => {
  writeFileSync(join(folder, 'keys.json'), text)
  const undecipherable = { ...cipher, decrypt: () => Promise.reject(new Error('not ours')) }
  expect(await (await openKeys(folder, undecipherable)).keyOf('a')).toBeNull()
})
