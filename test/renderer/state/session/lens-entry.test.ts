/** The line of a lens under way: known as unfinished wherever it was left, and never added by leaving it. */
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { newShoot } from '#core/record/new-records.ts'
import { refreshShootList } from '#renderer/state/library/library.ts'
import { settleUnfinished, somethingUnfinished } from '#renderer/state/library/unfinished.ts'
import { lensEntry, typeLens } from '#renderer/state/session/lens-entry.ts'
import { PageLibrary } from '#test/help/page-library.ts'

let library = new PageLibrary()
vi.mock('#renderer/host/host.ts', () => ({
  ask: (name: string, input: unknown) => library.answer(name, input),
  inShell: false,
}))

beforeEach(async () => {
  library = new PageLibrary()
  for (const id of ['harbour', 'quarry']) library.put('shoot', newShoot(id, `${id}-lens`, 0))
  await refreshShootList()
  for (const id of ['harbour', 'quarry']) typeLens(id, '')
})

describe('a lens half typed', () => {
  test('would be lost by leaving, from whatever page, and stays as it is', () => {
    typeLens('harbour', '70-2')
    settleUnfinished()
    expect(somethingUnfinished()).toBe(true)
    expect(lensEntry('harbour')).toBe('70-2')
  })

  test('is done with once it is added or emptied, each shoot for itself', () => {
    typeLens('harbour', '70-2')
    typeLens('harbour', '70-200')
    typeLens('quarry', '50')
    typeLens('harbour', '')
    expect(somethingUnfinished()).toBe(true)
    typeLens('quarry', '  ')
    expect(somethingUnfinished()).toBe(false)
  })

  test('goes with its shoot', async () => {
    typeLens('quarry', '50')
    library.records.delete('quarry')
    await refreshShootList()
    settleUnfinished()
    expect(somethingUnfinished()).toBe(false)
  })
})
