/** Two windows on one library file at once, and a process killed while it saves: nothing acknowledged is lost. */
import Database from 'better-sqlite3'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { expect, onTestFinished, test } from 'vitest'
import { resultOf } from '#main/store/fault.ts'
import { connect, type ReadHandle } from '#main/store/handle.ts'
import { raiseVersion } from '#main/store/records.ts'
import { saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, reasonOf, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

const STREAM = join(import.meta.dirname, '../../help/apply-stream.ts')

test('both see what either saved, and the version grows with every change of either', async () => {
  const folder = temporaryFolder()
  const [one, other] = [await openedLibrary(folder), await openedLibrary(folder)]
  await one.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  await other.handlers['library.apply']({ changes: [saved(spotRecord('s', 'a', { name: 'Weir' }))] })
  for (const { handlers } of [one, other]) {
    expect(valueOf(await handlers['library.state']({}))).toMatchObject({ version: 2, spotCount: 1 })
    expect(valueOf(await handlers['library.find']({ words: 'weir', within: null, limit: 5 })).total).toBe(1)
  }
})

test('the second to change a record is told, and what the first one saved stays', async () => {
  const folder = temporaryFolder()
  const [one, other] = [await openedLibrary(folder), await openedLibrary(folder)]
  await one.handlers['library.apply']({ changes: [saved(shootRecord('a')), saved(spotRecord('s', 'a'))] })
  await one.handlers['library.apply']({ changes: [saved(spotRecord('s', 'a', { stars: 1 }), 1)] })
  const late = await other.handlers['library.apply']({ changes: [saved(spotRecord('s', 'a', { stars: 5 }), 1)] })
  expect(reasonOf(late)).toBe('changed-elsewhere')
  expect(valueOf(await other.handlers['library.open']({ shootId: 'a' })).spots[0]?.stars).toBe(1)
})

// P76: with a deferred transaction the write after the read fails at once, SQLITE_BUSY_SNAPSHOT, whatever the timeout.
test('a write that reads first is not refused because another window committed in between', async () => {
  const folder = temporaryFolder()
  const service = await openedLibrary(folder)
  await service.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  const other = connect(join(folder, 'library.sqlite'), { readonly: false })
  onTestFinished(() => {
    other.close()
  })
  const readThenWrite = (read: ReadHandle): unknown => {
    read.rows('SELECT * FROM counter')
    const third = connect(join(folder, 'library.sqlite'), { readonly: false })
    const between = resultOf(() => third.immediately((handle) => raiseVersion(handle, 40)))
    third.close()
    return [between.ok, read.row("UPDATE counter SET value = value + 1 WHERE name = 'version' RETURNING value")]
  }
  // As it would be: the other one gets in between, and the write is refused.
  expect(() => other.steadily(readThenWrite)).toThrow('locked')
  // As it is: the other one has to wait its turn.
  expect(other.immediately(readThenWrite)).toEqual([false, { value: 42 }])
})

test('waits while another window writes and saves once it is done; gives up with a sentence if it never is', async () => {
  const folder = temporaryFolder()
  const holder = await openedLibrary(folder)
  await holder.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  // Named here, since our own connection holds no transaction open while anything is awaited.
  const other = new Database(join(folder, 'library.sqlite'))
  onTestFinished(() => {
    other.close()
  })
  let pauses = 0
  const waiting = await openedLibrary(folder, {
    pause: async () => {
      pauses += 1
      if (pauses === 3) other.exec('ROLLBACK')
    },
  })
  other.exec('BEGIN IMMEDIATE')
  const answer = await waiting.handlers['library.apply']({ changes: [saved(spotRecord('s', 'a'))] })
  expect([valueOf(answer).revisions, pauses]).toEqual([[1], 3])
  other.exec('BEGIN IMMEDIATE')
  const refused = await waiting.handlers['library.apply']({ changes: [saved(spotRecord('t', 'a'))] })
  expect(refused).toMatchObject({
    ok: false,
    fault: { reason: 'busy', message: expect.stringContaining('Nothing was changed') },
  })
  other.exec('ROLLBACK')
})

test('two processes that save at the same time lose nothing', async () => {
  const folder = temporaryFolder()
  const service = await openedLibrary(folder)
  await service.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  const told = await Promise.all(['left', 'right'].map(async (prefix) => await acknowledged(folder, prefix, 40, null)))
  expect(told.flat()).toHaveLength(80)
  const { spots, version } = valueOf(await service.handlers['library.open']({ shootId: 'a' }))
  expect([spots.map(({ id }) => id).toSorted(), version]).toEqual([told.flat().toSorted(), 81])
})

test('a process killed in the midst of saving: all that it was told is saved is there, whole and found', async () => {
  const folder = temporaryFolder()
  const first = await openedLibrary(folder)
  await first.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  await first.close()
  const told = await acknowledged(folder, 'kept', 100_000, 80)
  expect(told.length).toBeGreaterThanOrEqual(80)
  const { handlers } = await openedLibrary(folder)
  expect(valueOf(await handlers['library.state']({})).state).toBe('open')
  const kept = new Set(valueOf(await handlers['library.open']({ shootId: 'a' })).spots.map(({ id }) => id))
  expect(told.filter((id) => !kept.has(id))).toEqual([])
  // At most the one that was being saved when the process died.
  expect(kept.size - told.length).toBeLessThanOrEqual(1)
  expect(valueOf(await handlers['library.find']({ words: 'kept 79', within: null, limit: 5 })).total).toBe(1)
})

/** Ids that the process printed as saved; killed without warning once it has printed `killAt` of them. */
async function acknowledged(folder: string, prefix: string, most: number, killAt: number | null): Promise<string[]> {
  const child = spawn(process.execPath, [STREAM, folder, prefix, String(most)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const ended = once(child, 'close')
  const ids: string[] = []
  for await (const line of createInterface({ input: child.stdout })) {
    ids.push(line)
    if (ids.length === killAt) child.kill('SIGKILL')
  }
  await ended
  return ids
}
