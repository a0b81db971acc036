/** Crops: the largest centred rectangle that fits, and what a framing says of a thing against it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { USUAL_CROPS, cropSize } from '#core/frame/crop.ts'
import { type Extent, framingOf } from '#core/frame/framing.ts'

describe('a crop', () => {
  it('fits the frame, touches two of its sides and keeps its proportions', () => {
    const side = fc.double({ min: 1, max: 100, noNaN: true })
    fc.assert(
      fc.property(side, side, fc.constantFrom(...USUAL_CROPS), (width, height, crop) => {
        const size = cropSize(crop, width, height)
        expect(size.width / size.height).toBeCloseTo(crop.wide / crop.high, 9)
        expect(size.width <= width * (1 + 1e-12) && size.height <= height * (1 + 1e-12)).toBe(true)
        expect(size.width >= width * (1 - 1e-12) || size.height >= height * (1 - 1e-12)).toBe(true)
      }),
    )
  })

  it('of 1:1 in a 36 x 24 frame is 24 x 24', () => {
    expect(cropSize({ wide: 1, high: 1 }, 36, 24)).toEqual({ width: 24, height: 24 })
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

  it('tells a thing beside the frame from one in it', () => {
    expect(framingOf({ ...extent, left: 30, right: 40 }, 36, 24).inFrame).toBe(false)
    expect(framingOf(extent, 36, 24).inFrame).toBe(true)
  })
})
