/** The viewshed against every crossing in turn, and over ground whose answer is known by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { horizonDistance } from '#core/geo/curvature-and-refraction.ts'
import { type ElevationGrid, elevationAt } from '#core/ground/elevation-grid.ts'
import { sees } from '#core/ground/sight.ts'
import { beginViewshed, heightShowing, viewshed, viewshedRows } from '#core/ground/viewshed.ts'
import { HIDDEN, SEEN, UNKNOWN, type ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const REFRACTION = 0.13

function request(east: number, north: number, height: number, more: Partial<ViewshedRequest> = {}): ViewshedRequest {
  return { east, north, height, targetHeight: 0, refraction: REFRACTION, radius: null, ...more }
}

/** An eye at metres above the ground of a point. */
function askOver(grid: ElevationGrid, east: number, north: number, eye: number, more: Partial<ViewshedRequest> = {}) {
  return request(east, north, (elevationAt(grid, east, north) ?? Number.NaN) + eye, more)
}

function pointOf(grid: ElevationGrid, column: number, row: number): { readonly east: number; readonly north: number } {
  return { east: grid.west + column * grid.cell, north: grid.north - row * grid.cell }
}

/** Cells at which the viewshed and the plain way differ; unknown cells aside. */
function differing(grid: ElevationGrid, asked: ViewshedRequest, seen: Uint8Array): number {
  const eye = { east: asked.east, north: asked.north, elevation: asked.height }
  let count = 0
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      const cell = row * grid.columns + column
      const height = (grid.heights[cell] ?? Number.NaN) + asked.targetHeight
      if (Number.isNaN(height)) continue
      const hidden = plainSill(grid, eye, pointOf(grid, column, row), asked.refraction) > height
      if (hidden !== (seen[cell] === HIDDEN)) count++
    }
  }
  return count
}

describe('against every crossing of every line, in each of 40,000 cells', () => {
  const grid = mountains(200)
  const points = [
    { at: 'the middle', east: 5, north: 5 },
    { at: 'a corner', east: -985, north: 975 },
    { at: 'between cell centres', east: 312.3, north: -444.4 },
    { at: 'on a grid line', east: -405, north: 123.4 },
  ]
  it.each(points)('from $at', ({ east, north }) => {
    const asked = askOver(grid, east, north, 1.6)
    const seen = viewshed(grid, asked)
    expect(seen.includes(SEEN) && seen.includes(HIDDEN)).toBe(true)
    expect(seen.includes(UNKNOWN)).toBe(false)
    expect(differing(grid, asked, seen)).toBe(0)
  })

  it('for a tall target, and without air', () => {
    const asked = askOver(grid, 700, 700, 30, { targetHeight: 25, refraction: 0 })
    expect(differing(grid, asked, viewshed(grid, asked))).toBe(0)
  })

  it('on an earth so small that its curve counts within a block', () => {
    const asked = askOver(grid, 5, 5, 60, { targetHeight: 30, refraction: -300 })
    const seen = viewshed(grid, asked)
    expect(seen.filter((told) => told === SEEN).length).toBeGreaterThan(300)
    expect(differing(grid, asked, seen)).toBe(0)
  })

  it('with air that bends more than the earth does', () => {
    const asked = askOver(grid, -700, 300, 2, { refraction: 2.5 })
    expect(differing(grid, asked, viewshed(grid, asked))).toBe(0)
  })
})

it('agrees with single lines of sight whatever the ground, the eye and the shape of the grid', () => {
  const heights = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 12 * 9, maxLength: 12 * 9 })
  const place = fc.integer({ min: 0, max: 1e6 }).map((millionth) => millionth / 1e6)
  fc.assert(
    fc.property(heights, place, place, fc.boolean(), (ground, across, down, turned) => {
      const [columns, rows] = turned ? [9, 12] : [12, 9]
      const grid: ElevationGrid = {
        centre: { lat: 0, lon: 0 },
        cell: 7,
        columns,
        rows,
        west: -30,
        north: 25,
        heights: Float32Array.from(ground),
      }
      const east = grid.west + across * (columns - 1) * 7
      const north = grid.north - down * (rows - 1) * 7
      const asked = askOver(grid, east, north, 1.7, { targetHeight: 3.3 })
      const seen = viewshed(grid, asked)
      for (const [cell, told] of seen.entries()) {
        const at = pointOf(grid, cell % columns, Math.floor(cell / columns))
        const point = { ...at, elevation: (grid.heights[cell] ?? 0) + 3.3 }
        expect(told === SEEN, `cell ${cell}`).toBe(
          sees(grid, { east, north, elevation: asked.height }, point, REFRACTION),
        )
      }
    }),
    { numRuns: 60 },
  )
})

