/** How much of a line lies within a box, and the line cut to it: by hand, and against points tried along it. */
import { assert, double, integer, property, record } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clipSegment } from '#core/frame/line-in-box.ts'

const BOX = { left: 2, top: 10, right: 6, bottom: 12 }

interface Place {
  readonly x: number
  readonly y: number
}

/** Where along a line, 0 to 1, the part within the box begins and ends; null where there is none. */
function sharesOf(from: Place, to: Place): readonly number[] | null {
  const whole = Math.hypot(to.x - from.x, to.y - from.y)
  const part = clipSegment(from, to, BOX)
  return part === null ? null : part.map((at) => Math.hypot(at.x - from.x, at.y - from.y) / whole)
}
const shares = (x0: number, y0: number, x1: number, y1: number) => sharesOf({ x: x0, y: y0 }, { x: x1, y: y1 })

describe('the shares of a line within a box', () => {
  it('are those at which it passes the sides, either way along', () => {
    // Four wide from 2 to 6: a line from 0 to 8 enters after a quarter and leaves after three; so does one that runs back.
    expect(shares(0, 11, 8, 11)).toEqual([0.25, 0.75])
    expect(shares(8, 11, 0, 11)).toEqual([0.25, 0.75])
    // Two high from 10 to 12, on a way of 8 from 9 to 17, and back.
    expect(shares(4, 9, 4, 17)).toEqual([0.125, 0.375])
    expect(shares(4, 17, 4, 9)).toEqual([0.625, 0.875])
  })

  it('are of the whole line where it never leaves, and end where it ends', () => {
    expect(shares(3, 11, 5, 11.5)).toEqual([0, 1])
    expect(shares(4, 11, 8, 11)).toEqual([0, 0.5])
    expect(shares(0, 11, 4, 11)).toEqual([0.5, 1])
  })

  it('are none beside it, before it and behind it', () => {
    expect(shares(0, 9, 8, 9)).toBeNull()
    expect(shares(0, 13, 8, 13)).toBeNull()
    expect(shares(1, 9, 1, 13)).toBeNull()
    expect(shares(7, 9, 7, 13)).toBeNull()
    expect(shares(0, 11, 1, 11)).toBeNull()
    expect(shares(7, 11, 9, 11)).toBeNull()
    // Past a corner: over both sides' stretches, at different times.
    expect(shares(0, 11, 3, 14)).toBeNull()
  })

  it('are none where it but touches a corner, and the line itself where it runs along a side', () => {
    expect(shares(1, 11, 3, 13)).toBeNull()
    expect(shares(2, 10, 6, 10)).toEqual([0, 1])
    expect(shares(6, 10, 6, 12)).toEqual([0, 1])
  })

  it('hold every point of the line that lies within, and no other', () => {
    const point = record({ x: integer({ min: -4, max: 12 }), y: integer({ min: 4, max: 18 }) })
    assert(
      property(point, point, double({ min: 0, max: 1, noNaN: true }), (from, to, share) => {
        const found = sharesOf(from, to)
        if (from.x === to.x && from.y === to.y) return
        const x = from.x + (to.x - from.x) * share
        const y = from.y + (to.y - from.y) * share
        const within = x >= BOX.left && x <= BOX.right && y >= BOX.top && y <= BOX.bottom
        const [enter = Infinity, leave = -Infinity] = found ?? []
        // On a side itself it may but touch.
        if ([x - BOX.left, x - BOX.right, y - BOX.top, y - BOX.bottom].some((off) => Math.abs(off) < 1e-9)) return
        // Right at the ends rounding decides.
        if (Math.abs(share - enter) < 1e-9 || Math.abs(share - leave) < 1e-9) return
        expect(share > enter && share < leave).toBe(within)
      }),
      { numRuns: 2000 },
    )
  })
})

const WINDOW = { left: 0, top: 0, right: 100, bottom: 50 }

describe('clipSegment', () => {
  it('leaves a line inside as it is', () => {
    expect(clipSegment({ x: 10, y: 10 }, { x: 90, y: 40 }, WINDOW)).toEqual([
      { x: 10, y: 10 },
      { x: 90, y: 40 },
    ])
  })

  it('cuts a line that passes through at both sides', () => {
    expect(clipSegment({ x: -100, y: 25 }, { x: 200, y: 25 }, WINDOW)).toEqual([
      { x: 0, y: 25 },
      { x: 100, y: 25 },
    ])
  })

  it('has nothing of a line that misses, also when it runs along a side', () => {
    expect(clipSegment({ x: -10, y: 60 }, { x: 120, y: 51 }, WINDOW)).toBeNull()
    expect(clipSegment({ x: -5, y: 0 }, { x: -5, y: 50 }, WINDOW)).toBeNull()
    expect(clipSegment({ x: -50, y: 20 }, { x: 20, y: -50 }, WINDOW)).toBeNull()
  })

  it('has nothing of a line that but touches a corner', () => {
    expect(clipSegment({ x: -5, y: 5 }, { x: 5, y: -5 }, WINDOW)).toBeNull()
  })

  it('keeps a single point inside', () => {
    expect(clipSegment({ x: 5, y: 5 }, { x: 5, y: 5 }, WINDOW)).not.toBeNull()
  })
})
