/** In placing mode a shaky press places one, a double press none, and a drag of the map none. */
import { describe, expect, it } from 'vitest'
import { type PressAnswer, readPresses } from '#renderer/view/hand/press.ts'

function kinds(answers: readonly PressAnswer[]): string[] {
  return answers.map((answer) => answer.kind)
}

describe('readPresses', () => {
  it('places where a still press went down', () => {
    const presses = readPresses()
    presses.down({ x: 10, y: 20 }, 0)
    expect(presses.up({ x: 10, y: 20 }, 80)).toEqual({ kind: 'place-soon', at: { x: 10, y: 20 } })
  })

  it.each([
    [2, 1],
    [3, 0],
    [3, 4],
  ])('places one from a press that shakes by %s, %s px', (dx, dy) => {
    const presses = readPresses()
    presses.down({ x: 10, y: 20 }, 0)
    presses.move({ x: 10 + dx, y: 20 + dy })
    expect(presses.up({ x: 10 + dx, y: 20 + dy }, 80)).toEqual({ kind: 'place-soon', at: { x: 10, y: 20 } })
  })

  it('takes back the first of two presses and places none for the second', () => {
    const presses = readPresses()
    const answers = [
      presses.down({ x: 10, y: 20 }, 0),
      presses.up({ x: 10, y: 20 }, 60),
      presses.down({ x: 11, y: 20 }, 180),
      presses.up({ x: 11, y: 20 }, 240),
    ]
    expect(kinds(answers)).toEqual(['nothing', 'place-soon', 'take-back', 'nothing'])
  })

  it('takes a later or a distant second press for a press of its own', () => {
    for (const [x, time] of [
      [10, 900],
      [90, 180],
    ] as const) {
      const presses = readPresses()
      presses.down({ x: 10, y: 20 }, 0)
      presses.up({ x: 10, y: 20 }, 60)
      expect(presses.down({ x, y: 20 }, time).kind).toBe('nothing')
      expect(presses.up({ x, y: 20 }, time + 60).kind).toBe('place-soon')
    }
  })

  it('places nothing when the press becomes a drag, even one that comes back', () => {
    const presses = readPresses()
    presses.down({ x: 10, y: 20 }, 0)
    presses.move({ x: 60, y: 20 })
    presses.move({ x: 10, y: 20 })
    expect(presses.up({ x: 10, y: 20 }, 400).kind).toBe('nothing')
  })
})
