/** The `geo:` URI of RFC 5870: a place, written latitude first, read and written. */
import { type Result, done, failed } from '#core/result.ts'
import { plainDecimal } from './plain-decimal.ts'
import { type LatLon, latLon } from './lat-lon.ts'

export interface GeoUri {
  readonly at: LatLon
  /** Metres, third coordinate; null when not given. */
  readonly altitude: number | null
  /** Metres, the parameter u; null when not given. */
  readonly uncertainty: number | null
}

const COORDINATES = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,(-?\d+(?:\.\d+)?))?$/u

export function isGeoUri(text: string): boolean {
  return /^\s*geo:/iu.test(text)
}

export function parseGeoUri(text: string): Result<GeoUri, 'unreadable' | 'out-of-range'> {
  // Many programs put the zoom of their map behind it, which is not of the standard and says nothing of the place.
  const [coordinates = '', ...parameters] = text
    .trim()
    .slice('geo:'.length)
    .replace(/\?z=\d+(?:\.\d+)?$/iu, '')
    .split(';')
  const match = COORDINATES.exec(coordinates)
  if (match === null) {
    return failed(
      'unreadable',
      `"${text}" is not a geo URI. It must look like geo:46.4030,-33.5945 with nothing after it but ;u=.`,
    )
  }
  const [lat, lon] = [Number(match[1]), Number(match[2])]
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180) {
    return failed('out-of-range', `geo:${coordinates} lies outside latitude 90 or longitude 180. Latitude comes first.`)
  }
  const named = new Map(parameters.map((parameter) => nameAndValue(parameter)))
  const system = named.get('crs')
  if (system !== undefined && system.toLowerCase() !== 'wgs84') {
    return failed('unreadable', `The geo URI names the reference system "${system}"; only wgs84 can be read here.`)
  }
  const uncertainty = named.get('u')
  if (uncertainty !== undefined && !/^\d+(?:\.\d+)?$/u.test(uncertainty)) {
    return failed(
      'unreadable',
      `The uncertainty "${uncertainty}" in the geo URI is not a number. Remove ;u= or give metres.`,
    )
  }
  return done({
    at: pole(latLon(lat + 0, lon + 0)),
    altitude: match[3] === undefined ? null : Number(match[3]),
    uncertainty: uncertainty === undefined ? null : Number(uncertainty),
  })
}

function nameAndValue(parameter: string): readonly [string, string] {
  const equals = parameter.indexOf('=')
  return equals === -1
    ? [parameter.toLowerCase(), '']
    : [parameter.slice(0, equals).toLowerCase(), parameter.slice(equals + 1)]
}

/** At a pole all longitudes are one place; the RFC asks for 0 (section 3.4.2). */
function pole(at: LatLon): LatLon {
  return Math.abs(at.lat) === 90 ? { lat: at.lat, lon: 0 } : at
}

/** Seven decimals are a centimetre; there is never an exponent nor a negative zero, and no needless zeros. */
export function formatGeoUri(at: LatLon, decimals = 7): string {
  const { lat, lon } = pole(at)
  return `geo:${short(lat, decimals)},${short(lon, decimals)}`
}

function short(value: number, decimals: number): string {
  const written = plainDecimal(value, decimals)
  return written.includes('.') ? written.replace(/\.?0+$/u, '') : written
}