describe('ground known by hand', () => {
  it('a wall hides what lies behind it, up to the line over its top', () => {
    // Level ground, a wall 10 m high 100 m east of the eye at 2 m: 100 m further the line stands at 18 m.
    const grid = groundOf(81, 10, (east) => (east === 100 ? 10 : 0))
    const flat = { refraction: 1 }
    const row = 40 * 81 + 40
    const low = viewshed(grid, request(0, 0, 2, { ...flat, targetHeight: 17.9 }))
    const high = viewshed(grid, request(0, 0, 2, { ...flat, targetHeight: 18.1 }))
    expect(low[row + 10]).toBe(SEEN)
    expect([low[row + 20], high[row + 20]]).toEqual([HIDDEN, SEEN])
    expect(low[row - 20]).toBe(SEEN)
  })

  it('from its top a cone is seen whole, from its foot one side of it', () => {
    const grid = groundOf(101, 10, (east, north) => 400 - Math.hypot(east, north) / 2)
    const above = viewshed(grid, askOver(grid, 0, 0, 3, { refraction: 1 }))
    expect(above.every((told) => told === SEEN)).toBe(true)
    const below = viewshed(grid, askOver(grid, -490, 0, 1.6, { refraction: 1 }))
    const row = 50 * 101
    for (let column = 2; column < 50; column++) expect(below[row + column]).toBe(SEEN)
    for (let column = 52; column < 101; column++) expect(below[row + column]).toBe(HIDDEN)
  })

  it.each([0, 0.13])('the sea is seen as far as its horizon, refraction %d', (refraction) => {
    const cell = 100
    const grid = groundOf(201, cell, () => 0)
    const eye = 5
    const far = horizonDistance(eye, refraction)
    const seen = viewshed(grid, request(0, 0, eye, { refraction }))
    const row = 100 * 201 + 100
    let last = 0
    for (let steps = 1; steps <= 100; steps++) if (seen[row + steps] === SEEN) last = steps * cell
    expect(far).toBeGreaterThan(7000)
    expect(Math.abs(last - far)).toBeLessThanOrEqual(cell)
    // A mast shows beyond it, as far as its own horizon.
    const mast = viewshed(grid, request(0, 0, 1, { refraction, targetHeight: 1 }))
    const both = 2 * horizonDistance(1, refraction)
    let shown = 0
    for (let steps = 1; steps <= 100; steps++) if (mast[row + steps] === SEEN) shown = steps * cell
    expect(Math.abs(shown - both)).toBeLessThanOrEqual(cell)
  })

  it('an even slope is seen by an eye on it: a line that touches the ground sees, rounding or not', () => {
    // Heights that floats hold exactly.
    const grid = groundOf(60, 4, (east, north) => east / 4 + north / 8)
    for (const [east, north] of [
      [1.3, 2.7],
      [-77.7, 31.1],
    ] as const) {
      const seen = viewshed(grid, request(east, north, east / 4 + north / 8, { refraction: 1 }))
      expect(seen.every((told) => told === SEEN)).toBe(true)
    }
  })
})

describe('a landmark looked at from all the ground', () => {
  it('shows at least a share of its height where the point that far from its top is seen', () => {
    expect(heightShowing(100, 40, 1)).toBe(100)
    expect(heightShowing(100, 40, 0.25)).toBe(130)
    expect(heightShowing(100, 40, 0)).toBe(140)
    expect(heightShowing(100, 40, 7)).toBe(100)
  })

  it('is the same from its point outward and from each lens towards it', () => {
    const grid = mountains(90, 25, 4)
    const top = { east: 120, north: -90, elevation: (elevationAt(grid, 120, -90) ?? 0) + 30 }
    const seen = viewshed(grid, request(top.east, top.north, top.elevation, { targetHeight: 1.6 }))
    let shows = 0
    for (const [cell, told] of seen.entries()) {
      const lens = { ...pointOf(grid, cell % 90, Math.floor(cell / 90)), elevation: (grid.heights[cell] ?? 0) + 1.6 }
      expect(told === SEEN).toBe(sees(grid, lens, top, REFRACTION))
      if (told === SEEN) shows++
    }
    expect(shows).toBeGreaterThan(200)
  })

  it('the less of it must show, the more ground there is', () => {
    const grid = mountains(120, 25, 7)
    const base = elevationAt(grid, 0, 0) ?? 0
    const counts = [1, 0.5, 0.1].map((share) => {
      const height = heightShowing(base, 60, share)
      const seen = viewshed(grid, request(0, 0, height, { targetHeight: 1.6 }))
      return seen.filter((told) => told === SEEN).length
    })
    expect(counts[0]).toBeLessThan(counts[1] ?? 0)
    expect(counts[1]).toBeLessThan(counts[2] ?? 0)
  })
})

