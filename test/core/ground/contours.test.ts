/** Contours: joined, once each, at their level, higher ground on the left; steps and labels that a map can bear. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LabelRoom, contourLabels } from '#core/ground/contour-labels.ts'
import { contourStep, isStrongContour } from '#core/ground/contour-step.ts'
import { type ContourLine, contours } from '#core/ground/contours.ts'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

type Point = readonly [east: number, north: number]

function pointsOf(line: ContourLine): Point[] {
  return Array.from({ length: line.points.length / 2 }, (_, index) => [
    line.points[2 * index] ?? Number.NaN,
    line.points[2 * index + 1] ?? Number.NaN,
  ])
}

/** Square metres within a closed line, positive when it runs anticlockwise. */
function areaOf(line: ContourLine): number {
  const points = pointsOf(line)
  return points.reduce((sum, [east, north], index) => {
    const [toEast, toNorth] = points[(index + 1) % points.length] ?? [0, 0]
    return sum + (east * toNorth - toEast * north) / 2
  }, 0)
}

describe('a cone', () => {
  const grid = groundOf(201, 5, (east, north) => 205 - Math.hypot(east, north))

  it('has one closed ring for each level inside the grid, of the circle it is', () => {
    const rings = contours(grid, 10).filter((line) => line.level > 0 && line.level < 190)
    expect(rings.map((line) => line.level)).toEqual(Array.from({ length: 18 }, (_, index) => 10 * (index + 1)))
    for (const ring of rings) {
      const radius = 205 - ring.level
      expect(ring.closed).toBe(true)
      // The higher ground lies inside, on the left of a line that runs anticlockwise.
      expect(Math.abs(areaOf(ring) / (Math.PI * radius * radius) - 1)).toBeLessThan(0.02)
      for (const [east, north] of pointsOf(ring)) expect(Math.abs(Math.hypot(east, north) - radius)).toBeLessThan(0.7)
    }
  })

  it('turned over has rings that run clockwise', () => {
    const pit = { ...grid, heights: grid.heights.map((height) => -height) }
    const ring = contours(pit, 10).find((line) => line.level === -100)
    expect(areaOf(ring!)).toBeLessThan(0)
  })

  it('cut by the edge has open lines that end on it', () => {
    const open = contours(grid, 10).filter((line) => !line.closed)
    expect(open.length).toBeGreaterThan(10)
    for (const line of open) {
      const points = pointsOf(line)
      for (const [east, north] of [points[0]!, points[points.length - 1]!]) {
        expect(Math.max(Math.abs(east), Math.abs(north))).toBeCloseTo(500, 9)
      }
    }
  })
})

describe('any ground', () => {
  const heights = fc.array(fc.oneof(fc.integer({ min: 0, max: 6 }), fc.double({ min: 0, max: 6, noNaN: true })), {
    minLength: 42,
    maxLength: 42,
  })
  const gridOf = (values: readonly number[]): ElevationGrid => ({
    ...groundOf(2, 10, () => 0),
    columns: 7,
    rows: 6,
    heights: Float32Array.from(values),
  })

  it('every point lies at its level, and no point twice running', () => {
    fc.assert(
      fc.property(heights, (values) => {
        const grid = gridOf(values)
        for (const line of contours(grid, 1)) {
          const points = pointsOf(line)
          expect(points.length).toBeGreaterThan(1)
          for (const [index, [east, north]] of points.entries()) {
            expect(elevationAt(grid, east, north)).toBeCloseTo(line.level, 5)
            const [lastEast, lastNorth] = points[index - 1] ?? [Number.NaN, Number.NaN]
            expect(east === lastEast && north === lastNorth).toBe(false)
          }
        }
      }),
    )
  })

  it('a level is crossed on the way between two cells just when one is below it and the other not', () => {
    fc.assert(
      fc.property(heights, (values) => {
        const grid = gridOf(values)
        const points = contours(grid, 1).flatMap((line) =>
          pointsOf(line).map((point) => ({ point, level: line.level })),
        )
        const near = ([east, north]: Point, other: Point): boolean =>
          Math.hypot(east - other[0], north - other[1]) < 1e-6
        for (let column = 0; column < 6; column++) {
          const [one, other] = [grid.heights[column]!, grid.heights[column + 1]!]
          const low = Math.min(one, other)
          for (let level = Math.floor(low) + 1; level <= Math.max(one, other); level++) {
            const at: Point = [grid.west + 10 * (column + (level - one) / (other - one)), grid.north]
            // A line so short that it has no length is left out.
            const found = points.some((told) => told.level === level && near(told.point, at))
            const isPost = one === level || other === level
            expect(found || isPost, `level ${level} at column ${column}`).toBe(true)
          }
        }
      }),
    )
  })

  it('lines end only at the edge and at unknown ground', () => {
    fc.assert(
      fc.property(heights, fc.option(fc.integer({ min: 8, max: 33 })), (values, hole) => {
        const grid = gridOf(values)
        if (hole !== null) grid.heights[hole] = Number.NaN
        for (const line of contours(grid, 1)) {
          if (line.closed) continue
          const points = pointsOf(line)
          for (const [east, north] of [points[0]!, points[points.length - 1]!]) {
            const [x, y] = [(east - grid.west) / 10, (grid.north - north) / 10]
            const onEdge = x < 1e-9 || y < 1e-9 || x > 6 - 1e-9 || y > 5 - 1e-9
            const beside =
              hole !== null && Math.max(Math.abs(x - (hole % 7)), Math.abs(y - Math.floor(hole / 7))) < 1.001
            expect(onEdge || beside).toBe(true)
          }
        }
      }),
    )
  })
})

