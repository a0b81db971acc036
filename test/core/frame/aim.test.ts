/** The aim: a point lands where it is wished, from anywhere in the sky and on the ground. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { aimAt } from '#core/frame/aim.ts'
import { makeView, projectLocal } from '#core/frame/projection.ts'
import { localFrame } from '#core/geo/local-frame.ts'

const frame = localFrame({ lat: 47, lon: 8 }, 400)

describe('the aim for a wished place in the frame', () => {
  it('lands the point there when projected (1e-9)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: -300, max: 300, noNaN: true }),
        fc.double({ min: -18, max: 18, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: 14, max: 400, noNaN: true }),
        (east, north, up, x, y, image) => {
          fc.pre(Math.hypot(east, north) > 1)
          const aim = aimAt({ east, north, up }, x, y, image)
          if (aim === null) return Math.hypot(east, north) < Math.abs(up)
          const parts = { frame, ...aim, imageDistance: image, frameWidth: 36, frameHeight: 24, refraction: 0 }
          const at = projectLocal(makeView(parts), { east, north, up })
          if (at === null) return false
          expect(Math.abs(at.x * 36 - x)).toBeLessThan(1e-9 * 36)
          expect(Math.abs(at.y * 24 - y)).toBeLessThan(1e-9 * 24)
          return true
        },
      ),
    )
  })

  it('is the plain direction for the middle of the frame', () => {
    expect(aimAt({ east: 10, north: 10, up: 0 }, 0, 0, 50)).toEqual({ bearing: 45, pitch: 0 })
    expect(aimAt({ east: -10, north: 0, up: 10 }, 0, 0, 50)?.pitch).toBeCloseTo(45, 12)
    expect(aimAt({ east: -10, north: 0, up: 10 }, 0, 0, 50)?.bearing).toBeCloseTo(270, 12)
  })

  it('is straight up or down for a point straight overhead or underfoot', () => {
    for (const up of [-7, 10]) {
      const aim = aimAt({ east: 0, north: 0, up }, 0, 0, 50)
      expect(aim?.pitch).toBeCloseTo(Math.sign(up) * 90, 9)
    }
  })

  it('is nothing for a point in the lens, or one overhead wished off to the side', () => {
    expect(aimAt({ east: 0, north: 0, up: 0 }, 0, 0, 50)).toBeNull()
    expect(aimAt({ east: 0, north: 0, up: 10 }, 18, 0, 20)).toBeNull()
  })
})
