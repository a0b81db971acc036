/** Framing: a thing's bounds in the frame by similar triangles, and what frame or crop show and cut of it. */
import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { imageSize, sideOf } from '#core/frame/fill.ts'
import { type Extent, extentOf, framingOf } from '#core/frame/framing.ts'
import { NEAREST_DEPTH } from '#core/frame/projection.ts'
import { viewWith } from '#test/help/views.ts'

/** Looking north from the sea at the equator: right is east, depth is north. */
const VIEW = viewWith()

describe('an extent', () => {
  it('is bounded by the outermost images and depths, each of whichever point', () => {
    // Millimetres: 50 x metres aside / metres ahead.
    const points = [
      { east: -2, north: 10, up: 1 },
      { east: 3, north: 30, up: -6 },
      { east: 1, north: 5, up: 0.4 },
      { east: 0, north: 20, up: 4 },
    ]
    const wanted = { left: -10, right: 10, bottom: -10, top: 10, near: 5, far: 30, partlyBehind: false }
    for (const order of [points, points.toReversed()]) expect(extentOf(VIEW, order)).toEqual(wanted)
  })

  it('leaves out what lies behind the lens, and says so', () => {
    const before = { east: 1, north: 10, up: 2 }
    const alone = { left: 5, right: 5, bottom: 10, top: 10, near: 10, far: 10, partlyBehind: false }
    expect(extentOf(VIEW, [before])).toEqual(alone)
    for (const behind of [
      { east: -3, north: -4, up: 9 },
      { east: -3, north: 0, up: 9 },
    ]) {
      expect(extentOf(VIEW, [behind, before])).toEqual({ ...alone, partlyBehind: true })
      expect(extentOf(VIEW, [behind])).toBeNull()
    }
    // The nearest depth itself still has an image.
    expect(extentOf(VIEW, [{ east: 0, north: NEAREST_DEPTH, up: 0 }])?.partlyBehind).toBe(false)
    expect(extentOf(VIEW, [])).toBeNull()
  })
})

describe('a framing', () => {
  const extent: Extent = { left: -6, right: 14, bottom: -4, top: 4, near: 5, far: 6, partlyBehind: false }

  it('tells what is cut and by how much of the thing', () => {
    const square = framingOf(extent, 24, 24)
    expect(square.whole).toBe(false)
    expect(square.cutRight).toBeCloseTo(2 / 20, 12)
    expect(square.cutLeft).toBe(0)
    expect(square.widthFill).toBeCloseTo(20 / 24, 12)
    expect(framingOf(extent, 36, 24).whole).toBe(true)
  })

  it('tells each side’s cut, the fills and the bounds, as shares of the thing and of the frame', () => {
    // A thing of 40 x 20 in a frame of 20 x 10: beyond the borders at 10 and 5 by 15 left, 5 right, 4 below, 6 above.
    expect(framingOf({ ...extent, left: -25, right: 15, bottom: -9, top: 11 }, 20, 10)).toEqual({
      widthFill: 2,
      heightFill: 2,
      left: -1.25,
      right: 0.75,
      bottom: -0.9,
      top: 1.1,
      cutLeft: 15 / 40,
      cutRight: 5 / 40,
      cutBottom: 4 / 20,
      cutTop: 6 / 20,
      whole: false,
      inFrame: true,
    })
  })

  it.each([
    ['left', { left: -19 }],
    ['right', { right: 19 }],
    ['bottom', { bottom: -13 }],
    ['top', { top: 13 }],
  ])('is not of the whole when but the %s is cut', (_, part) => {
    const framing = framingOf({ ...extent, ...part }, 36, 24)
    expect(framing.whole).toBe(false)
    expect(framing.inFrame).toBe(true)
  })

  it('is not of the whole when the thing is cut alike on two sides', () => {
    for (const part of [
      { left: -20, right: 20 },
      { bottom: -13, top: 13 },
      { left: -20, right: 0, bottom: -14, top: 6 },
      { left: 0, right: 20, bottom: -6, top: 14 },
    ])
      expect(framingOf({ ...extent, ...part }, 36, 24).whole).toBe(false)
  })

  it('is not of the whole when part of the thing lies behind the lens', () => {
    expect(framingOf({ ...extent, partlyBehind: true }, 36, 24).whole).toBe(false)
  })

  it('is of the whole when the thing reaches to the very borders', () => {
    expect(framingOf({ ...extent, left: -18, right: 18, bottom: -12, top: 12 }, 36, 24).whole).toBe(true)
  })

  it.each([
    ['left', { left: -40, right: -18 }, 'cutLeft'],
    ['right', { left: 18, right: 40 }, 'cutRight'],
    ['bottom', { bottom: -40, top: -12 }, 'cutBottom'],
    ['top', { bottom: 12, top: 40 }, 'cutTop'],
  ] as const)('shows nothing of a thing that but touches the %s border from without', (_, part, cut) => {
    const framing = framingOf({ ...extent, ...part }, 36, 24)
    expect(framing.inFrame).toBe(false)
    expect(framing[cut]).toBe(1)
    const inside = framingOf({ ...extent, ...part }, 36.001, 24.001)
    expect(inside.inFrame).toBe(true)
  })

  it('tells a thing beside the frame from one in it', () => {
    expect(framingOf({ ...extent, left: 30, right: 40 }, 36, 24).inFrame).toBe(false)
    expect(framingOf(extent, 36, 24).inFrame).toBe(true)
  })

  it('cuts a thing without width or height all or not at all', () => {
    const line = (x: number) => framingOf({ ...extent, left: x, right: x }, 36, 24)
    expect([line(17), line(18), line(19)].map(({ cutRight }) => cutRight)).toEqual([0, 0, 1])
    expect([line(-17), line(-18), line(-19)].map(({ cutLeft }) => cutLeft)).toEqual([0, 0, 1])
    const level = framingOf({ ...extent, bottom: 13, top: 13 }, 36, 24)
    expect([level.cutTop, level.cutBottom]).toEqual([1, 0])
  })

  it('never cuts less than nothing or more than all', () => {
    const side = double({ min: -100, max: 100, noNaN: true })
    assert(
      property(side, side, side, side, (a, b, c, d) => {
        const bounds = { left: Math.min(a, b), right: Math.max(a, b), bottom: Math.min(c, d), top: Math.max(c, d) }
        const { cutLeft, cutRight, cutBottom, cutTop } = framingOf({ ...extent, ...bounds }, 36, 24)
        for (const cut of [cutLeft, cutRight, cutBottom, cutTop]) expect(cut >= 0 && cut <= 1).toBe(true)
      }),
    )
  })
})

describe('a fill', () => {
  it('is of the side it is asked of', () => {
    const extent = { left: -6, right: 14, bottom: -4, top: 5, near: 5, far: 6, partlyBehind: false }
    expect([imageSize(extent, 'width'), imageSize(extent, 'height')]).toEqual([20, 9])
    expect([sideOf(VIEW, 'width'), sideOf(VIEW, 'height')]).toEqual([36, 24])
  })
})
