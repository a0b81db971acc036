/** The crossings of a line with the lines between cell centres, against the plainest way to find them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { maximaOf } from '#core/ground/block-maxima.ts'
import type { ElevationGrid, GridPoint } from '#core/ground/elevation-grid.ts'
import { crossingsBetween, distanceAt, gridLine, majorAt, pointAt, roomForCrossings } from '#core/ground/grid-line.ts'
import { stripAt, stripEnd, stripMaximum, stripUnknown } from '#core/ground/line-strips.ts'
import { plainCrossings } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'

const SIZE = 90

function scattered(voids: number): ElevationGrid {
  const next = generator(11)
  const heights = Float32Array.from({ length: SIZE * SIZE }, () => (next() < voids ? Number.NaN : next() * 100))
  return { centre: { lat: 0, lon: 0 }, cell: 10, columns: SIZE, rows: SIZE, west: -400, north: 400, heights }
}

const whole = scattered(0)
const holed = scattered(0.1)

/** Anywhere on and around the grid; often exactly on cell centres and grid lines. */
const along = fc.oneof(
  fc.integer({ min: -600_000, max: 700_000 }).map((millimetres) => millimetres / 1000),
  fc.integer({ min: -60, max: 70 }).map((cells) => cells * 10),
)
const point = fc.record({ east: along, north: along })

/** Distance and height of every crossing, in order, each once. */
function walked(grid: ElevationGrid, from: GridPoint, to: GridPoint): (readonly [number, number])[] {
  const line = gridLine(grid, from, to)
  if (line === null) return []
  const room = roomForCrossings(Math.abs(line.leave - line.enter))
  crossingsBetween(line, line.enter, line.leave, room)
  return [...room.distances.subarray(0, room.count)].map((distance, at) => [distance, room.heights[at] ?? 0] as const)
}

/** The inner crossings: both ends and a line along the very edge are matters of rounding. */
function inner(list: readonly (readonly [number, number])[], length: number): (readonly [number, number])[] {
  return list.filter(([distance]) => distance > 1e-6 && distance < length - 1e-6)
}

/** On the outermost cell centres, where rounding may set a crossing in or out of the grid. */
function onEdge(from: GridPoint, to: GridPoint, share: number): boolean {
  const east = from.east + share * (to.east - from.east)
  const north = from.north + share * (to.north - from.north)
  return [east + 400, east - 490, north - 400, north + 490].some((off) => Math.abs(off) < 1e-6)
}

describe('a line over a grid', () => {
  it('meets every line between cell centres, in order', () => {
    fc.assert(
      fc.property(point, point, (from, to) => {
        const length = Math.hypot(to.east - from.east, to.north - from.north)
        const found = inner(walked(whole, from, to), length)
        const plain = inner(
          plainCrossings(whole, from, to).map(({ distance, height }) => [distance, height] as const),
          length,
        )
        for (const [at, [distance]] of found.entries())
          expect(distance).toBeGreaterThanOrEqual((found[at - 1]?.[0] ?? 0) - 1e-9)
        const missing = (one: typeof found, other: typeof found): number[] =>
          one
            .filter(
              ([at, height]) =>
                !other.some(([its, told]) => Math.abs(its - at) < 1e-6 && Math.abs(told - height) < 1e-3),
            )
            .map(([at]) => at)
            .filter((at) => !onEdge(from, to, at / length))
        expect(missing(plain, found)).toEqual([])
        expect(missing(found, plain)).toEqual([])
      }),
      { numRuns: 500 },
    )
  })

  it('cut into strips meets the same, and no strip is lower than what it holds', () => {
    fc.assert(
      fc.property(point, point, fc.boolean(), (from, to, coarse) => {
        const line = gridLine(whole, from, to)
        if (line === null) return
        const level = coarse ? maximaOf(whole).coarse : maximaOf(whole).fine
        const room = roomForCrossings(level.span)
        const found: number[] = []
        for (let here = line.enter; here !== line.leave;) {
          const strip = stripAt(line, level, here)
          const end = stripEnd(line, level, strip, line.leave)
          crossingsBetween(line, here, end, room)
          const highest = stripMaximum(line, level, strip, here, end)
          for (let at = 0; at < room.count; at++) {
            expect(room.heights[at]).toBeLessThanOrEqual(highest + 1e-6)
            const distance = room.distances[at] ?? 0
            if (distance - (found.at(-1) ?? -1) > 1e-9) found.push(distance)
          }
          here = end
        }
        const apart = walked(whole, from, to)
          .map(([distance]) => distance)
          .filter((distance, at, all) => at === 0 || distance - (all[at - 1] ?? 0) > 1e-9)
        expect(found.length).toBe(apart.length)
      }),
      { numRuns: 300 },
    )
  })

  it('takes the known neighbour beside a void and says so; a post on the line needs none', () => {
    fc.assert(
      fc.property(point, point, (from, to) => {
        const line = gridLine(holed, from, to)
        if (line === null) return
        const room = roomForCrossings(Math.abs(line.leave - line.enter))
        crossingsBetween(line, line.enter, line.leave, room)
        let any = false
        for (let at = 0; at < room.count; at++) {
          if (Number.isNaN(room.heights[at])) expect(room.unknown[at]).toBe(1)
          any ||= room.unknown[at] === 1
        }
        if (!any) return
        const { fine } = maximaOf(holed)
        let told = false
        for (let here = line.enter; here !== line.leave;) {
          const strip = stripAt(line, fine, here)
          const end = stripEnd(line, fine, strip, line.leave)
          told ||= stripUnknown(line, fine, strip, here, end)
          here = end
        }
        expect(told).toBe(true)
      }),
    )
    const row = {
      ...whole,
      heights: Float32Array.from(whole.heights, (_, index) => (index % SIZE === 0 ? Number.NaN : 5)),
    }
    const room = roomForCrossings(3)
    const beside = gridLine(row, { east: -395, north: 380 }, { east: -395, north: 360 }) ?? raise()
    crossingsBetween(beside, beside.enter, beside.leave, room)
    expect([...room.heights.subarray(0, room.count)]).toEqual([5, 5, 5])
    expect([...room.unknown.subarray(0, room.count)]).toEqual([1, 1, 1])
  })

  it('counts metres from its start and finds them again', () => {
    const line = gridLine(whole, { east: -100, north: 50 }, { east: 200, north: -350 }) ?? raise()
    expect(distanceAt(line, majorAt(line, 123))).toBeCloseTo(123, 9)
    const at = pointAt(line, 250)
    expect(at.east).toBeCloseTo(50, 9)
    expect(at.north).toBeCloseTo(-150, 9)
  })

  it('is nothing beside the grid, without length, or over a grid without cells between', () => {
    expect(gridLine(whole, { east: -500, north: 0 }, { east: -500, north: 100 })).toBeNull()
    expect(gridLine(whole, { east: -500, north: 0 }, { east: -450, north: 10 })).toBeNull()
    expect(gridLine(whole, { east: 0, north: 0 }, { east: 0, north: 0 })).toBeNull()
    expect(
      gridLine({ ...whole, columns: 1, rows: 8100 }, { east: -400, north: 0 }, { east: -400, north: 9 }),
    ).toBeNull()
  })
})

function raise(): never {
  throw new Error('no line')
}
