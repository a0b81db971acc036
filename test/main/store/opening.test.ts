/** However the library file is found, the program says what, where and what to do, and never touches what it cannot use. */
import { spawnSync } from 'node:child_process'
import {
  chmodSync,
  chownSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { APPLICATION_ID } from '#main/store/file-header.ts'
import { connect, create } from '#main/store/handle.ts'
import { NEWEST_FORM } from '#main/store/migrate.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, reasonOf, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

/** A folder with a closed library of so many spots, and a good backup of it when asked for. */
async function folderWith(spots: number, backup = false): Promise<{ folder: string; path: string }> {
  const folder = temporaryFolder()
  const service = await openedLibrary(folder)
  const records = Array.from({ length: spots }, (_, n) => spotRecord(`s${n}`, 'a', { name: `Pier ${n}` }))
  valueOf(await service.handlers['library.apply']({ changes: [shootRecord('a'), ...records].map((one) => saved(one)) }))
  if (backup) valueOf(await service.tend())
  await service.close()
  return { folder, path: join(folder, 'library.sqlite') }
}

const CHANGE = { changes: [saved(shootRecord('late'))] }

test('a first start makes an empty library, complete or not there at all', async () => {
  const folder = join(temporaryFolder(), 'made', 'on demand')
  const { handlers } = await openedLibrary(folder)
  expect(valueOf(await handlers['library.state']({}))).toEqual({
    state: 'open',
    message: 'A new library was made.',
    backups: [],
    backupFault: null,
    version: 0,
    shootCount: 0,
    spotCount: 0,
  })
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
})

test('two first starts at once make one library', async () => {
  const folder = temporaryFolder()
  const both = await Promise.all([openedLibrary(folder), openedLibrary(folder)])
  for (const [at, { handlers }] of both.entries()) {
    valueOf(await handlers['library.apply']({ changes: [saved(shootRecord(`from-${at}`))] }))
  }
  expect(valueOf(await both[0].handlers['library.state']({})).shootCount).toBe(2)
})

describe('damage', () => {
  // P75: such a file opens and counts all its rows; only a check of its own tells.
  test('a file cut short by 3000 bytes is told before anything is read, and every call says so', async () => {
    const { folder, path } = await folderWith(100)
    truncateSync(path, statSync(path).size - 3_000)
    const before = readFileSync(path)
    const { handlers } = await openedLibrary(folder)
    const { state, message } = valueOf(await handlers['library.state']({}))
    expect([state, message]).toEqual(['damaged', expect.stringContaining('cut short')])
    expect(reasonOf(await handlers['library.shoots']({}))).toBe('damaged')
    expect(reasonOf(await handlers['library.apply'](CHANGE))).toBe('damaged')
    expect(reasonOf(await handlers['settings.set']({ theme: 'dark' }))).toBe('damaged')
    expect(valueOf(await handlers['settings.get']({})).theme).toBe('system')
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  test('a cut that the header does not tell is found by the check', async () => {
    const { folder, path } = await folderWith(100)
    const bytes = readFileSync(path).subarray(0, -4_096)
    // The header's own size, bytes 28 to 31, is made to agree with the cut.
    bytes.writeUInt32BE(bytes.length / 4_096, 28)
    writeFileSync(path, bytes)
    const { handlers } = await openedLibrary(folder)
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({
      state: 'damaged',
      message: expect.stringContaining('did not pass its check'),
    })
  })

  test('a page overwritten in the middle is found by the check', async () => {
    const { folder, path } = await folderWith(100)
    const bytes = readFileSync(path)
    bytes.fill(0x5a, 8 * 4_096, 11 * 4_096)
    writeFileSync(path, bytes)
    const { handlers } = await openedLibrary(folder)
    expect(valueOf(await handlers['library.state']({})).state).toBe('damaged')
  })

  test.each([
    ['an empty file', Buffer.alloc(0)],
    ['some other file', Buffer.from('This is a letter, not a library. '.repeat(40))],
    ['a header and nothing else', Buffer.from('SQLite format 3\0')],
  ])('%s is told and left as it is', async (_, bytes) => {
    const { folder, path } = await folderWith(1)
    writeFileSync(path, bytes)
    const { handlers } = await openedLibrary(folder)
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({
      state: 'damaged',
      message: expect.stringContaining('not a library'),
    })
    expect(readFileSync(path).equals(bytes)).toBe(true)
  })

  test("another program's database is not taken for a library", async () => {
    const folder = temporaryFolder()
    const foreign = create(join(folder, 'library.sqlite'), APPLICATION_ID + 1)
    foreign.immediately((handle) => {
      handle.script('CREATE TABLE theirs (x) STRICT'.replace('(x)', '(x TEXT)'))
    })
    foreign.close()
    const { handlers } = await openedLibrary(folder)
    expect(valueOf(await handlers['library.state']({})).state).toBe('damaged')
  })

  test('a missing file is not replaced by an empty one where backups show that it is lost', async () => {
    const { folder, path } = await folderWith(7, true)
    rmSync(path)
    const { handlers } = await openedLibrary(folder)
    const { state, message, backups } = valueOf(await handlers['library.state']({}))
    expect([state, message, backups.length]).toEqual(['damaged', expect.stringContaining('missing'), 1])
    valueOf(await handlers['library.restore']({ backup: backups[0]?.name ?? '' }))
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'open', spotCount: 7 })
  })

  test('a log left over without its file is kept, and not played into the new library', async () => {
    const { folder, path } = await folderWith(3)
    const writer = connect(path, { readonly: false })
    writer.immediately((handle) => handle.run("UPDATE counter SET value = 40 WHERE name = 'version'"))
    copyFileSync(`${path}-wal`, join(folder, 'log'))
    writer.close()
    rmSync(path)
    copyFileSync(join(folder, 'log'), `${path}-wal`)
    const { handlers } = await openedLibrary(folder)
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'open', version: 0, spotCount: 0 })
    expect(readdirSync(folder).some((name) => name.startsWith('library-left-over'))).toBe(true)
  })

  test('a file that vanishes while the library is open is told, not made again', async () => {
    const folder = temporaryFolder()
    const { handlers } = await openedLibrary(folder)
    await handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
    rmSync(join(folder, 'library.sqlite'))
    const answer = await handlers['library.apply'](CHANGE)
    expect(answer).toMatchObject({
      ok: false,
      fault: { reason: 'unavailable', message: expect.stringContaining('gone') },
    })
    expect(readdirSync(folder)).not.toContain('library.sqlite')
  })
})