describe('unknown ground', () => {
  const flat = { refraction: 1 }
  it('is unknown, hides nothing, and leaves in doubt what lies behind it', () => {
    const grid = groundOf(41, 10, (east) => (east === 50 ? Number.NaN : 0))
    const seen = viewshed(grid, request(0, 0, 2, flat))
    const row = 20 * 41 + 20
    expect([seen[row + 4], seen[row + 5], seen[row + 6], seen[row + 20], seen[row - 20]]).toEqual([
      SEEN,
      UNKNOWN,
      UNKNOWN,
      UNKNOWN,
      SEEN,
    ])
  })

  it('leaves no doubt where known ground hides the cell anyway', () => {
    const grid = groundOf(41, 10, (east) => (east === 50 ? Number.NaN : east === 80 ? 30 : 0))
    const seen = viewshed(grid, request(0, 0, 2, flat))
    const row = 20 * 41 + 20
    expect([seen[row + 6], seen[row + 8], seen[row + 9], seen[row + 20]]).toEqual([UNKNOWN, UNKNOWN, HIDDEN, HIDDEN])
  })

  it('beside a line that runs over known cell centres is no matter', () => {
    const grid = groundOf(41, 10, (_, north) => (north === 0 ? 0 : Number.NaN))
    const seen = viewshed(grid, request(-200, 0, 2, flat))
    expect(seen.subarray(20 * 41, 21 * 41).every((told) => told === SEEN)).toBe(true)
  })

  it('is told alike by blocks and by crossings', () => {
    const grid = mountains(150)
    const next = generator(5)
    for (let hole = 0; hole < 12; hole++) {
      const [column, row] = [Math.floor(next() * 130), Math.floor(next() * 130)]
      for (let down = 0; down < 18; down++) {
        const start = (row + down) * 150 + column
        grid.heights.fill(Number.NaN, start, start + Math.ceil(next() * 18))
      }
    }
    const asked = askOver(grid, 15, 25, 40, { targetHeight: 20 })
    const seen = viewshed(grid, asked)
    expect(differing(grid, asked, seen)).toBe(0)
    for (const [cell, told] of seen.entries()) {
      if (told === HIDDEN) continue
      const unknown = Number.isNaN(grid.heights[cell] ?? 0) || passesUnknown(grid, asked, cell)
      expect(told === UNKNOWN, `cell ${cell}`).toBe(unknown)
    }
  })

  it('reaches to an eye that stands outside the grid', () => {
    const grid = groundOf(41, 10, (east) => (east === 0 ? 50 : 0))
    const seen = viewshed(grid, request(-1000, 333, 2, flat))
    const row = 20 * 41 + 20
    expect([seen[row - 5], seen[row + 1], seen[row + 15]]).toEqual([UNKNOWN, HIDDEN, HIDDEN])
  })
})

/** Whether any crossing between the eye (on a cell centre) and a cell has an unknown post with a say in it. */
function passesUnknown(grid: ElevationGrid, asked: ViewshedRequest, cell: number): boolean {
  const [x0, y0] = [(asked.east - grid.west) / grid.cell, (grid.north - asked.north) / grid.cell]
  const [x1, y1] = [cell % grid.columns, Math.floor(cell / grid.columns)]
  const post = (x: number, y: number): boolean => Number.isNaN(grid.heights[y * grid.columns + x] ?? 0)
  const near = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-7
  for (let x = Math.floor(Math.min(x0, x1)) + 1; x < Math.max(x0, x1); x++) {
    const y = y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)
    if (near(y) ? post(x, Math.round(y)) : post(x, Math.floor(y)) || post(x, Math.floor(y) + 1)) return true
  }
  for (let y = Math.floor(Math.min(y0, y1)) + 1; y < Math.max(y0, y1); y++) {
    const x = x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)
    if (near(x) ? post(Math.round(x), y) : post(Math.floor(x), y) || post(Math.floor(x) + 1, y)) return true
  }
  return false
}

describe('in parts', () => {
  const grid = mountains(120)
  const asked = askOver(grid, 12, 34, 1.6)

  it('rows in any order from several states make the whole', () => {
    const shared = new Uint8Array(new SharedArrayBuffer(120 * 120))
    const one = beginViewshed(grid, asked, shared)
    const other = beginViewshed(grid, asked, shared)
    for (let row = 112; row >= 0; row -= 16) viewshedRows(one, row, row + 8)
    for (let row = 8; row < 130; row += 16) viewshedRows(other, row, row + 8)
    expect(Array.from(shared)).toEqual(Array.from(viewshed(grid, asked)))
  })

  it('beyond the radius nothing is told, within it the same', () => {
    const whole = viewshed(grid, asked)
    const near = viewshed(grid, { ...asked, radius: 300 })
    let within = 0
    for (const [cell, told] of near.entries()) {
      const at = pointOf(grid, cell % 120, Math.floor(cell / 120))
      const far = Math.hypot(at.east - 12, at.north - 34) > 300
      expect(told).toBe(far ? UNKNOWN : whole[cell])
      if (!far) within++
    }
    expect(within).toBeGreaterThan(2500)
  })
})
