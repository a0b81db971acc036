/** Boxes of places, across the antimeridian too. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boundsCentre, boundsHold, boundsOf, boundsWidth, edgePlaces, unwrapNear } from '#core/geo/bounds.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { latLon, wrapLongitude } from '#core/geo/lat-lon.ts'
import { tileAt, tileBounds } from '#core/geo/web-mercator.ts'

const anywhere = fc
  .tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
  .map(([lat, lon]) => latLon(lat, lon))

describe('the box of places', () => {
  it('crosses the antimeridian the short way (RFC 7946, section 5.2)', () => {
    const box = boundsOf([
      { lat: -17, lon: 179.9 },
      { lat: -17, lon: -179.9 },
    ])
    expect(box).toEqual({ south: -17, north: -17, west: 179.9, east: -179.9 })
    if (box === null) throw new Error('no box')
    expect(boundsCentre(box)).toEqual({ lat: -17, lon: -180 })
    expect(geodesicDistance({ lat: -17, lon: box.west }, { lat: -17, lon: box.east }) / 1000).toBeCloseTo(21.3, 1)
  })

  // RFC 7946 section 5.2: the Fiji archipelago spans 5 degrees.
  it('spans Fiji in 5 degrees', () => {
    const box = { west: 177, south: -20, east: -178, north: -16 }
    expect(boundsWidth(box)).toBe(5)
    expect(boundsCentre(box).lon).toBe(179.5)
    expect(boundsHold(box, { lat: -18, lon: 180 })).toBe(true)
    expect(boundsHold(box, { lat: -18, lon: 0 })).toBe(false)
  })

  it('is null for no place and has no width for one', () => {
    expect(boundsOf([])).toBeNull()
    expect(boundsOf([{ lat: 5, lon: 6 }])).toEqual({ south: 5, north: 5, west: 6, east: 6 })
  })

  it('is plain where nothing crosses', () => {
    expect(
      boundsOf([
        { lat: 1, lon: -5 },
        { lat: 3, lon: 7 },
        { lat: 2, lon: 0 },
      ]),
    ).toEqual({ south: 1, north: 3, west: -5, east: 7 })
  })

  it('holds every one of its places and is at most a turn less the widest gap', () => {
    fc.assert(
      fc.property(fc.array(anywhere, { minLength: 1, maxLength: 20 }), (places) => {
        const box = boundsOf(places)
        if (box === null) throw new Error('no box')
        for (const place of places) expect(boundsHold(box, place)).toBe(true)
        expect(boundsWidth(box)).toBeLessThanOrEqual(360 - 360 / places.length + 1e-9)
      }),
      { numRuns: 500, seed: 20_260_621 },
    )
  })
})

describe('a longitude near another', () => {
  it.each([
    [-179.9, 179.9, 180.1],
    [179.9, -179.9, -180.1],
    [10, 20, 10],
    [10, 730, 730],
    [-179.9, 540, 540.1],
    [0, 0, 0],
  ])('%d seen from %d is %d', (lon, reference, expected) => {
    if (reference === 730) expect(unwrapNear(lon, reference)).toBeCloseTo(730, 9)
    else expect(unwrapNear(lon, reference)).toBeCloseTo(expected, 9)
  })
})

describe('tiles', () => {
  it('hold the place they were found for, at every zoom', () => {
    fc.assert(
      fc.property(anywhere, fc.integer({ min: 0, max: 22 }), (at, zoom) => {
        const tile = tileAt(at, zoom)
        const box = tileBounds(tile)
        const hair = 1e-9
        expect(tile.x >= 0 && tile.x < 2 ** zoom && tile.y >= 0 && tile.y < 2 ** zoom).toBe(true)
        expect(at.lon).toBeGreaterThanOrEqual(box.west - hair)
        expect(at.lon).toBeLessThanOrEqual(box.east + hair)
        if (Math.abs(at.lat) > 85) return
        expect(at.lat).toBeGreaterThanOrEqual(box.south - hair)
        expect(at.lat).toBeLessThanOrEqual(box.north + hair)
      }),
      { numRuns: 1000, seed: 20_260_622 },
    )
  })
})

describe('the edge of a box', () => {
  it('is its corners and places between them, all on its sides, also across the antimeridian', () => {
    fc.assert(
      fc.property(fc.array(anywhere, { minLength: 2, maxLength: 6 }), (places) => {
        const box = boundsOf(places)
        if (box === null) throw new Error('no box')
        const edge = edgePlaces(box)
        expect(edge).toHaveLength(32)
        const [west, width] = [box.west, boundsWidth(box)]
        for (const { lat, lon } of edge) {
          const fromWest = Math.abs(wrapLongitude(lon - west))
          const fromEast = Math.abs(wrapLongitude(lon - west - width))
          expect(Math.min(lat - box.south, box.north - lat, fromWest, fromEast)).toBeLessThan(1e-9)
        }
        const lats = edge.map(({ lat }) => lat)
        expect(Math.min(...lats)).toBeCloseTo(box.south, 9)
        expect(Math.max(...lats)).toBeCloseTo(box.north, 9)
      }),
    )
  })
})
