/** Trees and walls in viewsheds, held cell by cell against the line of sight to each. */
import { describe, expect, test } from 'vitest'
import { type GridPoint, elevationAt, placeOnGrid } from '#core/ground/elevation-grid.ts'
import type { Obstruction } from '#core/ground/obstruction.ts'
import { sightline } from '#core/ground/sightline.ts'
import { beginViewshed, viewshed, viewshedRows } from '#core/ground/viewshed.ts'
import { HIDDEN, SEEN, UNKNOWN, type ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import { generator } from '#test/help/generator.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const REFRACTION = 0.13

function askOn(
  grid: ReturnType<typeof mountains>,
  { east, north }: GridPoint,
  parts: Partial<ViewshedRequest>,
): ViewshedRequest {
  const height = (elevationAt(grid, east, north) ?? 0) + 2
  return { east, north, height, targetHeight: 1.5, refraction: REFRACTION, radius: null, ...parts }
}

describe('among mountains', () => {
  const grid = mountains(141, 25, 5)
  const random = generator(3)
  const somewhere = (reach: number): GridPoint => ({ east: reach * (random() - 0.5), north: reach * (random() - 0.5) })

  test('every cell is hidden just when its own line of sight is, by ground or by obstruction', () => {
    let byObstruction = 0
    for (let round = 0; round < 4; round++) {
      const stand = somewhere(1200)
      const obstructions: Obstruction[] = Array.from({ length: 3 }, () => {
        const start = { east: stand.east + somewhere(500).east, north: stand.north + somewhere(500).north }
        const next = { east: start.east + somewhere(500).east, north: start.north + somewhere(500).north }
        const last = { east: next.east + somewhere(200).east, north: next.north + somewhere(200).north }
        return {
          line: [start, next, last].map(({ east, north }) => placeOnGrid(grid, east, north)),
          height: 40 * random(),
        }
      })
      const request = askOn(grid, stand, { obstructions })
      const eye = { ...stand, elevation: request.height }
      const [found, bare] = [viewshed(grid, request), viewshed(grid, { ...request, obstructions: [] })]
      for (let row = 0; row < grid.rows; row += 1) {
        for (let column = row % 3; column < grid.columns; column += 3) {
          const index = row * grid.columns + column
          const point = { east: grid.west + column * grid.cell, north: grid.north - row * grid.cell }
          const top = (grid.heights[index] ?? 0) + request.targetHeight
          const sight = sightline(grid, eye, { ...point, low: top, high: top }, REFRACTION, obstructions)
          // A line that touches the ground within rounding is no matter of obstructions.
          if (Math.abs(sight.toLow?.clearance ?? 1) < 1e-5) continue
          expect(found[index], `${column} ${row}`).toBe(sight.visibleShare === 0 ? HIDDEN : SEEN)
          if (found[index] === HIDDEN && bare[index] === SEEN) byObstruction++
          if (bare[index] === HIDDEN) expect(found[index]).toBe(HIDDEN)
        }
      }
    }
    expect(byObstruction).toBeGreaterThan(300)
  })

  test('filled in parts it is the same', () => {
    const stand = { east: 100, north: -50 }
    const line = [placeOnGrid(grid, 150, -150), placeOnGrid(grid, 160, 100)]
    const request = askOn(grid, stand, { obstructions: [{ line, height: 25 }] })
    const state = beginViewshed(grid, request)
    for (const from of [70, 0, 35, 105]) viewshedRows(state, from, from + 36)
    expect(state.seen).toEqual(viewshed(grid, request))
  })
})

describe('on level ground', () => {
  const grid = groundOf(101, 10, () => 50)
  const stand = { east: 0, north: 0 }
  const wall = (height: number, ...corners: readonly (readonly [number, number])[]): Obstruction => ({
    line: corners.map(([east, north]) => placeOnGrid(grid, east, north)),
    height,
  })
  const at = (found: Uint8Array, east: number, north: number): number =>
    found[((500 - north) / 10) * 101 + (east + 500) / 10] ?? -1

  test.each([
    ['north', [-40, 103], [40, 103], [0, 300], [0, -300]],
    ['east', [103, -40], [103, 40], [300, 0], [-300, 0]],
    ['south', [-40, -103], [40, -103], [0, -300], [0, 300]],
    ['west', [-103, 40], [-103, -40], [-300, 0], [300, 0]],
  ] as const)('a wall to the %s hides what is behind it and nothing else', (_, one, other, behind, opposite) => {
    const found = viewshed(grid, askOn(grid, stand, { obstructions: [wall(6, one, other)] }))
    expect(at(found, behind[0], behind[1])).toBe(HIDDEN)
    expect(at(found, opposite[0], opposite[1])).toBe(SEEN)
    expect(at(found, 0, 0)).toBe(SEEN)
    // A low one is looked over.
    expect(at(viewshed(grid, askOn(grid, stand, { obstructions: [wall(1, one, other)] })), behind[0], behind[1])).toBe(
      SEEN,
    )
  })

  test('a ring around the eye hides all beyond it, and a preview says so too', () => {
    const ring = wall(9, [-55, -55], [55, -55], [55, 55], [-55, 55], [-55, -55])
    const request = askOn(grid, stand, { obstructions: [ring] })
    for (const found of [viewshed(grid, request), viewshedPreview(grid, request)]) {
      for (let north = -500; north <= 500; north += 10) {
        for (let east = -500; east <= 500; east += 10)
          expect(at(found, east, north)).toBe(Math.max(Math.abs(east), Math.abs(north)) > 55 ? HIDDEN : SEEN)
      }
    }
  })

  test('beyond the radius nothing is told, and over unknown ground it is unknown', () => {
    const obstructions = [wall(9, [-40, 103], [40, 103])]
    expect(at(viewshed(grid, askOn(grid, stand, { obstructions, radius: 200 })), 0, 300)).toBe(UNKNOWN)
    const holed = groundOf(101, 10, (_, north) => (north > 80 && north < 130 ? Number.NaN : 50))
    expect(at(viewshed(holed, askOn(holed, stand, { obstructions })), 0, 300)).toBe(UNKNOWN)
  })
})
