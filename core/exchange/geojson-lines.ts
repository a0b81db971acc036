/** The bare reading of a GeoJSON text (RFC 7946): every line and outline in it as places, or what is wrong with it. */
import { cutShort } from '#core/cut-short.ts'
import { type LatLon, latLon } from '#core/geo/lat-lon.ts'
import { type Result, done, failed } from '#core/result.ts'
import type { DrawnForm } from '#core/record/stopping-ground.ts'
import { parsedJson } from '#core/parsed-json.ts'

export interface FoundLine {
  readonly name: string
  readonly form: DrawnForm
  readonly points: readonly LatLon[]
  /** Holes of an area, which are not read. */
  readonly holes: number
}

export interface FoundLines {
  readonly lines: readonly FoundLine[]
  /** How many points stood alone, and how many features had no place. */
  readonly points: number
  readonly empty: number
}

export type GeojsonReason = 'not-json' | 'not-geojson' | 'other-system' | 'swapped' | 'out-of-range'

/** Letters of a name, so that a number fits behind them where a field takes 200. */
const NAME_MOST = 190
/** Collections within collections, deeper than any program writes them. */
const DEEPEST = 20

type Fault = Extract<Result<never, GeojsonReason>, { ok: false }>

interface Gathering {
  readonly lines: FoundLine[]
  points: number
  empty: number
}

type Members = Readonly<Record<string, unknown>>

function isMembers(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function shown(value: unknown): string {
  return cutShort(typeof value === 'string' ? value : (JSON.stringify(value) ?? 'nothing'))
}

function notGeojson(what: string): Fault {
  return failed('not-geojson', `${what} Save it as GeoJSON from the program it comes from.`)
}

export function gatherLines(text: string): Result<FoundLines, GeojsonReason> {
  const value = parsedJson(text.replace(/^\u{feff}/u, ''))
  if (value === undefined)
    return failed(
      'not-json',
      'This file is not GeoJSON: perhaps it is cut short, or another kind of file. Choose a GeoJSON file.',
    )
  if (!isMembers(value) || typeof value['type'] !== 'string') return notGeojson('This file is not GeoJSON.')
  const found: Gathering = { lines: [], points: 0, empty: 0 }
  const fault = gather(value, '', found, 0)
  return fault ?? done(found)
}

function gather(value: unknown, name: string, found: Gathering, depth: number): Fault | null {
  if (!isMembers(value) || depth > DEEPEST) return notGeojson('This file is not GeoJSON.')
  const system = otherSystem(value['crs'])
  if (system !== null) {
    return failed('other-system', `Its coordinates are in ${system}. Save it in WGS 84, longitude and latitude.`)
  }
  const { type } = value
  if (type === 'FeatureCollection') return gatherAll(value['features'], name, found, depth)
  if (type === 'GeometryCollection') return gatherAll(value['geometries'], name, found, depth)
  if (type === 'Feature') {
    if (value['geometry'] === null || value['geometry'] === undefined) {
      found.empty += 1
      return null
    }
    return gather(value['geometry'], nameOf(value['properties']), found, depth + 1)
  }
  return gatherGeometry(type, value['coordinates'], name, found)
}

function gatherAll(list: unknown, name: string, found: Gathering, depth: number): Fault | null {
  if (!Array.isArray(list)) return notGeojson('This file is not GeoJSON.')
  for (const part of list) {
    const fault = gather(part, name, found, depth + 1)
    if (fault !== null) return fault
  }
  return null
}

function nameOf(properties: unknown): string {
  const name = isMembers(properties) ? properties['name'] : null
  if (typeof name !== 'string') return ''
  // A character of two halves is not cut in two.
  return name
    .replaceAll(/\p{Cc}+/gu, ' ')
    .trim()
    .slice(0, NAME_MOST)
    .replace(/\p{Cs}$/u, '')
}

/** The name of a system other than longitude and latitude on WGS 84; null when that is what is meant, or nothing is said. */
function otherSystem(crs: unknown): string | null {
  if (crs === undefined || crs === null) return null
  const properties = isMembers(crs) ? crs['properties'] : null
  const name = isMembers(properties) ? properties['name'] : null
  if (typeof name !== 'string') return 'a system that is not named in the file itself'
  return /(?:^|[:/])(?:CRS84|4326)$/iu.test(name.trim()) ? null : `“${shown(name)}”`
}

function gatherGeometry(type: unknown, coordinates: unknown, name: string, found: Gathering): Fault | null {
  if (type === 'Point' || type === 'MultiPoint') {
    found.points += type === 'Point' || !Array.isArray(coordinates) ? 1 : coordinates.length
    return null
  }
  const parts = partsOf(type, coordinates)
  if (parts === null) return notGeojson(`“${shown(type)}” is not a type of GeoJSON.`)
  const { list, area } = parts
  if (!Array.isArray(list)) return notGeojson(`A ${shown(type)} in it has no coordinates.`)
  if (list.length === 0) found.empty += 1
  for (const [index, part] of list.entries()) {
    const [line, holes] = area && Array.isArray(part) ? [part[0] ?? [], Math.max(0, part.length - 1)] : [part, 0]
    const read = readPositions(line)
    if (!read.ok) return read
    if (read.value.length === 0) found.empty += 1
    else {
      const numbered = list.length > 1 && name !== '' ? `${name} ${index + 1}` : name
      found.lines.push({ name: numbered, form: area ? 'area' : 'line', points: read.value, holes })
    }
  }
  return null
}

/** The lines, or the areas with their rings, of a geometry; null for an unknown one. */
function partsOf(type: unknown, coordinates: unknown): { list: unknown; area: boolean } | null {
  const alone = Array.isArray(coordinates) && coordinates.length > 0 ? [coordinates] : coordinates
  if (type === 'LineString') return { list: alone, area: false }
  if (type === 'MultiLineString') return { list: coordinates, area: false }
  if (type === 'Polygon') return { list: alone, area: true }
  return type === 'MultiPolygon' ? { list: coordinates, area: true } : null
}

function readPositions(line: unknown): Result<LatLon[], GeojsonReason> {
  if (!Array.isArray(line)) return notGeojson('The coordinates of a line in it are not a list.')
  const places: LatLon[] = []
  for (const position of line) {
    const [lon, lat] = Array.isArray(position) ? (position as readonly unknown[]) : []
    if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat)) {
      return notGeojson(`A position in it is ${shown(position)}: two numbers are needed.`)
    }
    const fault = outOfRange(lon, lat)
    if (fault !== null) return fault
    places.push(latLon(lat, lon))
  }
  return done(places)
}

/** Longitudes of one turn more, such as 190, are read: shapes across the antimeridian are often written so. */
function outOfRange(lon: number, lat: number): Fault | null {
  if (Math.abs(lat) <= 90 && Math.abs(lon) <= 360) return null
  const pair = `${lon}, ${lat}`
  if (Math.abs(lon) <= 90 && Math.abs(lat) <= 360) {
    return failed(
      'swapped',
      `A position in it is ${pair}: as longitude, latitude that is not on the earth. Save it with longitude first.`,
    )
  }
  return failed(
    'out-of-range',
    `A position in it is ${pair}: not degrees, perhaps metres of a map. Save it in WGS 84, longitude and latitude.`,
  )
}
