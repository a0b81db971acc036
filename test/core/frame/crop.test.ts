/** Crops: the largest centred rectangle that fits. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { USUAL_CROPS, cropSize } from '#core/frame/crop.ts'

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
