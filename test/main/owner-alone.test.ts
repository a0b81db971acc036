/** What the user owns is for the user alone: each folder and file the program makes, and those that it once made for all to read. */
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openLog } from '#main/log.ts'
import { ownEntriesIn, ownFolder } from '#main/owner-alone.ts'
import { openTileCache } from '#main/store/tile-cache.ts'
import { saved, shootRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'

let folder: string
let before: number
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-own-'))
  // As most systems have it: new files may be read by all.
  before = process.umask(0o022)
})
afterEach(() => {
  process.umask(before)
  rmSync(folder, { recursive: true, force: true })
})

function modes(place: string): Record<string, string> {
  const names = readdirSync(place, { recursive: true, encoding: 'utf8' })
  return Object.fromEntries(names.map((name) => [name, modeOf(join(place, name))]))
}

function modeOf(path: string): string {
  return (statSync(path).mode & 0o777).toString(8)
}

/** Without a file of their own. */
const KEYS = { keyOf: async () => null, set: async () => 'none' as const }

/** A library with its backup, closed again. */
async function leaveLibrary(place: string): Promise<void> {
  const service = await openedLibrary(place, { keys: KEYS })
  valueOf(await service.tend())
  await service.close()
}

describe.skipIf(process.platform === 'win32')('modes', () => {
  test('of a library with its log, its backups and what was put aside', async () => {
    const place = join(folder, 'library')
    const service = await openedLibrary(place, { keys: KEYS })
    valueOf(await service.handlers['library.apply']({ changes: [saved(shootRecord('a'))] }))
    valueOf(await service.tend())
    const { backups } = valueOf(await service.handlers['library.state']({}))
    valueOf(await service.handlers['library.restore']({ backup: backups[0]?.name ?? '' }))
    valueOf(await service.handlers['library.apply']({ changes: [saved(shootRecord('b'))] }))
    expect(modeOf(place)).toBe('700')
    const found = modes(place)
    expect(Object.keys(found).length).toBeGreaterThanOrEqual(5)
    expect(found['backups']).toBe('700')
    for (const [name, mode] of Object.entries(found))
      if (name !== 'backups') expect([name, mode]).toEqual([name, '600'])
  })

  test('of a library that an earlier version left open to all, at its next start', async () => {
    const place = join(folder, 'library')
    await leaveLibrary(place)
    for (const name of readdirSync(place, { recursive: true, encoding: 'utf8' })) {
      const path = join(place, name)
      chmodSync(path, statSync(path).isDirectory() ? 0o755 : 0o644)
    }
    chmodSync(place, 0o755)
    await openedLibrary(place, { keys: KEYS })
    expect([modeOf(place), modeOf(join(place, 'backups')), modeOf(join(place, 'library.sqlite'))]).toEqual([
      '700',
      '700',
      '600',
    ])
    for (const name of readdirSync(join(place, 'backups'))) expect(modeOf(join(place, 'backups', name))).toBe('600')
  })

  test('of what else lies in the folder of a library stay as they are', async () => {
    const place = join(folder, 'library')
    await leaveLibrary(place)
    const files = ['letter.txt', 'library.txt', 'library-of-birds.sqlite', 'shared/note', 'backups/other.zip']
    mkdirSync(join(place, 'shared'))
    for (const name of files) writeFileSync(join(place, name), '')
    for (const name of files) chmodSync(join(place, name), 0o664)
    chmodSync(join(place, 'shared'), 0o775)
    await openedLibrary(place, { keys: KEYS })
    for (const name of files) expect([name, modeOf(join(place, name))]).toEqual([name, '664'])
    expect(modeOf(join(place, 'shared'))).toBe('775')
  })

  test('of what is not to be listed stay as they are, and nothing stops for it', () => {
    writeFileSync(join(folder, 'no-folder'), '')
    expect(() => ownEntriesIn(join(folder, 'no-folder'), () => true)).not.toThrow()
  })

  test('of the log and the tiles', () => {
    const log = openLog(join(folder, 'logs'), 200)
    for (let line = 0; line < 10; line += 1) log.info('a line long enough to fill a small file', { line })
    openTileCache({ folder: join(folder, 'tiles') }).close()
    expect([modeOf(join(folder, 'logs')), modeOf(join(folder, 'tiles'))]).toEqual(['700', '700'])
    for (const mode of Object.values(modes(join(folder, 'logs')))) expect(mode).toBe('600')
  })

  test('keep write protection as it is, and reach through no link', () => {
    const place = join(folder, 'ours')
    ownFolder(place)
    writeFileSync(join(place, 'kept'), '')
    chmodSync(join(place, 'kept'), 0o444)
    writeFileSync(join(folder, 'theirs'), '')
    symlinkSync(join(folder, 'theirs'), join(place, 'link'))
    ownEntriesIn(place, () => true)
    expect([modeOf(join(place, 'kept')), modeOf(join(folder, 'theirs'))]).toEqual(['400', '644'])
  })
})

test('a log whose folder cannot be made is silent, and nothing stops for it', () => {
  writeFileSync(join(folder, 'logs'), 'a file')
  const log = openLog(join(folder, 'logs'))
  expect(() => log.error('nobody hears it')).not.toThrow()
  symlinkSync(join(folder, 'nowhere'), join(folder, 'link'))
  expect(() => openLog(join(folder, 'link')).info('nor this')).not.toThrow()
})
