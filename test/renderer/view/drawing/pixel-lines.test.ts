/** A label goes to the first place that is inside and clear. */
import { describe, expect, it } from 'vitest'
import { placeLabel, textWidth } from '#renderer/view/drawing/pixel-lines.ts'

const BOX = { left: 0, top: 0, right: 100, bottom: 50 }

describe('placeLabel', () => {
  const size = { width: 20, height: 10 }

  it('takes the first candidate that is clear', () => {
    const clear = [{ left: 0, right: 40, top: 0, bottom: 50 }]
    const candidates = [
      { x: 20, y: 25 },
      { x: 45, y: 25 },
      { x: 60, y: 25 },
      { x: 70, y: 25 },
    ]
    expect(placeLabel(candidates, size, BOX, clear)).toEqual({ x: 60, y: 25 })
  })

  it('never lets a label stick out', () => {
    expect(
      placeLabel(
        [
          { x: 95, y: 25 },
          { x: 50, y: 3 },
        ],
        size,
        BOX,
        [],
      ),
    ).toBeNull()
  })
})

describe('textWidth', () => {
  it('counts narrow letters as narrow', () => {
    expect(textWidth('....', 10)).toBeLessThan(textWidth('8888', 10))
  })
})
