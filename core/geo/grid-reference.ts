/** UTM and MGRS: the one file that names mgrs, and with `projected-system.ts` one of two that name proj4. */
import * as mgrsModule from 'mgrs'
import proj4, { type Converter } from 'proj4'
import { type LatLon, latLon, wrapLongitude } from './lat-lon.ts'

/**
 * mgrs is CommonJS without detectable names for Node (only a default), and a module with names but no default for a bundler:
 * this takes whichever there is.
 */
const mgrs = (Reflect.get(mgrsModule, 'default') ?? mgrsModule) as typeof mgrsModule

export interface UtmPlace {
  /** 1..60. */
  readonly zone: number
  readonly hemisphere: 'North' | 'South'
  /** Metres, 500 000 on the zone's middle meridian. */
  readonly easting: number
  /** Metres from the equator; plus 10 000 000 in the south. */
  readonly northing: number
}

/** Nearer to 180 than this, adding 180 rounds to 360 and libraries come to a 61st zone. A tenth of a micrometre. */
const EASTERNMOST = 180 - 1e-12
/** On 84 itself mgrs forgets Svalbard's exceptions and names zones that do not exist. */
const NORTHERNMOST = 84 - 1e-12

export const BAND_LETTERS = 'CDEFGHJKLMNPQRSTUVWX'

/** UTM and MGRS end here; beyond lies the polar system, which this program does not write. */
export function hasGrid(at: LatLon): boolean {
  return at.lat >= -80 && at.lat <= 84
}

/** The zone that maps print, with the exceptions of south-west Norway and Svalbard; null beyond 84 north and 80 south. */
export function utmZone(at: LatLon): number | null {
  if (!hasGrid(at)) return null
  const lon = wrapLongitude(at.lon)
  if (at.lat >= 56 && at.lat < 64 && lon >= 3 && lon < 12) return 32
  if (at.lat >= 72 && lon >= 0 && lon < 42) return [31, 33, 35, 37][Math.floor((lon + 3) / 12)] ?? null
  return Math.min(60, Math.floor((lon + 180) / 6) + 1)
}

/** Southern and northern end of a band in degrees. */
export function bandLatitudes(letter: string): readonly [number, number] | null {
  const at = BAND_LETTERS.indexOf(letter)
  return at === -1 ? null : [-80 + 8 * at, letter === 'X' ? 84 : -72 + 8 * at]
}

/** The place in its own zone, or in the one that is asked for; null beyond 84 north and 80 south. */
export function toUtm(at: LatLon, zone: number | null = utmZone(at)): UtmPlace | null {
  if (zone === null || !hasGrid(at)) return null
  const hemisphere = at.lat < 0 ? 'South' : 'North'
  const [easting, northing] = projection(zone, hemisphere).forward([at.lon, at.lat])
  return { zone, hemisphere, easting, northing }
}

export function fromUtm(place: UtmPlace): LatLon {
  const [lon, lat] = projection(place.zone, place.hemisphere).inverse([place.easting, place.northing])
  return latLon(lat, lon)
}

const projections = new Map<string, Converter>()

/** Reading a definition costs more than using it, and there are 120 at most. */
function projection(zone: number, hemisphere: 'North' | 'South'): Converter {
  const definition = `+proj=utm +zone=${zone}${hemisphere === 'South' ? ' +south' : ''} +datum=WGS84 +units=m +no_defs`
  const known = projections.get(definition) ?? proj4(definition)
  projections.set(definition, known)
  return known
}

/** Digits 5 is a square of 1 m, 0 one of 100 km. The reference names the square that holds the place: it never rounds. */
export function toMgrs(at: LatLon, digits = 5): string | null {
  if (!hasGrid(at)) return null
  return mgrs.forward([Math.min(wrapLongitude(at.lon), EASTERNMOST), Math.min(at.lat, NORTHERNMOST)], digits)
}

/** Middle of the square and its side in metres; null when there is no such square. `reference` has no blanks. */
export function fromMgrs(reference: string): { readonly at: LatLon; readonly side: number } | null {
  const parts = /^(\d{1,2})([C-HJ-NP-X])[A-HJ-NP-Z][A-HJ-NP-V]((?:\d\d){0,5})$/iu.exec(reference)
  const zone = Number(parts?.[1])
  const band = (parts?.[2] ?? '').toUpperCase()
  if (parts === null || !isGridZone(zone, band)) return null
  const [lon, lat] = mgrs.toPoint(reference.toUpperCase())
  // A square may stick out of its band, but by no more than its own size.
  const reach = bandLatitudes(band)
  if (reach === null || !Number.isFinite(lat + lon) || lat < reach[0] - 1 || lat > reach[1] + 1) return null
  return { at: latLon(lat, lon), side: 10 ** (5 - (parts[3] ?? '').length / 2) }
}

/** 1..60; in band X the zones 32, 34 and 36 do not exist. */
export function isGridZone(zone: number, band: string | null): boolean {
  if (!Number.isInteger(zone) || zone < 1 || zone > 60) return false
  return band !== 'X' || ![32, 34, 36].includes(zone)
}
