/** Land and country borders of the world, fetched once when first wanted, in world coordinates. */
import { feature, mesh } from 'topojson-client'
import type { GeometryCollection, Topology } from 'topojson-specification'
import atlasUrl from 'world-atlas/countries-50m.json?url'
import { boxAround, type Box, worldX, worldY } from './world.ts'

export const COAST_ATTRIBUTION = 'Coast and borders: Natural Earth (public domain)'

export interface CoastPiece {
  readonly box: Box
  /** x, y, x, y. */
  readonly points: Float64Array
}

export interface CoastData {
  /** Areas, each as its rings; the box is the outer ring's. */
  readonly land: readonly { readonly box: Box; readonly rings: readonly Float64Array[] }[]
  /** Shores without the seams along the antimeridian and the pole. */
  readonly shores: readonly CoastPiece[]
  readonly borders: readonly CoastPiece[]
}

type Pairs = readonly (readonly number[])[]

function flat(line: Pairs): Float64Array {
  const points = new Float64Array(line.length * 2)
  line.forEach(([lon = 0, lat = 0], place) => {
    points[place * 2] = worldX(lon)
    points[place * 2 + 1] = worldY(lat)
  })
  return points
}

/** Where the data cuts land along the edge of the world there is no shore. */
function isSeam([lon = 0, lat = 0]: readonly number[], [nextLon = 0, nextLat = 0]: readonly number[]): boolean {
  const along = Math.abs(lon) > 179.99 && Math.abs(nextLon) > 179.99
  return along || (lat < -89.9 && nextLat < -89.9)
}

/** The line without its seams. */
export function withoutSeams(line: Pairs): Pairs[] {
  const pieces: (readonly number[])[][] = [[]]
  for (const [place, pair] of line.entries()) {
    const before = line[place - 1]
    if (before !== undefined && isSeam(before, pair)) pieces.push([])
    pieces.at(-1)?.push(pair)
  }
  return pieces.filter((piece) => piece.length > 1)
}

function pieces(lines: readonly Pairs[]): CoastPiece[] {
  return lines.flatMap(withoutSeams).map((line) => {
    const points = flat(line)
    return { box: boxAround(points), points }
  })
}

/** Reads a topology of countries. */
export function readCoast(topology: Topology): CoastData {
  const land = topology.objects['land']
  const countries = topology.objects['countries'] as GeometryCollection | undefined
  if (land === undefined || countries === undefined) throw new Error('the coast file has no land or no countries')
  const whole = feature(topology, land as GeometryCollection)
  const areas = whole.features.flatMap(({ geometry }) =>
    geometry.type === 'MultiPolygon' ? geometry.coordinates : geometry.type === 'Polygon' ? [geometry.coordinates] : [],
  )
  return {
    land: areas.map((rings) => {
      const flatRings = rings.map(flat)
      return { box: boxAround(flatRings[0] ?? new Float64Array(0)), rings: flatRings }
    }),
    shores: pieces(areas.flat()),
    borders: pieces(mesh(topology, countries, (first, second) => first !== second).coordinates),
  }
}

let loading: Promise<CoastData> | null = null

async function load(): Promise<CoastData> {
  const response = await fetch(atlasUrl)
  if (!response.ok) throw new Error(`the coast map is missing: ${atlasUrl} answered ${response.status}`)
  return readCoast((await response.json()) as Topology)
}

/** The coast; a failed attempt is forgotten, so that the next one tries again. */
export function loadCoast(): Promise<CoastData> {
  loading ??= load().catch((cause: unknown) => {
    loading = null
    throw cause
  })
  return loading
}
