/** Order on the shelf: the moved spot lands where it was put, few records change, and the ranks never run out. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import { movedTo } from '#core/record/shelf-rank.ts'
import type { Spot } from '#core/record/spot.ts'

const shoot = newShoot('shoot', 'lens', 0)
const shelf = (ranks: readonly number[]): Spot[] =>
  ranks.map((rank, index) => newSpot(`s${index}`, shoot, { lat: 0, lon: 0 }, rank, 0))

function applied(spots: readonly Spot[], id: string, place: number): Spot[] {
  const changed = new Map(movedTo(spots, id, place).map((spot) => [spot.id, spot]))
  return spots.map((spot) => changed.get(spot.id) ?? spot).toSorted((one, other) => one.rank - other.rank)
}

test('any sequence of moves gives the order that splicing a list gives', () => {
  const moves = fc.array(fc.tuple(fc.nat(6), fc.integer({ min: -2, max: 9 })), { maxLength: 60 })
  fc.assert(
    fc.property(moves, (steps) => {
      let spots = shelf([1, 2, 3, 4, 5, 6, 7])
      let expected = spots.map((spot) => spot.id)
      for (const [which, place] of steps) {
        const id = `s${which}`
        spots = applied(spots, id, place)
        expected = expected.filter((other) => other !== id)
        expected.splice(Math.min(6, Math.max(0, place)), 0, id)
        expect(spots.map((spot) => spot.id)).toEqual(expected)
      }
    }),
  )
})

test('one record changes as a rule, all when the neighbours are too close', () => {
  expect(movedTo(shelf([1, 2, 3]), 's2', 1)).toHaveLength(1)
  expect(movedTo(shelf([1, 1, 1]), 's2', 1).length).toBeGreaterThan(1)
  expect(movedTo(shelf([1, 2, 3]), 's1', 1)).toEqual([])
})

test('a thousand moves into the same gap keep the order', () => {
  let spots = shelf([1, 2, 3])
  for (let turn = 0; turn < 1000; turn++) {
    const last = spots.at(-1)?.id ?? ''
    spots = applied(spots, last, 1)
    expect(spots[1]?.id).toBe(last)
  }
})
