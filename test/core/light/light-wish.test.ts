/** Light wishes: which two no sun can meet together, and altitudes with and without air. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LightWishes, NO_WISHES, contradictions, wishesMade } from '#core/light/light-wish.ts'
import { apparentAltitude, trueAltitude } from '#core/light/refraction.ts'

function wished(part: Partial<LightWishes>): LightWishes {
  return { ...NO_WISHES, ...part }
}

describe('wishes that contradict each other', () => {
  it.each<[Partial<LightWishes>, readonly string[]]>([
    [{ subject: 'lit', soft: 'evening' }, ['subject soft']],
    [{ landmark: 'raking', soft: 'either' }, ['landmark soft']],
    [{ sun: 'in-frame', soft: 'morning' }, ['sun soft']],
    [{ altitude: { least: 5, most: 20 }, soft: 'evening' }, ['altitude soft']],
    [{ altitude: { least: -18, most: -8 }, subject: 'in-shade' }, ['subject altitude']],
    [{ subject: 'lit', landmark: 'lit', soft: 'either' }, ['subject soft', 'landmark soft']],
  ])('%j', (part, pairs) => {
    expect(contradictions(wished(part)).map((pair) => pair.join(' '))).toEqual(pairs)
  })

  it.each<Partial<LightWishes>>([
    {},
    { subject: 'lit', landmark: 'lit' },
    { sun: 'out-of-frame', soft: 'evening' },
    { altitude: { least: -8, most: 2 }, soft: 'evening' },
    { moonUp: true, soft: 'evening', hours: { from: 1080, until: 1320 } },
    { subject: 'back-lit', sun: 'in-frame', altitude: { least: 0, most: 12 } },
  ])('are none in %j', (part) => {
    expect(contradictions(wished(part))).toEqual([])
  })
})

describe('the wishes made', () => {
  it('are those that ask for something, in their order', () => {
    expect(wishesMade(NO_WISHES)).toEqual([])
    expect(wishesMade(wished({ moonUp: true, subject: 'lit' }))).toEqual(['subject', 'moonUp'])
  })
})

it('the altitude without air is the one that appears at the altitude asked for', () => {
  fc.assert(
    fc.property(fc.double({ min: -5, max: 89, noNaN: true }), (apparent) => {
      expect(apparentAltitude(trueAltitude(apparent))).toBeCloseTo(apparent, 9)
    }),
  )
})
