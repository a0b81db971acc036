/** A change brought onto another state of its record: what it touched is set, nothing else. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rebased } from '#core/record/record-merge.ts'

const record = (parts: object = {}) => ({
  name: 'Quay',
  notes: '',
  stop: { at: { lat: 1, lon: 2 }, heading: 45 },
  hazards: ['water'],
  lenses: [
    { id: 'a', focal: 35 },
    { id: 'b', focal: 85 },
  ],
  ...parts,
})

describe('a change and theirs', () => {
  test('of different fields are both there, however deep', () => {
    const mine = record({ stop: { at: { lat: 1, lon: 2 }, heading: 90 }, notes: 'mine' })
    const theirs = record({ stop: { at: { lat: 5, lon: 2 }, heading: 45 }, name: 'theirs' })
    expect(rebased(record(), mine, theirs)).toEqual(
      record({ name: 'theirs', notes: 'mine', stop: { at: { lat: 5, lon: 2 }, heading: 90 } }),
    )
  })

  test('of the same field leave mine', () => {
    expect(rebased(record(), record({ name: 'mine' }), record({ name: 'theirs' }))).toEqual(record({ name: 'mine' }))
  })

  test('of lists without ids leave mine whole', () => {
    const merged = rebased(record(), record({ hazards: ['water', 'rail'] }), record({ hazards: [] }))
    expect(merged.hazards).toEqual(['water', 'rail'])
  })

  test('of things with ids go thing by thing: changed, added and taken away on both sides', () => {
    const mine = record({ lenses: [{ id: 'a', focal: 36 }, { id: 'mine' }] })
    const theirs = record({ lenses: [{ id: 'theirs' }, { id: 'a', focal: 35, name: 'old' }, { id: 'b', focal: 85 }] })
    expect(rebased(record(), mine, theirs).lenses).toEqual([
      { id: 'theirs' },
      { id: 'a', focal: 36, name: 'old' },
      { id: 'mine' },
    ])
  })

  test('a thing that one side took away and the other changed stays as changed', () => {
    const without = record({ lenses: [{ id: 'a', focal: 35 }] })
    const changed = record({
      lenses: [
        { id: 'a', focal: 35 },
        { id: 'b', focal: 100 },
      ],
    })
    expect(rebased(record(), without, changed).lenses).toEqual(changed.lenses)
    expect(rebased(record(), changed, without).lenses).toEqual(changed.lenses)
  })
})

const thing = fc.record({ id: fc.constantFrom('a', 'b', 'c'), size: fc.integer({ min: 0, max: 3 }) })
const things = fc.uniqueArray(thing, { selector: ({ id }) => id })
const anyRecord = fc.record({
  name: fc.constantFrom('x', 'y', 'z'),
  at: fc.record({ lat: fc.integer(), lon: fc.integer() }),
  things,
})

test('nothing changed by them gives mine, nothing changed by me gives theirs, the same by both gives that', () => {
  fc.assert(
    fc.property(anyRecord, anyRecord, (one, other) => {
      expect(rebased(one, other, one)).toEqual(other)
      expect(rebased(one, one, other)).toEqual(other)
      expect(rebased(one, other, other)).toEqual(other)
    }),
  )
})

test('done twice it is as done once', () => {
  fc.assert(
    fc.property(anyRecord, anyRecord, anyRecord, (base, mine, theirs) => {
      const once = rebased(base, mine, theirs)
      expect(rebased(base, mine, once)).toEqual(once)
    }),
  )
})
