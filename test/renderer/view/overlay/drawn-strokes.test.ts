/** Strokes of drawn ground: stations stay where they are whatever the window shows, ticks go inward, tips point out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { apart, besides, runsClockwise, stations, tip } from '#renderer/view/overlay/drawn-strokes.ts'
import { distanceBetween } from '#renderer/view/drawing/plan-view.ts'

const pixel = fc.record({
  x: fc.double({ min: -500, max: 500, noNaN: true }),
  y: fc.double({ min: -500, max: 500, noNaN: true }),
})
const line = fc.array(pixel, { minLength: 2, maxLength: 12 })
const EVERYWHERE = { left: -1e4, right: 1e4, top: -1e4, bottom: 1e4 }

describe('stations', () => {
  it('lie evenly along a straight line, half a step from its beginning', () => {
    const found = stations(
      [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
      ],
      false,
      20,
      EVERYWHERE,
    )
    expect(found.map(({ at }) => at.x)).toEqual([10, 30, 50, 70, 90])
    expect(found.every(({ along }) => along.x === 1 && along.y === 0)).toBe(true)
  })

  it('go on evenly round corners: as many as steps fit into the length', () => {
    fc.assert(
      fc.property(line, fc.double({ min: 5, max: 60, noNaN: true }), (points, every) => {
        const length = points.slice(1).reduce((sum, at, n) => sum + distanceBetween(points[n] ?? at, at), 0)
        const count = stations(points, false, every, EVERYWHERE).length
        expect(Math.abs(count - length / every)).toBeLessThanOrEqual(0.500001)
      }),
    )
  })

  it('in a part of the window are those of the whole that lie there', () => {
    fc.assert(
      fc.property(line, (points) => {
        const part = { left: -200, right: 150, top: -100, bottom: 300 }
        const within = (all: ReturnType<typeof stations>): string[] =>
          all
            .filter(
              ({ at }) =>
                at.x > part.left + 1 && at.x < part.right - 1 && at.y > part.top + 1 && at.y < part.bottom - 1,
            )
            .map(({ at }) => `${at.x.toFixed(6)} ${at.y.toFixed(6)}`)
        expect(within(stations(points, false, 17, part))).toEqual(within(stations(points, false, 17, EVERYWHERE)))
      }),
    )
  })

  it('close an outline', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 40, y: 40 },
      { x: 0, y: 40 },
    ]
    expect(stations(square, true, 40, EVERYWHERE).map(({ at }) => at)).toEqual([
      { x: 20, y: 0 },
      { x: 40, y: 20 },
      { x: 20, y: 40 },
      { x: 0, y: 20 },
    ])
    expect(stations(square, false, 40, EVERYWHERE)).toHaveLength(3)
  })
})

it('an outline is clockwise on the screen when its inside lies to the right', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 40, y: 40 },
    { x: 0, y: 40 },
  ]
  expect(runsClockwise(square)).toBe(true)
  expect(runsClockwise(square.toReversed())).toBe(false)
  const [first] = stations(square, true, 40, EVERYWHERE)
  if (first === undefined) throw new Error('the square has sides')
  expect(besides(first, 0, 5)).toEqual({ x: 20, y: 5 })
})

describe('the tip of a line', () => {
  it('lies beyond its end', () => {
    const [, x = Number.NaN, y = Number.NaN] = (
      /^M([-\d.]+),([-\d.]+)/u.exec(
        tip([
          { x: 0, y: 0 },
          { x: 0, y: 50 },
        ]),
      ) ?? []
    ).map(Number)
    expect(x).toBe(0)
    expect(y).toBeGreaterThan(50)
  })

  it('is none where the line has no length', () => {
    expect(
      tip([
        { x: 3, y: 3 },
        { x: 3, y: 3 },
      ]),
    ).toBe('')
    expect(tip([])).toBe('')
  })
})

it('points that lie close together are left out, the ends never', () => {
  fc.assert(
    fc.property(line, (points) => {
      const shown = apart(points, 30)
      expect(shown[0]).toBe(0)
      expect(shown.at(-1)).toBe(points.length - 1)
      for (const [n, index] of shown.entries()) {
        const next = shown[n + 1]
        const [one, other] = [points[index], points[next ?? -1]]
        const isLast = next === points.length - 1
        if (one !== undefined && other !== undefined && !isLast)
          expect(distanceBetween(one, other)).toBeGreaterThanOrEqual(30)
      }
    }),
  )
})
