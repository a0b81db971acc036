/** Which piece of the base is painted next: something at once, then the fine piece before the window's edge is reached, then the coarse one. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type PaintedPiece,
  coarsePiece,
  covers,
  finePiece,
  windowsMeet,
  wanted,
} from '#renderer/view/base/base-coverage.ts'
import type { WorldWindow } from '#renderer/view/sketch/world.ts'

const WINDOW: WorldWindow = { zoom: 15, left: 1000, top: 2000, width: 800, height: 600 }

function moved(window: WorldWindow, across: number, down = 0): WorldWindow {
  return { ...window, left: window.left + across, top: window.top + down }
}

const painted = (piece: WorldWindow, version = 1): PaintedPiece => ({ piece, version })

describe('what is wanted', () => {
  test('is the coarse piece first, then the fine one, then nothing', () => {
    expect(wanted(WINDOW, 1, null, null)).toBe('coarse')
    const coarse = painted(coarsePiece(WINDOW))
    expect(wanted(WINDOW, 1, null, coarse)).toBe('fine')
    expect(wanted(WINDOW, 1, painted(finePiece(WINDOW)), coarse)).toBeNull()
  })

  test('is the fine piece again before a pan reaches its edge, and the coarse one only past its own', () => {
    const [fine, coarse] = [painted(finePiece(WINDOW)), painted(coarsePiece(WINDOW))]
    expect(wanted(moved(WINDOW, 100), 1, fine, coarse)).toBeNull()
    const near = moved(WINDOW, 200)
    expect(covers(fine.piece, near, 0)).toBe(true)
    expect(wanted(near, 1, fine, coarse)).toBe('fine')
    const far = moved(WINDOW, 900)
    expect(wanted(far, 1, painted(finePiece(far)), coarse)).toBe('coarse')
  })

  test('is the fine piece first when the look changes or the map is zoomed: the old one stands meanwhile', () => {
    const [fine, coarse] = [painted(finePiece(WINDOW)), painted(coarsePiece(WINDOW))]
    expect(wanted(WINDOW, 2, fine, coarse)).toBe('fine')
    expect(wanted(WINDOW, 2, painted(finePiece(WINDOW), 2), coarse)).toBe('coarse')
    const zoomed = { ...WINDOW, zoom: 16, left: WINDOW.left * 2 + 400, top: WINDOW.top * 2 + 300 }
    expect(wanted(zoomed, 1, fine, coarse)).toBe('fine')
  })

  test('is something coarse at once where the map has gone far from all that is painted', () => {
    const [fine, coarse] = [painted(finePiece(WINDOW)), painted(coarsePiece(WINDOW))]
    expect(wanted(moved(WINDOW, 50_000), 1, fine, coarse)).toBe('coarse')
  })
})

test('pieces cover their window with room, on whole pixels, wherever it is', () => {
  const window = fc.record({
    zoom: fc.integer({ min: 2, max: 22 }),
    left: fc.double({ min: -1e6, max: 1e9, noNaN: true }),
    top: fc.double({ min: -1e6, max: 1e9, noNaN: true }),
    width: fc.integer({ min: 1, max: 4000 }),
    height: fc.integer({ min: 1, max: 3000 }),
  })
  fc.assert(
    fc.property(window, (one) => {
      for (const piece of [finePiece(one), coarsePiece(one)]) {
        expect([piece.left, piece.top].every(Number.isInteger)).toBe(true)
        expect(covers(piece, { ...one, left: Math.round(one.left), top: Math.round(one.top) }, 0)).toBe(true)
        expect(windowsMeet(piece, one)).toBe(true)
      }
      // Once both are painted nothing more is wanted, so painting comes to an end.
      expect(wanted(one, 1, painted(finePiece(one)), painted(coarsePiece(one)))).not.toBe('fine')
    }),
  )
})
