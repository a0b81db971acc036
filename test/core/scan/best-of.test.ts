/** The best few: by score, distinct in place or bearing or time, whatever the order in which they were found. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import { areDistinct } from '#core/scan/apart.ts'
import { MOST_BEST, bestOf, polishedBest } from '#core/scan/best-of.ts'
import type { Candidate, PlaceFound } from '#core/scan/scan-found.ts'
import { CENTRE } from '#test/help/scans.ts'

const NOON = Date.UTC(2026, 5, 14, 12)

function candidate(place: number, score: number, metres: number, way = 180, minutes = 0): Candidate {
  const at = destination(CENTRE, 90, metres)
  return {
    place,
    ground: 'line',
    at,
    heading: 90,
    standpoint: destination(at, way, 8),
    lensHeight: 1.2,
    focalLength: 50,
    lensId: 'zoom',
    across: 0,
    up: 0,
    instant: NOON + minutes * 60_000,
    score,
    met: [],
  }
}

function found(best: Candidate): PlaceFound {
  return { place: best.place, at: best.at, ground: best.ground, score: best.score, best: [best] }
}

describe('the best few', () => {
  it.each<[string, Candidate, boolean]>([
    ['a neighbour with the same way and time', candidate(1, 0.8, 20), false],
    ['a neighbour seen from another side', candidate(1, 0.8, 20, 220), true],
    ['a neighbour at another hour', candidate(1, 0.8, 20, 180, 150), true],
    ['a neighbour at the same hour of another day', candidate(1, 0.8, 20, 180, 1440 * 3 + 10), false],
    ['a neighbour at another hour of another day', candidate(1, 0.8, 20, 180, 1440 * 3 + 300), true],
    ['a place farther off', candidate(1, 0.8, 90), true],
  ])('take %s: %s', (_, other, taken) => {
    const best = candidate(0, 0.9, 0)
    expect(bestOf([found(other), found(best)])).toEqual(taken ? [best, other] : [best])
  })

  it('are taken by place where scores are equal', () => {
    const [one, other] = [candidate(4, 0.7, 0), candidate(2, 0.7, 500)]
    expect(bestOf([found(one), found(other)])).toEqual([other, one])
  })

  it('are no more than asked for', () => {
    const many = Array.from({ length: 12 }, (_, index) => found(candidate(index, 0.5, index * 100)))
    expect(bestOf(many)).toHaveLength(MOST_BEST)
    expect(bestOf(many, 3)).toHaveLength(3)
  })

  it('do not hang on the order, and are distinct from one another', () => {
    const one = fc.record({
      score: fc.integer({ min: 1, max: 5 }),
      metres: fc.integer({ min: 0, max: 300 }),
      way: fc.integer({ min: 0, max: 359 }),
      minutes: fc.integer({ min: 0, max: 200 }),
    })
    const several = fc
      .array(one, { minLength: 1, maxLength: 14 })
      .map((list) =>
        list.map(({ score, metres, way, minutes }, place) => found(candidate(place, score / 5, metres, way, minutes))),
      )
    const shuffled = several.chain((list) =>
      fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })),
    )
    fc.assert(
      fc.property(shuffled, ([list, other]) => {
        const best = bestOf(list, 8, 60)
        expect(bestOf(other, 8, 60)).toEqual(best)
        best.forEach((first, index) =>
          best.slice(index + 1).forEach((second) => expect(areDistinct(first, second, 60)).toBe(true)),
        )
      }),
    )
  })

  it('are no fewer for having come half a step nearer to one another', () => {
    const apart = [candidate(0, 0.9, 0), candidate(3, 0.8, 30)]
    const nearer = [candidate(0, 0.95, 5), candidate(3, 0.94, 25)]
    expect(bestOf(apart.map(found))).toHaveLength(2)
    expect(bestOf(nearer.map(found))).toHaveLength(1)
    expect(polishedBest(nearer.toReversed(), 10)).toEqual(nearer)
  })
})
