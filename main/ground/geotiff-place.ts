/** Owns what a GeoTIFF's tags say of place: in which system it is drawn, and where its pixels lie. */
import { type Bounds, boundsHold, boundsOf, unwrapNear } from '#core/geo/bounds.ts'
import { type LatLon, wrapLongitude } from '#core/geo/lat-lon.ts'
import { geographicName, projectedSystem, type ProjectedSystem } from '#core/geo/projected-system.ts'
import { MEAN_EARTH_RADIUS } from '#core/geo/curvature-and-refraction.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { done, failed, type Result } from '#core/result.ts'
import { type GeoKeys, heightsOf, isUntold } from './geotiff-heights.ts'

export interface GeoTags {
  readonly keys: GeoKeys | null
  readonly scale: readonly number[] | null
  readonly tiepoints: readonly number[] | null
  readonly transformation: readonly number[] | null
  /** GDAL's own word for the unit of heights. */
  readonly unit: string | null
  readonly columns: number
  readonly rows: number
}

/** The pixel at column, row has its centre at x = a column + b row + c, y = d column + e row + f. */
export interface Affine {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

/** Plain facts: they pass from the thread that reads the file to the one that answers. */
export interface GeotiffPlace {
  readonly affine: Affine
  /** Samples of the finest picture. */
  readonly columns: number
  readonly rows: number
  /** The projected system's EPSG number; null for degrees. */
  readonly epsg: number | null
  readonly systemName: string
  readonly metresPerUnit: number
  /** What the heights are above, as a sentence. */
  readonly heights: string
}

export type PlaceReason = 'no-place' | 'unknown-system' | 'unknown-heights'

const GEOGRAPHIC = 2
const PROJECTED = 1
const POINT = 2
const DEGREE = 9102
const METRE = 9001
const WEB_MERCATOR = 3857

export function geotiffPlace(tags: GeoTags, fileName: string): Result<GeotiffPlace, PlaceReason> {
  const { keys } = tags
  const affine = affineOf(tags)
  if (keys === null || affine === null)
    return failed(
      'no-place',
      `${fileName} does not say where it lies: it is a TIFF without a place of its own. Save it again with one, for instance by gdal_translate -a_srs and -a_ullr.`,
    )
  const system = systemOf(keys, fileName)
  if (!system.ok) return system
  const heights = heightsOf(keys, tags.unit, fileName)
  if (!heights.ok) return heights
  const { columns, rows } = tags
  return done({ affine, columns, rows, ...system.value, ...heights.value })
}

function affineOf({ keys, scale, tiepoints, transformation }: GeoTags): Affine | null {
  // A sample that is an area has its centre half a pixel inside; one that is a point lies on the tie itself.
  const half = keys?.GTRasterTypeGeoKey === POINT ? 0 : 0.5
  const corner = transformation === null ? cornerAffine(scale, tiepoints) : matrixAffine(transformation)
  if (corner === null || !(corner.a * corner.e - corner.b * corner.d !== 0)) return null
  const { a, b, c, d, e, f } = corner
  return { a, b, c: c + half * (a + b), d, e, f: f + half * (d + e) }
}

function cornerAffine(scale: readonly number[] | null, tiepoints: readonly number[] | null): Affine | null {
  const [scaleX, scaleY] = scale ?? []
  const [column, row, , x, y] = tiepoints ?? []
  if (scaleX === undefined || scaleY === undefined || tiepoints?.length !== 6) return null
  if (column === undefined || row === undefined || x === undefined || y === undefined) return null
  return { a: scaleX, b: 0, c: x - column * scaleX, d: 0, e: -scaleY, f: y + row * scaleY }
}

function matrixAffine(matrix: readonly number[]): Affine | null {
  const [a, b, , c, d, e, , f] = matrix
  if (a === undefined || b === undefined || c === undefined) return null
  if (d === undefined || e === undefined || f === undefined) return null
  return { a, b, c, d, e, f }
}

function systemOf(
  keys: GeoKeys,
  fileName: string,
): Result<Pick<GeotiffPlace, 'epsg' | 'systemName'>, 'unknown-system'> {
  if (keys.GTModelTypeGeoKey === GEOGRAPHIC) {
    const name = geographicName(keys.GeographicTypeGeoKey ?? 0)
    const degrees = [undefined, DEGREE].includes(keys.GeogAngularUnitsGeoKey)
    if (name !== null && degrees) return done({ epsg: null, systemName: name })
    return unknownSystem(fileName, keys.GeographicTypeGeoKey, keys.GeogCitationGeoKey ?? keys.GTCitationGeoKey)
  }
  if (keys.GTModelTypeGeoKey === PROJECTED) {
    const epsg = keys.ProjectedCSTypeGeoKey ?? 0
    const system = projectedSystem(epsg)
    const metres = [undefined, METRE].includes(keys.ProjLinearUnitsGeoKey)
    if (system !== null && metres) return done({ epsg, systemName: toldName(system) })
    return unknownSystem(fileName, keys.ProjectedCSTypeGeoKey, keys.GTCitationGeoKey ?? keys.PCSCitationGeoKey)
  }
  return unknownSystem(fileName, undefined, keys.GTCitationGeoKey)
}

/** How far off places may be stands beside the name where it is more than the usual metre. */
function toldName({ name, accuracy }: ProjectedSystem): string {
  return accuracy === null ? name : `${name}, whose places are right within about ${accuracy} m`
}

function unknownSystem(
  fileName: string,
  epsg: number | undefined,
  citation: string | undefined,
): Result<never, 'unknown-system'> {
  const number = isUntold(epsg) ? '' : `EPSG:${epsg}`
  const words = (citation ?? '').replaceAll('\0', '').trim().slice(0, 120)
  const name = [words === '' ? '' : `“${words}”`, number].filter((part) => part !== '').join(', ')
  return failed(
    'unknown-system',
    `${fileName} is drawn in ${name === '' ? 'a system it does not name' : `the system ${name}`}, which is not read here. Degrees of WGS 84, UTM zones and some national grids are: save it again, for instance by gdalwarp -t_srs EPSG:4326.`,
  )
}

/** Metres between rows of samples. */
export function resolutionOf({ affine, epsg }: GeotiffPlace, { south, north }: Bounds): number {
  const step = Math.hypot(affine.b, affine.e)
  if (epsg === null) return step * RADIANS_PER_DEGREE * MEAN_EARTH_RADIUS
  // Only Mercator's metres are not the ground's.
  return epsg === WEB_MERCATOR ? step * Math.cos(((south + north) / 2) * RADIANS_PER_DEGREE) : step
}

/** Pixel coordinates of a place, centres at whole numbers. NaN far from the file, where its projection means nothing. */
export function pixelFinder(place: GeotiffPlace, bounds: Bounds): (lat: number, lon: number) => LatticePoint {
  const { a, b, c, d, e, f } = place.affine
  const det = a * e - b * d
  // The middle as the file itself counts, which may run from 0 to 360 or beyond 180.
  const middle = (a * (place.columns - 1) + b * (place.rows - 1)) / 2 + c
  const near = widened(bounds)
  const system = systemOfPlace(place)
  return (lat, lon) => {
    let [x, y] = [unwrapNear(lon, middle), lat]
    if (system !== null) {
      if (!boundsHold(near, { lat, lon })) return { column: Number.NaN, row: Number.NaN }
      const { east, north } = system.toPlane({ lat, lon })
      x = east
      y = north
    }
    return { column: (e * (x - c) - b * (y - f)) / det, row: (a * (y - f) - d * (x - c)) / det }
  }
}

interface LatticePoint {
  readonly column: number
  readonly row: number
}

function systemOfPlace({ epsg }: GeotiffPlace): ProjectedSystem | null {
  return epsg === null ? null : projectedSystem(epsg)
}

/** Degrees: wider than any block of cells between whose corners pixels are read. */
const MARGIN = 3

function widened({ south, north, west, east }: Bounds): Bounds {
  const width = west <= east ? east - west : east + 360 - west
  const [low, high] = [Math.max(-90, south - MARGIN), Math.min(90, north + MARGIN)]
  const sides = MARGIN / Math.max(0.05, Math.cos((Math.max(Math.abs(low), Math.abs(high)) * Math.PI) / 180))
  if (width + 2 * sides >= 360) return { south: low, north: high, west: -180, east: 180 }
  const turned = (lon: number): number => ((((lon + 180) % 360) + 360) % 360) - 180
  return { south: low, north: high, west: turned(west - sides), east: turned(east + sides) }
}

const POINTS_ALONG_EDGE = 16

/** The box around the outermost pixel centres; null when none of them is a place. */
export function geotiffBounds(place: GeotiffPlace): Bounds | null {
  const { columns, rows } = place
  const system = systemOfPlace(place)
  const edge: LatLon[] = []
  for (let step = 0; step <= POINTS_ALONG_EDGE; step++) {
    const [across, down] = [((columns - 1) * step) / POINTS_ALONG_EDGE, ((rows - 1) * step) / POINTS_ALONG_EDGE]
    for (const [column, row] of [
      [across, 0],
      [across, rows - 1],
      [0, down],
      [columns - 1, down],
    ] as const) {
      const at = placeOfPixel(place.affine, system, column, row)
      if (at !== null) edge.push(at)
    }
  }
  if (system !== null) return boundsOf(edge)
  return edge.length === 0 ? null : degreeBounds(edge)
}

/** Degrees need no search for the gap: a file may span more than half the earth. */
function degreeBounds(edge: readonly LatLon[]): Bounds {
  const lats = edge.map(({ lat }) => lat)
  const lons = edge.map(({ lon }) => lon)
  const [west, east] = [Math.min(...lons), Math.max(...lons)]
  const whole = east - west >= 360
  const end = wrapLongitude(east)
  return {
    south: Math.max(-90, Math.min(...lats)),
    north: Math.min(90, Math.max(...lats)),
    west: whole ? -180 : wrapLongitude(west),
    // A file that ends at 180 itself ends there, not where the earth begins again.
    east: whole || (end === -180 && east > west) ? 180 : end,
  }
}

/** Not wrapped for degrees, which may run beyond 180 within a file. */
function placeOfPixel(affine: Affine, system: ProjectedSystem | null, column: number, row: number): LatLon | null {
  const x = affine.a * column + affine.b * row + affine.c
  const y = affine.d * column + affine.e * row + affine.f
  if (system === null) return Math.abs(y) <= 91 && Math.abs(x) <= 540 ? { lat: y, lon: x } : null
  return system.toPlace(x, y)
}
