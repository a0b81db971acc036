/** Crossings along a stretch: each in its order, those between two looks too, up to where the quantity ends. */
import { describe, expect, it } from 'vitest'
import { type Bounded, zeroCrossings } from '#core/frame/zero-crossings.ts'

/** Middles of the brackets found from 0 to 1 by looks a tenth apart. */
function found(bounded: Bounded, from = 0, to = 1): number[] {
  return [...zeroCrossings(bounded, from, to, () => 0.1)].map(([one, other]) => (one.log + other.log) / 2)
}
const everywhere = () => 1

describe('crossings', () => {
  it('are all found, in the order of the looks', () => {
    // cos 3 pi x: at 1/6, 1/2 and 5/6.
    const wave = { at: (log: number) => Math.cos(3 * Math.PI * log), spare: everywhere }
    const forward = found(wave)
    expect(forward.length).toBe(3)
    for (const [index, place] of forward.entries()) expect(Math.abs(place - (1 + 2 * index) / 6)).toBeLessThan(0.1)
    expect(found(wave, 1, 0).length).toBe(3)
  })

  it('and back between two looks are both found', () => {
    expect(found({ at: (log) => (log - 0.55) ** 2 - 0.0004, spare: everywhere }).length).toBe(2)
    expect(found({ at: (log) => 0.0004 - (log - 0.55) ** 2, spare: everywhere }).length).toBe(2)
    expect(found({ at: (log) => (log - 0.55) ** 2 + 0.0004, spare: everywhere })).toEqual([])
  })

  it('are found up to the edges of where the quantity is', () => {
    const upTo = (least: number, most: number): Bounded => ({
      at: (log) => (log < least || log > most ? null : log - 0.55),
      spare: (log) => Math.min(log - least, most - log),
    })
    expect(found(upTo(0.54, 2)).length).toBe(1)
    expect(found(upTo(-1, 0.56)).length).toBe(1)
    expect(found(upTo(0.56, 2))).toEqual([])
  })

  it('are found where it is between two looks alone', () => {
    const island: Bounded = {
      at: (log) => (Math.abs(log - 0.55) > 0.02 ? null : log - 0.551),
      spare: (log) => 0.02 - Math.abs(log - 0.55),
    }
    expect(found(island).length).toBe(1)
    expect(found(island, 1, 0).length).toBe(1)
  })
})
