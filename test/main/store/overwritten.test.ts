/** A library written over by another program while it is open: nothing more is acknowledged into it, and there is a way on. */
import {
  closeSync,
  copyFileSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { backupFolder } from '#main/store/backup.ts'
import { connect } from '#main/store/handle.ts'
import type { LibraryService } from '#main/store/library-service.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, reasonOf, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

interface Opened {
  readonly folder: string
  readonly path: string
  readonly backup: string
  readonly service: LibraryService
}

/** An open library of 40 spots with a backup, and 10 more spots since. */
async function opened(pause: () => Promise<void> = async () => {}): Promise<Opened> {
  const folder = temporaryFolder()
  const service = await openedLibrary(folder, { pause })
  const save = async (from: number, to: number): Promise<void> => {
    const spots = Array.from({ length: to - from }, (_, n) =>
      spotRecord(`s${from + n}`, 'a', { notes: 'x'.repeat(500) }),
    )
    const changes = [...(from === 0 ? [shootRecord('a')] : []), ...spots].map((one) => saved(one))
    valueOf(await service.handlers['library.apply']({ changes }))
  }
  await save(0, 40)
  valueOf(await service.tend())
  await save(40, 50)
  const [backup] = readdirSync(backupFolder(folder))
  return { folder, path: join(folder, 'library.sqlite'), backup: backup ?? '', service }
}

const CHANGE = { changes: [saved(spotRecord('late', 'a'))] }

function overwrite(path: string, at: number, bytes: Uint8Array): void {
  const file = openSync(path, 'r+')
  writeSync(file, bytes, 0, bytes.length, at)
  closeSync(file)
}

describe.each([
  ['something else', (path: string) => writeFileSync(path, 'A letter, no library. '.repeat(5_000))],
  ['nothing', (path: string) => truncateSync(path, 0)],
  ['zeros at its beginning', (path: string) => overwrite(path, 0, new Uint8Array(8_192))],
])('written over with %s', (_, spoil) => {
  test('refuses the next change in words, and the backup brings the spots back', async () => {
    const { folder, path, backup, service } = await opened()
    spoil(path)
    const found = readFileSync(path)
    const answer = await service.handlers['library.apply'](CHANGE)
    expect(answer).toMatchObject({
      ok: false,
      fault: { reason: 'damaged', message: expect.stringContaining('wrote over') },
    })
    expect(valueOf(await service.handlers['library.state']({})).state).toBe('damaged')
    // What the other program wrote is left as it wrote it, and the log of the last changes is kept.
    expect(readFileSync(path).equals(found)).toBe(true)
    expect(readdirSync(folder).some((name) => name.startsWith('library-left-over'))).toBe(true)
    valueOf(await service.handlers['library.restore']({ backup }))
    expect(valueOf(await service.handlers['library.open']({ shootId: 'a' })).spots).toHaveLength(40)
    valueOf(await service.handlers['library.apply'](CHANGE))
  })
})

test('a backup copied over it by hand is the library from then on; the change made for the other one is not saved', async () => {
  const { folder, path, backup, service } = await opened()
  copyFileSync(join(backupFolder(folder), backup), path)
  const found = readFileSync(path)
  expect(reasonOf(await service.handlers['library.apply'](CHANGE))).toBe('changed-elsewhere')
  const state = valueOf(await service.handlers['library.state']({}))
  expect(state).toMatchObject({ state: 'open', spotCount: 40, message: expect.stringContaining('wrote over') })
  expect(readFileSync(path).equals(found)).toBe(true)
  valueOf(await service.handlers['library.apply'](CHANGE))
  expect(valueOf(await service.handlers['library.state']({})).spotCount).toBe(41)
  await service.close()
  const after = connect(path, { readonly: true })
  onTestFinished(() => after.close())
  expect(after.pragma('integrity_check')).toBe('ok')
})

test('is seen by looking, too: what is shown is what is there', async () => {
  const { folder, path, backup, service } = await opened()
  copyFileSync(join(backupFolder(folder), backup), path)
  expect(valueOf(await service.handlers['library.open']({ shootId: 'a' })).spots).toHaveLength(40)
})

test('seen by one that looks while another saves is known to both, and opened once', async () => {
  let late: ReturnType<LibraryService['handlers']['library.apply']> | undefined
  let comes = false
  // The one that looks waits for the file to come to rest: meanwhile the other comes.
  const pause = async (): Promise<void> => {
    if (!comes) return
    comes = false
    late = service.handlers['library.apply'](CHANGE)
  }
  const { folder, path, backup, service } = await opened(pause)
  copyFileSync(join(backupFolder(folder), backup), path)
  comes = true
  const shown = [await service.handlers['library.state']({})]
  expect(late === undefined ? '' : reasonOf(await late)).toBe('changed-elsewhere')
  shown.push(await service.handlers['library.state']({}))
  for (const answer of shown)
    expect(valueOf(answer)).toMatchObject({
      spotCount: 40,
      message: expect.stringMatching(/^Another program wrote over/),
    })
  await service.close()
  if (process.platform === 'linux') expect(heldOpen(folder)).toBe(0)
})

/** Descriptors that this process has open on what is or was the library's file in a folder. */
function heldOpen(folder: string): number {
  const leadsTo = (name: string): string => {
    try {
      return readlinkSync(join('/proc/self/fd', name))
    } catch {
      // The one by which the list itself was read.
      return ''
    }
  }
  const isLibrary = (path: string): boolean =>
    path.startsWith(join(folder, 'library')) && /^[^/]*\.sqlite(?: \(deleted\))?$/.test(path.slice(folder.length + 1))
  return readdirSync('/proc/self/fd').filter((name) => isLibrary(leadsTo(name))).length
}

test.skipIf(process.platform !== 'linux')('what no longer is the library is held open no longer', async () => {
  const { folder, path, backup, service } = await opened()
  const before = heldOpen(folder)
  expect(before).toBeGreaterThan(0)
  const look = async () => valueOf(await service.handlers['library.state']({}))
  for (let time = 0; time < 3; time += 1) {
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    valueOf(await service.handlers['library.restore']({ backup }))
    copyFileSync(join(backupFolder(folder), backup), `${path}.new`)
    renameSync(`${path}.new`, path)
    // oxlint-disable-next-line no-await-in-loop -- as above
    expect(await look()).toMatchObject({ state: 'open', spotCount: 40 })
  }
  expect(heldOpen(folder)).toBe(before)
  await service.close()
  expect(heldOpen(folder)).toBe(0)
})

describe('what other windows do by right is not taken for that', () => {
  test('saving, copying the log into the file, beginning it again, adding tables', async () => {
    const folder = temporaryFolder()
    const [one, two] = [await openedLibrary(folder), await openedLibrary(folder)]
    valueOf(await one.handlers['library.apply']({ changes: [saved(shootRecord('a'))] }))
    const third = connect(join(folder, 'library.sqlite'), { readonly: false })
    onTestFinished(() => third.close())
    third.pragma('wal_autocheckpoint = 3')
    const kinds = ['PASSIVE', 'FULL', 'RESTART', 'TRUNCATE']
    for (let step = 0; step < 120; step += 1) {
      const who = step % 2 === 0 ? one : two
      const record = spotRecord(`s${step}`, 'a', { notes: `step ${step} `.repeat(step) })
      // oxlint-disable-next-line no-await-in-loop
      valueOf(await who.handlers['library.apply']({ changes: [saved(record)] }))
      if (step % 3 === 0) third.pragma(`wal_checkpoint(${kinds[(step / 3) % 4]})`)
      if (step % 7 === 0) third.immediately((handle) => handle.script(`CREATE TABLE extra_${step} (x TEXT) STRICT`))
      if (step % 14 === 0) third.immediately((handle) => handle.script(`DROP TABLE extra_${step}`))
    }
    expect(valueOf(await one.handlers['library.state']({}))).toMatchObject({ state: 'open', spotCount: 120 })
    expect(readdirSync(folder).filter((name) => name.startsWith('library-left-over'))).toEqual([])
  })
})

describe('a record broken within a sound file', () => {
  async function broken(sql: string): Promise<LibraryService> {
    const folder = temporaryFolder()
    const service = await openedLibrary(folder)
    const records = [shootRecord('a', { name: 'Bridge' }), spotRecord('s', 'a', { name: 'Pier' }), spotRecord('t', 'a')]
    valueOf(await service.handlers['library.apply']({ changes: records.map((one) => saved(one)) }))
    const other = connect(join(folder, 'library.sqlite'), { readonly: false })
    other.immediately((handle) => handle.script(sql))
    other.close()
    return service
  }

  test.each([
    ['no JSON', `UPDATE spot SET document = substr(document, 1, 90) WHERE id = 's'`],
    ['nothing', `UPDATE spot SET document = 'null' WHERE id = 's'`],
    ['another record', `UPDATE spot SET document = replace(document, '"id":"s"', '"id":"x"') WHERE id = 's'`],
    ['a record without its place', `UPDATE spot SET document = replace(document, '"stop"', '"stpo"') WHERE id = 's'`],
    ['a place that is another', `UPDATE spot SET document = replace(document, '-35.5', '-35.6') WHERE id = 's'`],
  ])('a spot of %s is named and left out, the others are shown', async (_, sql) => {
    const { handlers } = await broken(sql)
    const { spots, broken: named } = valueOf(await handlers['library.open']({ shootId: 'a' }))
    expect([spots.map(({ id }) => id), named]).toEqual([['t'], ['Pier']])
  })

  test('a shoot is named, and is damage that a backup helps against', async () => {
    const { handlers } = await broken(`UPDATE shoot SET document = '{"id"'`)
    const answer = await handlers['library.open']({ shootId: 'a' })
    expect(answer).toMatchObject({
      ok: false,
      fault: { reason: 'damaged', message: expect.stringContaining('“Bridge”') },
    })
    expect(valueOf(await handlers['library.shoots']({})).shoots).toHaveLength(1)
  })
})
