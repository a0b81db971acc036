/** A batch of changes is saved whole or not at all, and two windows do not undo each other. */
import { expect, test } from 'vitest'
import { removed, saved, shootRecord, spotRecord } from '#test/help/library-records.ts'
import { openedLibrary, reasonOf, valueOf } from '#test/help/open-library.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'

test('gives new records revision 1 and counts every change on, whatever the record carries', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  const first = valueOf(
    await handlers['library.apply']({
      changes: [saved(shootRecord('a', { revision: 77 })), saved(spotRecord('s', 'a'))],
    }),
  )
  expect(first).toEqual({ version: 1, revisions: [1, 1] })
  const second = valueOf(await handlers['library.apply']({ changes: [saved(spotRecord('s', 'a', { stars: 5 }), 1)] }))
  expect(second).toEqual({ version: 2, revisions: [2] })
  const { shoot, spots, version } = valueOf(await handlers['library.open']({ shootId: 'a' }))
  expect([shoot.revision, spots[0]?.revision, spots[0]?.stars, version]).toEqual([1, 2, 5, 2])
})

test('keeps nothing of a batch of which one revision is not the stored one, and names the record', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  await handlers['library.apply']({ changes: [saved(shootRecord('a')), saved(spotRecord('s', 'a'))] })
  const answer = await handlers['library.apply']({
    changes: [
      saved(shootRecord('a', { name: 'Renamed' }), 1),
      saved(spotRecord('new', 'a')),
      saved(spotRecord('s', 'a', { name: 'Pier' }), 7),
    ],
  })
  expect(answer).toMatchObject({
    ok: false,
    fault: { reason: 'changed-elsewhere', message: expect.stringContaining('Pier') },
  })
  const { shoot, spots, version } = valueOf(await handlers['library.open']({ shootId: 'a' }))
  expect([shoot.name, spots.map(({ id }) => id), version]).toEqual(['Island bridge', ['s'], 1])
})

test.each([
  ['a new record with a taken id', saved(spotRecord('s', 'a')), 'changed-elsewhere'],
  ['a change of a record that is gone', saved(spotRecord('t', 'a'), 1), 'changed-elsewhere'],
  ['a delete of a record that is gone', removed('spot', 't', 1), 'changed-elsewhere'],
  ['a delete of a changed record', removed('spot', 's', 4), 'changed-elsewhere'],
  ['a delete of a changed shoot', removed('shoot', 'a', 4), 'changed-elsewhere'],
  ['a spot of a shoot that is not there', saved(spotRecord('t', 'nowhere')), 'gone'],
  ['a record under another id', { ...saved(spotRecord('t', 'a')), id: 'u' }, 'invalid'],
])('refuses %s', async (_, change, reason) => {
  const { handlers } = await openedLibrary(temporaryFolder())
  await handlers['library.apply']({ changes: [saved(shootRecord('a')), saved(spotRecord('s', 'a'))] })
  expect(reasonOf(await handlers['library.apply']({ changes: [change] }))).toBe(reason)
  expect(valueOf(await handlers['library.state']({}))).toMatchObject({ version: 1, shootCount: 1, spotCount: 1 })
})

test('deletes a shoot with its spots, listed or not, and its undo brings all back in any order', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  const records = [shootRecord('a'), spotRecord('s', 'a'), spotRecord('t', 'a', { name: 'Breakwater' })]
  await handlers['library.apply']({ changes: records.map((record) => saved(record)) })
  const gone = await handlers['library.apply']({ changes: [removed('shoot', 'a', 1), removed('spot', 's', 1)] })
  expect(valueOf(gone).revisions).toEqual([0, 0])
  expect(valueOf(await handlers['library.state']({}))).toMatchObject({ shootCount: 0, spotCount: 0 })
  expect(valueOf(await handlers['library.find']({ words: 'breakwater', within: null, limit: 9 })).total).toBe(0)
  expect(reasonOf(await handlers['library.open']({ shootId: 'a' }))).toBe('gone')
  valueOf(await handlers['library.apply']({ changes: records.toReversed().map((record) => saved(record)) }))
  expect(valueOf(await handlers['library.open']({ shootId: 'a' })).spots).toHaveLength(2)
  expect(valueOf(await handlers['library.find']({ words: 'breakwater', within: null, limit: 9 })).total).toBe(1)
})

test('takes several changes of one record in a batch in their order', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  const answer = await handlers['library.apply']({
    changes: [
      saved(shootRecord('a')),
      saved(spotRecord('s', 'a', { name: 'Windmill' })),
      removed('spot', 's', 1),
      saved(spotRecord('s', 'a', { name: 'Sluice' })),
      saved(spotRecord('s', 'a', { name: 'Lock' }), 1),
    ],
  })
  expect(valueOf(answer).revisions).toEqual([1, 1, 0, 1, 2])
  const found = async (words: string): Promise<number> =>
    valueOf(await handlers['library.find']({ words, within: null, limit: 9 })).total
  expect([await found('windmill'), await found('sluice'), await found('lock')]).toEqual([0, 0, 1])
})

test('lists spots in shelf order and shoots newest first with how many spots they hold', async () => {
  const { handlers } = await openedLibrary(temporaryFolder())
  await handlers['library.apply']({
    changes: [
      saved(shootRecord('old', { madeAt: 1 })),
      saved(shootRecord('new', { madeAt: 2 })),
      saved(spotRecord('c', 'old', { rank: 2.5 })),
      saved(spotRecord('a', 'old', { rank: 1 })),
      saved(spotRecord('b', 'old', { rank: 2 })),
    ],
  })
  const { shoots } = valueOf(await handlers['library.shoots']({}))
  expect(shoots.map(({ id, spots }) => [id, spots])).toEqual([
    ['new', 0],
    ['old', 3],
  ])
  const { spots } = valueOf(await handlers['library.open']({ shootId: 'old' }))
  expect(spots.map(({ id }) => id)).toEqual(['a', 'b', 'c'])
})
