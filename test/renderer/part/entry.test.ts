/** What is typed into a field: known at once, taken by leaving, refused with a sentence, and in the field again when it could not be saved. */
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { done, failed } from '#core/result.ts'

async function field() {
  vi.resetModules()
  const { Entry } = await import('#renderer/part/entry.ts')
  const { settleUnfinished, somethingUnfinished } = await import('#renderer/state/library/unfinished.ts')
  const { holdRefusal, keepMine, letRefusalGo, refusals } = await import('#renderer/state/library/refusals.ts')
  const { textSource } = await import('#renderer/state/library/taken-from.ts')
  const entry = new Entry()
  const taken: string[] = []
  let refused = (): void => {}
  const take = (text: string) => {
    if (text === 'bad') return failed('bad', 'That is no name.')
    taken.push(text)
    const source = textSource()
    const fault = { reason: 'changed-elsewhere', message: 'changed elsewhere' }
    refused = () => source?.refused(holdRefusal({ what: 'Rename', fault, again: () => taken.push(`again ${text}`) }))
    return done(text)
  }
  entry.follow('saved', take)
  return {
    entry,
    taken,
    take,
    settleUnfinished,
    somethingUnfinished,
    keepMine,
    letRefusalGo,
    refusals,
    /** The library refuses what was taken last. */
    refuse: () => refused(),
  }
}

let it: Awaited<ReturnType<typeof field>>
beforeEach(async () => {
  it = await field()
})

describe('an entry under way', () => {
  test('is taken by whoever leaves in the very moment of typing, nothing having been drawn', () => {
    const { entry, settleUnfinished, taken } = it
    entry.type('n')
    entry.type('new')
    settleUnfinished()
    expect([taken, entry.text()]).toEqual([['new'], null])
    settleUnfinished()
    expect(taken).toEqual(['new'])
  })

  test('that can’t be taken stays, with why, and is still unfinished; given up it is not', () => {
    const { entry, settleUnfinished, somethingUnfinished, taken } = it
    entry.type('bad')
    settleUnfinished()
    expect([taken, entry.text(), entry.sentence(), somethingUnfinished()]).toEqual([
      [],
      'bad',
      'That is no name.',
      true,
    ])
    entry.giveUp()
    expect([entry.text(), entry.sentence(), somethingUnfinished()]).toEqual([null, null, false])
  })

  test('equal to the record takes nothing', () => {
    const { entry, somethingUnfinished, taken } = it
    entry.type('saved')
    entry.finish()
    expect([taken, entry.text(), somethingUnfinished()]).toEqual([[], null, false])
  })

  test('of a field that is gone is forgotten', () => {
    const { entry, settleUnfinished, taken } = it
    entry.type('new')
    entry.forget()
    settleUnfinished()
    expect(taken).toEqual([])
  })
})

describe('a text that could not be saved', () => {
  beforeEach(() => {
    it.entry.type('mine')
    it.entry.finish()
    it.refuse()
    it.entry.follow('theirs', it.take)
  })

  test('stands in the field again, and leaving the field or the page writes over nothing', () => {
    const { entry, settleUnfinished, taken } = it
    expect([entry.text(), entry.unsaved()?.what]).toEqual(['mine', 'Rename'])
    entry.finish()
    entry.type('mine too')
    entry.finish()
    settleUnfinished()
    expect([taken, entry.text()]).toEqual([['mine'], 'mine too'])
  })

  test('is saved by the user’s word, as it stands by then', () => {
    const { entry, refusals, taken } = it
    entry.type('mine too')
    entry.saveAgain()
    expect([taken, entry.text(), refusals.value]).toEqual([['mine', 'mine too'], null, []])
  })

  test('refused once more stands there once more', () => {
    const { entry, refuse } = it
    entry.saveAgain()
    refuse()
    expect([entry.text(), entry.unsaved()?.what]).toEqual(['mine', 'Rename'])
  })

  test('gives way to theirs by the user’s word', () => {
    const { entry, refusals, taken } = it
    entry.giveUp()
    expect([taken, entry.text(), refusals.value]).toEqual([['mine'], null, []])
  })

  test('is done with when it is decided among the messages', () => {
    const { entry, refusals, keepMine, taken } = it
    keepMine(refusals.value[0] as never)
    expect([taken, entry.text(), entry.unsaved()]).toEqual([['mine', 'again mine'], null, null])
    entry.type('next')
    entry.finish()
    expect(taken.at(-1)).toBe('next')
  })

  test('typed on stays an entry when the first one is decided among the messages', () => {
    const { entry, refusals, letRefusalGo, taken } = it
    entry.type('mine and more')
    letRefusalGo(refusals.value[0] as never)
    expect(entry.text()).toBe('mine and more')
    entry.finish()
    expect([taken, entry.text()]).toEqual([['mine', 'mine and more'], null])
  })
})

test('a refusal that comes while the next text is typed leaves that alone', () => {
  const { entry, refuse, refusals } = it
  entry.type('first')
  entry.finish()
  entry.type('second')
  refuse()
  expect([entry.text(), entry.unsaved(), refusals.value.length]).toEqual(['second', null, 1])
})
