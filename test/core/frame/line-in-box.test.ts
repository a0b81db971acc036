/** Lines are cut to what is seen. */
import { describe, expect, it } from 'vitest'
import { clipSegment } from '#core/frame/line-in-box.ts'

const BOX = { left: 0, top: 0, right: 100, bottom: 50 }

describe('clipSegment', () => {
  it('leaves a line inside as it is', () => {
    expect(clipSegment({ x: 10, y: 10 }, { x: 90, y: 40 }, BOX)).toEqual([
      { x: 10, y: 10 },
      { x: 90, y: 40 },
    ])
  })

  it('cuts a line that passes through at both sides', () => {
    expect(clipSegment({ x: -100, y: 25 }, { x: 200, y: 25 }, BOX)).toEqual([
      { x: 0, y: 25 },
      { x: 100, y: 25 },
    ])
  })

  it('has nothing of a line that misses, also when it runs along a side', () => {
    expect(clipSegment({ x: -10, y: 60 }, { x: 120, y: 51 }, BOX)).toBeNull()
    expect(clipSegment({ x: -5, y: 0 }, { x: -5, y: 50 }, BOX)).toBeNull()
    expect(clipSegment({ x: -50, y: 20 }, { x: 20, y: -50 }, BOX)).toBeNull()
  })

  it('has nothing of a line that but touches a corner', () => {
    expect(clipSegment({ x: -5, y: 5 }, { x: 5, y: -5 }, BOX)).toBeNull()
  })

  it('keeps a single point inside', () => {
    expect(clipSegment({ x: 5, y: 5 }, { x: 5, y: 5 }, BOX)).not.toBeNull()
  })
})