test('a library of a newer version is told and left untouched, byte for byte', async () => {
  const { folder, path } = await folderWith(3)
  const writer = connect(path, { readonly: false })
  writer.immediately((handle) => {
    handle.script(`PRAGMA user_version = ${NEWEST_FORM + 10}; CREATE TABLE of_the_future (x TEXT) STRICT`)
  })
  writer.close()
  const before = readFileSync(path)
  const { handlers } = await openedLibrary(folder)
  const { state, message } = valueOf(await handlers['library.state']({}))
  expect([state, message]).toEqual(['newer', expect.stringContaining('update the program')])
  expect(reasonOf(await handlers['library.apply'](CHANGE))).toBe('newer')
  expect(readFileSync(path).equals(before)).toBe(true)
  expect(readdirSync(folder)).toEqual(['library.sqlite'])
})

describe('write protection', () => {
  test('opened for reading alone, the library shows everything and saves nothing', async () => {
    const { folder, path } = await folderWith(5)
    const before = readFileSync(path)
    const { handlers } = await openedLibrary(folder, { readonly: true })
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'read-only', spotCount: 5 })
    expect(valueOf(await handlers['library.find']({ words: 'pier 3', within: null, limit: 5 })).total).toBe(1)
    const answer = await handlers['library.apply'](CHANGE)
    expect(answer).toMatchObject({
      ok: false,
      fault: { reason: 'read-only', message: expect.stringContaining('write') },
    })
    expect(reasonOf(await handlers['settings.set']({ theme: 'dark' }))).toBe('read-only')
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  // A file mode means nothing to root: there the library is opened by a process of the user nobody.
  test.each(['file', 'folder'] as const)('a write-protected %s opens for reading', async (what) => {
    const { folder, path } = await folderWith(5)
    if (what === 'file') chmodSync(path, 0o444)
    else chmodSync(folder, 0o555)
    const root = process.getuid?.() === 0
    if (root) for (const one of [folder, path]) chownSync(one, 65_534, 65_534)
    const script = join(import.meta.dirname, '../../help/open-and-tell.ts')
    const told = spawnSync(process.execPath, [script, folder], root ? { uid: 65_534, gid: 65_534 } : {})
    chmodSync(folder, 0o755)
    expect(told.stderr.toString()).toBe('')
    const { state, apply } = JSON.parse(told.stdout.toString())
    expect(state).toMatchObject({ state: 'read-only', spotCount: 5 })
    expect(apply).toMatchObject({ ok: false, fault: { reason: 'read-only' } })
  })

  test('a folder that cannot be made is told', async () => {
    const folder = temporaryFolder()
    writeFileSync(join(folder, 'taken'), 'a file where the folder should be')
    const { handlers } = await openedLibrary(join(folder, 'taken'), { keys: NO_KEYS })
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ state: 'unavailable' })
    expect(reasonOf(await handlers['library.apply'](CHANGE))).toBe('unavailable')
  })

  test('a folder under the library’s name is told', async () => {
    const folder = temporaryFolder()
    mkdirSync(join(folder, 'library.sqlite'))
    const { handlers } = await openedLibrary(folder)
    const { state, message } = valueOf(await handlers['library.state']({}))
    expect(['damaged', 'unavailable']).toContain(state)
    expect(message).toMatch(/\.$/)
  })
})

const NO_KEYS = { keyOf: async () => null, set: async () => 'none' as const }