describe('ground exactly at a level', () => {
  it('counts as above it: a plateau has its rim, a lake at the lowest level none', () => {
    const plateau = groundOf(9, 10, (east, north) => (Math.max(Math.abs(east), Math.abs(north)) <= 20 ? 20 : 13))
    const [rim, ...more] = contours(plateau, 20)
    expect(more).toEqual([])
    expect(rim?.closed).toBe(true)
    expect(areaOf(rim!)).toBeCloseTo(1600, 6)
    const lake = groundOf(9, 10, (east) => Math.max(20, 20 + east))
    expect(contours(lake, 20).filter((line) => line.level === 20)).toEqual([])
  })

  it('a summit that only touches the level has no line', () => {
    expect(
      contours(
        groundOf(5, 10, (east, north) => (east === 0 && north === 0 ? 20 : 11)),
        20,
      ),
    ).toEqual([])
  })

  it('a saddle joins high ground when its middle is at the level or above, low ground otherwise', () => {
    const saddle = (high: number): ElevationGrid => ({
      ...groundOf(2, 10, () => 0),
      heights: Float32Array.from([high, 0, 0, high]),
    })
    for (const [high, joined] of [
      [21, true],
      [19, false],
    ] as const) {
      const lines = contours(saddle(high), 10).filter((line) => line.level === 10)
      expect(lines.length).toBe(2)
      // The middle of each line lies beyond or before the diagonal between the two high corners.
      for (const line of lines) {
        const [one, other] = pointsOf(line)
        const middle: Point = [(one![0] + other![0]) / 2, (one![1] + other![1]) / 2]
        const towardLow = Math.abs(middle[0] + middle[1]) > Math.abs(middle[0] - middle[1])
        expect(towardLow).toBe(joined)
      }
    }
  })
})

it('nothing known, nothing drawn; a step of nothing is refused', () => {
  const grid = groundOf(6, 10, () => Number.NaN)
  expect(contours(grid, 10)).toEqual([])
  for (const step of [0, -5, Number.NaN, Infinity]) expect(() => contours(grid, step)).toThrow(RangeError)
})

describe('the step', () => {
  it('grows as the map shrinks, and is what maps use', () => {
    const grid = mountains(200)
    const steps = [2, 0.5, 0.2, 0.05, 0.01, 0.001].map((scale) => contourStep(grid, scale))
    expect(steps).toEqual([...steps].toSorted((one, other) => (one ?? 0) - (other ?? 0)))
    expect(new Set(steps).size).toBeGreaterThan(3)
    expect(steps[steps.length - 1]).toBe(500)
  })

  it('keeps lines on an even slope at least six pixels apart, but no further than need be', () => {
    for (const slope of [0.05, 0.3, 1]) {
      for (const scale of [0.03, 0.1, 0.5]) {
        const step = contourStep(
          groundOf(50, 10, (east) => slope * east),
          scale,
        )
        const apart = ((step ?? 0) / slope) * scale
        expect(apart).toBeGreaterThanOrEqual(5.99)
        if (step !== 1) expect(apart).toBeLessThanOrEqual(15.01)
      }
    }
  })

  it('is one metre on level ground and unknown on unknown', () => {
    expect(
      contourStep(
        groundOf(20, 10, () => 5),
        0.1,
      ),
    ).toBe(1)
    expect(
      contourStep(
        groundOf(20, 10, () => Number.NaN),
        0.1,
      ),
    ).toBeNull()
  })

  it('every fifth line is strong, below the sea as well', () => {
    const strong = [-200, -120, -100, -20, 0, 20, 80, 100, 120].filter((level) => isStrongContour(level, 20))
    expect(strong).toEqual([-200, -100, 0, 100])
  })
})

describe('labels', () => {
  const room: LabelRoom = { length: 60, spacing: 500, apart: 150 }

  it('stand on their lines, upright, apart from each other', () => {
    const grid = mountains(250)
    const lines = contours(grid, 50)
    const labels = contourLabels(lines, room)
    expect(labels.length).toBeGreaterThan(20)
    for (const [index, label] of labels.entries()) {
      expect(elevationAt(grid, label.east, label.north)).toBeCloseTo(label.level, 0)
      expect(label.turn).toBeGreaterThan(-90)
      expect(label.turn).toBeLessThanOrEqual(90)
      for (const other of labels.slice(index + 1)) {
        expect(Math.hypot(label.east - other.east, label.north - other.north)).toBeGreaterThanOrEqual(150)
      }
    }
  })

  it('run along the line: of a slope to the south-east, from south-west to north-east', () => {
    const [label] = contourLabels(
      contours(
        groundOf(101, 10, (east, north) => (north - east) / 10),
        100,
      ),
      room,
    )
    expect(label?.turn).toBeCloseTo(-45, 6)
    const [other] = contourLabels(
      contours(
        groundOf(101, 10, (east, north) => (north + east) / 10),
        100,
      ),
      room,
    )
    expect(other?.turn).toBeCloseTo(45, 6)
  })

  it('leave out lines too short or too bent', () => {
    const knoll = groundOf(41, 5, (east, north) => 22 - Math.hypot(east, north) / 2)
    // Rings of 4, 24 and 44 m radius.
    const rings = contours(knoll, 10).filter((line) => line.level >= 0)
    expect(rings.length).toBe(3)
    expect(contourLabels(rings, room)).toEqual([])
    expect(contourLabels(rings, { ...room, length: 20 }).map((label) => label.level)).toEqual([0])
  })
})
