/** Settings fall back field by field; keys are kept sealed or for the session; the first shoot is put in once. */
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import { openKeys } from '#main/keys.ts'
import { connect } from '#main/store/handle.ts'
import { removed, saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

test('starts with the defaults, changes the named fields alone and remembers them', async () => {
  const folder = temporaryFolder()
  const { handlers, close } = await openedLibrary(folder)
  expect(valueOf(await handlers['settings.get']({}))).toEqual(DEFAULT_SETTINGS)
  await handlers['settings.set']({ units: 'imperial', lastShootId: 'a' })
  expect(valueOf(await handlers['settings.set']({ theme: 'dark', lastShootId: null }))).toEqual({
    ...DEFAULT_SETTINGS,
    units: 'imperial',
    theme: 'dark',
  })
  await close()
  const again = await openedLibrary(folder)
  expect(await again.settings()).toEqual({ ...DEFAULT_SETTINGS, units: 'imperial', theme: 'dark' })
})

test('takes the default for what is unknown, unfit or no JSON, and the rest as stored', async () => {
  const folder = temporaryFolder()
  const { handlers } = await openedLibrary(folder)
  await handlers['settings.set']({ paper: 'letter' })
  const connection = connect(join(folder, 'library.sqlite'), { readonly: false })
  connection.immediately((handle) => {
    const store = (name: string, value: string): unknown =>
      handle.run('INSERT INTO setting (name, value) VALUES (?, ?)', name, value)
    store('units', '"furlongs"')
    store('theme', '{"broken')
    store('ownSources', '[{"id":""}]')
    store('__proto__', '{"polluted":true}')
    store('constructor', '1')
    store('fromTheFuture', '1')
  })
  connection.close()
  const read = valueOf(await handlers['settings.get']({}))
  expect(read).toEqual({ ...DEFAULT_SETTINGS, paper: 'letter' })
  expect(Object.keys(read)).toEqual(Object.keys(DEFAULT_SETTINGS))
})

test('two windows change different settings without undoing each other', async () => {
  const folder = temporaryFolder()
  const [one, other] = [await openedLibrary(folder), await openedLibrary(folder)]
  await one.handlers['settings.set']({ units: 'imperial' })
  await other.handlers['settings.set']({ theme: 'light' })
  expect(await one.settings()).toMatchObject({ units: 'imperial', theme: 'light' })
})

test('a key stays in memory where nothing can seal it, out of the library', async () => {
  const folder = temporaryFolder()
  const service = await openedLibrary(folder, { keys: await openKeys(folder, null) })
  const key = { sourceId: 'mine', key: 'secret-123' }
  expect(valueOf(await service.handlers['settings.key'](key))).toEqual({ kept: 'session' })
  expect(await service.keyOf('mine')).toBe('secret-123')
  expect(JSON.stringify(await service.settings())).not.toContain('secret-123')
  expect(valueOf(await service.handlers['settings.key']({ sourceId: 'mine', key: null }))).toEqual({ kept: 'none' })
  expect(await service.keyOf('mine')).toBe(null)
})

test('a sealed key is there after the next start, unless the seal cannot be opened', async () => {
  const folder = temporaryFolder()
  const cipher = {
    encrypt: async (text: string) => Buffer.from(text).map((byte) => byte ^ 0x5a),
    decrypt: async (bytes: Uint8Array) => Buffer.from(bytes.map((byte) => byte ^ 0x5a)).toString(),
  }
  const first = await openedLibrary(folder, { keys: await openKeys(folder, cipher) })
  const kept = await first.handlers['settings.key']({ sourceId: 'mine', key: 'secret-123' })
  expect(valueOf(kept)).toEqual({ kept: 'stored' })
  const second = await openedLibrary(folder, { keys: await openKeys(folder, cipher) })
  expect(await second.keyOf('mine')).toBe('secret-123')
  const refusing = { ...cipher, decrypt: async () => await Promise.reject<string>(new Error('another user')) }
  const third = await openedLibrary(folder, { keys: await openKeys(folder, refusing) })
  expect(await third.keyOf('mine')).toBe(null)
})

test('puts the first shoot in once: neither a second start nor its deletion brings it back', async () => {
  const folder = temporaryFolder()
  const seed = [saved(shootRecord('demo')), saved(spotRecord('s', 'demo'))]
  const first = await openedLibrary(folder)
  expect(valueOf(await first.seedIfNew(() => seed))).toBe(true)
  expect(valueOf(await first.seedIfNew(() => seed))).toBe(false)
  await first.handlers['library.apply']({ changes: [removed('shoot', 'demo', 1)] })
  await first.close()
  const second = await openedLibrary(folder)
  expect(valueOf(await second.seedIfNew(() => seed))).toBe(false)
  expect(valueOf(await second.handlers['library.state']({})).shootCount).toBe(0)
})

test('a seed that fails leaves no mark: the next start tries again', async () => {
  const service = await openedLibrary(temporaryFolder())
  const orphan = await service.seedIfNew(() => [saved(spotRecord('s', 'nowhere'))])
  expect(orphan.ok).toBe(false)
  expect(valueOf(await service.seedIfNew(() => [saved(shootRecord('demo'))]))).toBe(true)
})
