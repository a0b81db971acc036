/** Edits sent by the page: in order, each for itself, once however often they come, and none on top of a refused one. */
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import type { SentEdit } from '#app/contract/library.ts'
import { libraryPath } from '#main/store/library-file.ts'
import { removed, saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

const spot = (id: string, name: string, before: number | null) => saved(spotRecord(id, 'a', { name }), before)
const edit = (id: string, ...changes: SentEdit['changes']): SentEdit => ({ id, changes })

async function libraryWithSpots() {
  const { handlers } = await openedLibrary(temporaryFolder())
  await handlers['library.apply']({
    changes: [saved(shootRecord('a')), spot('s', 'Quay', null), spot('t', 'Pier', null)],
  })
  return {
    handlers,
    save: async (...edits: SentEdit[]) => valueOf(await handlers['library.save']({ edits })).answers,
    names: async () => valueOf(await handlers['library.open']({ shootId: 'a' })).spots.map(({ name }) => name),
  }
}

test('are saved in their order, each with an answer of its own', async () => {
  const { save, names } = await libraryWithSpots()
  expect(await save(edit('1', spot('s', 'One', 1)), edit('2', spot('s', 'Two', 2), spot('t', 'Two too', 1)))).toEqual([
    { ok: true, value: { version: 2, revisions: [2] } },
    { ok: true, value: { version: 3, revisions: [3, 2] } },
  ])
  expect(await names()).toEqual(['Two', 'Two too'])
})

test('sent again they are answered alike and done once, alone or before others', async () => {
  const { handlers, save, names } = await libraryWithSpots()
  const first = edit('1', spot('s', 'One', 1))
  const answer = await save(first)
  expect(await save(first, edit('2', spot('s', 'Two', 2)))).toEqual([
    ...answer,
    { ok: true, value: { version: 3, revisions: [3] } },
  ])
  expect(await save(first)).toEqual(answer)
  expect(await names()).toEqual(['Two', 'Pier'])
  expect(valueOf(await handlers['library.state']({})).version).toBe(3)
})

test('the same edit in two calls at once, the shorter one late: the later edit stands', async () => {
  const { handlers, names } = await libraryWithSpots()
  const [first, second] = [edit('1', removed('spot', 's', 1)), edit('2', spot('s', 'Back', null))]
  const both = handlers['library.save']({ edits: [first, second] })
  const alone = handlers['library.save']({ edits: [first] })
  const answers = await Promise.all([both, alone])
  expect(answers.flatMap((answer) => valueOf(answer).answers.map(({ ok }) => ok))).toEqual([true, true, true])
  expect((await names()).toSorted()).toEqual(['Back', 'Pier'])
})

test('one that is refused takes along those of its records, whatever their revisions, and no other', async () => {
  const { handlers, save, names } = await libraryWithSpots()
  await handlers['library.apply']({ changes: [spot('s', 'Theirs', 1)] })
  const answers = await save(
    edit('1', spot('s', 'Mine', 1)),
    // By its number it would fit, and write over the other window's change.
    edit('2', spot('s', 'Mine again', 2)),
    edit('3', spot('t', 'Mine too', 1)),
  )
  expect(answers.map((answer) => (answer.ok ? 'saved' : answer.fault.reason))).toEqual([
    'changed-elsewhere',
    'rests',
    'saved',
  ])
  expect(await names()).toEqual(['Theirs', 'Mine too'])
})

test('one that was refused may come again under its id', async () => {
  const { save, names } = await libraryWithSpots()
  const early = edit('2', spot('s', 'Two', 2))
  expect(await save(early)).toMatchObject([{ ok: false }])
  await save(edit('1', spot('s', 'One', 1)))
  expect(await save(early)).toMatchObject([{ ok: true }])
  expect(await names()).toEqual(['Two', 'Pier'])
})

test('none is known again after a backup was put in the library’s place', async () => {
  const folder = temporaryFolder()
  const { handlers, tend } = await openedLibrary(folder)
  await handlers['library.apply']({ changes: [saved(shootRecord('a')), spot('s', 'Quay', null)] })
  const { backup } = valueOf(await tend())
  const renamed = edit('1', spot('s', 'One', 1))
  await handlers['library.save']({ edits: [renamed] })
  valueOf(await handlers['library.restore']({ backup: backup ?? '' }))
  await handlers['library.save']({ edits: [renamed] })
  expect(valueOf(await handlers['library.open']({ shootId: 'a' })).spots.map(({ name }) => name)).toEqual(['One'])
})

test('what was asked for before the end is saved by the time the library is closed, though another window is writing', async () => {
  const folder = temporaryFolder()
  const other = Promise.withResolvers<void>()
  const service = await openedLibrary(folder, { pause: () => other.promise })
  await service.handlers['library.apply']({ changes: [saved(shootRecord('a'))] })
  const window = new Database(libraryPath(folder))
  window.exec('BEGIN IMMEDIATE')
  const saving = [
    service.handlers['library.save']({ edits: [edit('1', spot('s', 'Last', null))] }),
    service.handlers['library.save']({ edits: [edit('2', spot('t', 'Words', null))] }),
  ]
  const closed = service.close()
  window.exec('COMMIT')
  window.close()
  other.resolve()
  await closed
  for (const answer of await Promise.all(saving)) expect(valueOf(answer).answers).toMatchObject([{ ok: true }])
  const again = await openedLibrary(folder)
  const { spots } = valueOf(await again.handlers['library.open']({ shootId: 'a' }))
  expect(spots.map(({ name }) => name).toSorted()).toEqual(['Last', 'Words'])
})
