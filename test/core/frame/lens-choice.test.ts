/** Which lens is taken: by what each of a bag can do, one difference at a time. */
import { describe, expect, it } from 'vitest'
import { type LensOffer, chooseOffer, fromSensor, lensOffers } from '#core/frame/lens-choice.ts'
import { type Scene, type Setting, setUp } from '#core/frame/set-up.ts'
import { setUpForFill } from '#core/frame/set-up-for-fill.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import type { Lens } from '#core/optics/lens.ts'

const REACHING: LensOffer = {
  lensId: 'a',
  focalLength: 50,
  reaches: true,
  end: null,
  gives: 0.5,
  widest: 2.8,
  tooNear: false,
}
const taken = (offers: readonly Partial<LensOffer>[], wanted = 50, asked: string | null = null): string | null =>
  chooseOffer(
    offers.map((part) => ({ ...REACHING, ...part })),
    wanted,
    asked,
  )?.lensId ?? null

/** Whichever lies first in the bag: what is better must not hang on it. */
function either(one: Partial<LensOffer>, other: Partial<LensOffer>, wanted = 50): (string | null)[] {
  return [taken([one, other], wanted), taken([other, one], wanted)]
}

describe('the lens that is taken', () => {
  it('is the one asked for, whatever it can do', () => {
    const worse = { lensId: 'b', reaches: false, end: 'long' as const, focalLength: 20, tooNear: true, widest: 8 }
    expect(taken([{ lensId: 'a' }, worse], 50, 'b')).toBe('b')
    expect(taken([{ lensId: 'a' }, worse], 50, 'none of the bag')).toBe('a')
  })

  it('is none of an empty bag, and the first of equals', () => {
    expect(taken([])).toBeNull()
    expect(taken([{ lensId: 'a' }, { lensId: 'b' }])).toBe('a')
  })

  it('reaches, before all else', () => {
    const short = { lensId: 'b', reaches: false, focalLength: 49, widest: 1.4 }
    expect(either({ lensId: 'a', tooNear: true, widest: 8 }, short)).toEqual(['a', 'a'])
  })

  it('focuses so near, before it opens wide', () => {
    expect(either({ lensId: 'a', widest: 4 }, { lensId: 'b', widest: 1.4, tooNear: true })).toEqual(['a', 'a'])
  })

  it('opens widest of those that can do the rest', () => {
    expect(either({ lensId: 'a', widest: 1.8 }, { lensId: 'b', widest: 2.8 })).toEqual(['a', 'a'])
    // How far off the two ends lie says nothing of lenses that reach.
    const off = { lensId: 'b', focalLength: 50 * (1 + 1e-10), widest: 1.4 }
    expect(either({ lensId: 'a', widest: 1.8 }, off)).toEqual(['b', 'b'])
  })

  it('comes nearest in stops of focal length where none reaches, and then by the same rules', () => {
    const at = (lensId: string, focalLength: number, part: Partial<LensOffer> = {}) => ({
      lensId,
      focalLength,
      reaches: false,
      ...part,
    })
    // 35 is 1.43 times too short for 50 and 70 is 1.4 times too long: the longer is nearer, though 15 mm lie below 20.
    expect(either(at('a', 35), at('b', 70))).toEqual(['b', 'b'])
    expect(either(at('a', 35, { widest: 1.4 }), at('b', 40, { widest: 4, tooNear: true }))).toEqual(['b', 'b'])
    expect(either(at('a', 40, { widest: 1.4, tooNear: true }), at('b', 40, { widest: 4 }))).toEqual(['b', 'b'])
    expect(either(at('a', 40, { widest: 2 }), at('b', 40, { widest: 4 }))).toEqual(['a', 'a'])
  })
})

const zoom = (id: string, focalMin: number, focalMax: number, closestFocus = 0.3): Lens => ({
  id,
  name: id,
  focalMin,
  focalMax,
  widestAtMin: 2,
  widestAtMax: 4,
  smallest: 22,
  closestFocus,
  weight: null,
})

