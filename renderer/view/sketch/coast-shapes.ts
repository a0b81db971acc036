/** Land and country borders of the world in world coordinates, whole across the antimeridian. */
import { feature, mesh } from 'topojson-client'
import type { GeometryCollection, Topology } from 'topojson-specification'
import { worldBoxAround, type WorldBox, worldX, worldY } from './world.ts'

export interface CoastPiece {
  readonly box: WorldBox
  /** x, y, x, y. */
  readonly points: Float64Array
}

export interface CoastData {
  /** Areas, each as its rings; the box is the outer ring's. */
  readonly land: readonly { readonly box: WorldBox; readonly rings: readonly Float64Array[] }[]
  readonly shores: readonly CoastPiece[]
  readonly borders: readonly CoastPiece[]
}

type Pairs = readonly (readonly number[])[]

/**
 * A line in world coordinates without jumps: where it crosses the antimeridian it runs on beyond 0 or 1. The data holds
 * its areas whole, as they lie on the globe.
 */
export function unwrapped(line: Pairs): Float64Array {
  const points = new Float64Array(line.length * 2)
  let turn = 0
  for (const [place, [lon = 0, lat = 0]] of line.entries()) {
    const before = line[place - 1]?.[0] ?? lon
    if (lon - before > 180) turn--
    else if (before - lon > 180) turn++
    points[place * 2] = worldX(lon) + turn
    points[place * 2 + 1] = worldY(lat)
  }
  return points
}

/** A ring around the pole does not meet its own start: it is closed along the map's southern edge. */
export function closedAtPole(ring: Float64Array): Float64Array {
  const [startX = 0, endX = 0] = [ring[0], ring.at(-2)]
  if (Math.abs(endX - startX) < 0.5) return ring
  const closed = new Float64Array(ring.length + 4)
  closed.set(ring)
  closed.set([endX, 1, startX, 1], ring.length)
  return closed
}

function piece(points: Float64Array): CoastPiece {
  return { box: worldBoxAround(points), points }
}

/** Reads a topology of countries. */
export function readCoastShapes(topology: Topology): CoastData {
  const land = topology.objects['land']
  const countries = topology.objects['countries'] as GeometryCollection | undefined
  if (land === undefined || countries === undefined) throw new Error('the coast file has no land or no countries')
  const whole = feature(topology, land as GeometryCollection)
  const areas = whole.features.flatMap(({ geometry }) =>
    geometry.type === 'MultiPolygon' ? geometry.coordinates : geometry.type === 'Polygon' ? [geometry.coordinates] : [],
  )
  return {
    land: areas.map((area) => {
      const rings = area.map((ring) => closedAtPole(unwrapped(ring)))
      return { box: worldBoxAround(rings[0] ?? new Float64Array(0)), rings }
    }),
    shores: areas.flat().map((ring) => piece(unwrapped(ring))),
    borders: mesh(topology, countries, (first, second) => first !== second).coordinates.map((line) =>
      piece(unwrapped(line)),
    ),
  }
}