/** A board two metres wide and one high, square to the axis, five metres north of the lens. */
const BOARD: Scene = {
  frame: localFrame({ lat: 0, lon: 0 }, 0),
  corners: [-1, 1].flatMap((east) => [-0.5, 0.5].map((up) => ({ east, north: 5, up }))),
  centre: { east: 0, north: 5, up: 0 },
  feature: { east: 0, north: 5, up: 0 },
  refraction: 0,
}
const SETTING: Setting = {
  frameWidth: 36,
  frameHeight: 24,
  placement: { across: 0, up: 0 },
  focus: { on: 'middle', behindFront: 0 },
}

describe('what each lens offers', () => {
  const bag = [zoom('short', 16, 35), zoom('middle', 24, 70), zoom('long', 100, 400)]
  const offered = () => lensOffers(bag, 50, BOARD, SETTING, { share: 0.5, axis: 'width' })

  it('is the wished focal length where it reaches, else the end that lies nearer, and which', () => {
    const offers = offered()
    expect(offers.map(({ lensId }) => lensId)).toEqual(['short', 'middle', 'long'])
    expect(offers.map(({ focalLength }) => focalLength)).toEqual([35, 50, 100])
    expect(offers.map(({ reaches }) => reaches)).toEqual([false, true, false])
    expect(offers.map(({ end }) => end)).toEqual(['long', null, 'short'])
  })

  it('is the share that a thin lens gives there: 2 m at 5 m, v = f u / (u - f)', () => {
    for (const { focalLength, gives } of offered()) {
      const image = (focalLength * 5) / (5 - focalLength / 1000)
      expect(gives).toBeCloseTo((2 * image) / 5 / 36, 12)
    }
    const [high] = lensOffers([zoom('z', 50, 50)], 50, BOARD, SETTING, { share: 0.5, axis: 'height' })
    expect(high?.gives).toBeCloseTo((1 * 50 * 5) / (5 - 0.05) / 5 / 24, 12)
  })

  it('is the widest opening there, not at the ends', () => {
    // f/2 to f/4 is two stops from end to end: the middle of 24-70, counted in ratios, is one stop from either, f/2.83.
    const [one] = lensOffers([bag[1] ?? zoom('', 1, 1)], Math.sqrt(24 * 70), BOARD, SETTING, {
      share: 1,
      axis: 'width',
    })
    expect(one?.widest).toBeCloseTo(2 * Math.SQRT2, 9)
  })

  it('is nothing where the lens is too long for so near a thing, and that is not told as too near a focus', () => {
    // At 5 m a lens beyond 2.5 m would show it larger than life.
    const [offer] = lensOffers([zoom('z', 3000, 3000, 99)], 3000, BOARD, SETTING, { share: 1, axis: 'width' })
    expect(offer?.gives).toBeNull()
    expect(offer?.tooNear).toBe(false)
  })

  it('is the same with the set-up at the wished focal length at hand', () => {
    const wish = { share: 0.5, axis: 'width' } as const
    const solved = setUpForFill(BOARD, SETTING, wish)
    if (solved === null) throw new Error('a fill of one half can be')
    const alone = lensOffers(bag, solved.focalLength, BOARD, SETTING, wish)
    const known = lensOffers(bag, solved.focalLength, BOARD, SETTING, wish, solved)
    for (const [index, offer] of known.entries()) {
      expect(offer.focalLength).toBe(alone[index]?.focalLength)
      expect(offer.gives).toBeCloseTo(alone[index]?.gives ?? Number.NaN, 12)
    }
    expect(known.map(({ tooNear }) => tooNear)).toEqual(alone.map(({ tooNear }) => tooNear))
  })

  it('tells a focus nearer than the lens allows, counted from the sensor: u + v', () => {
    const made = setUp(BOARD, SETTING, 50)
    if (made === null) throw new Error('it can be set up')
    const away = 5 + (50 * 5) / (5 - 0.05) / 1000
    expect(fromSensor(made)).toBeCloseTo(away, 9)
    const tooNear = (closestFocus: number) =>
      lensOffers([zoom('z', 50, 50, closestFocus)], 50, BOARD, SETTING, { share: 1, axis: 'width' })[0]?.tooNear
    expect([tooNear(away - 1e-6), tooNear(away + 1e-6)]).toEqual([false, true])
    // Exactly at its closest focus a lens does focus.
    expect(tooNear(fromSensor(made))).toBe(false)
  })
})
