/** Writes a place in each of the forms that coordinate-text.ts reads. */
import { exhaustive } from '#core/exhaustive.ts'
import type { CoordinateForm } from './coordinate-text.ts'
import { formatGeoUri } from './geo-uri.ts'
import { toMgrs, toUtm } from './grid-reference.ts'
import type { LatLon } from './lat-lon.ts'
import { toOpenLocationCode } from './open-location-code.ts'
import { plainDecimal } from './plain-decimal.ts'

/** Six decimals are 11 cm. */
export function formatDecimal(at: LatLon, decimals = 6): string {
  return `${plainDecimal(at.lat, decimals)}, ${plainDecimal(at.lon, decimals)}`
}

/** One decimal of a second is 3 m, three are 3 cm. */
export function formatDms(at: LatLon, decimals = 1): string {
  return `${angle(at.lat, decimals, 'N', 'S')} ${angle(at.lon, decimals, 'E', 'W')}`
}

/** Rounds the whole angle first, so that 60 seconds never appear: they are carried. */
function angle(value: number, decimals: number, positive: string, negative: string): string {
  const units = 10 ** decimals
  const rounded = Math.round(Math.abs(value) * 3600 * units)
  const letter = value < 0 && rounded > 0 ? negative : positive
  const wholeMinutes = Math.floor(rounded / (60 * units))
  const seconds = (rounded - wholeMinutes * 60 * units) / units
  const width = decimals > 0 ? 3 + decimals : 2
  const [degrees, minutes] = [Math.floor(wholeMinutes / 60), wholeMinutes % 60]
  return `${degrees}°${String(minutes).padStart(2, '0')}′${seconds.toFixed(decimals).padStart(width, '0')}″${letter}`
}

/** Zone, hemisphere as a word (the letter S would be ambiguous), easting and northing, rounded; null near the poles. */
export function formatUtm(at: LatLon, decimals = 0): string | null {
  const place = toUtm(at)
  if (place === null) return null
  const figures = `${plainDecimal(place.easting, decimals)} ${plainDecimal(place.northing, decimals)}`
  return `${place.zone} ${place.hemisphere} ${figures}`
}

/** The square that holds the place, truncated as the grid demands; null ("no MGRS here") near the poles. */
export function formatMgrs(at: LatLon, digits = 5): string | null {
  return toMgrs(at, digits)
}

/** Every form at its usual precision; null where a form has no words for the place. */
export function formatCoordinates(at: LatLon, form: CoordinateForm): string | null {
  switch (form) {
    case 'decimal':
      return formatDecimal(at)
    case 'dms':
      return formatDms(at)
    case 'utm':
      return formatUtm(at)
    case 'mgrs':
      return formatMgrs(at)
    case 'olc':
      return toOpenLocationCode(at)
    case 'geo-uri':
      return formatGeoUri(at)
    default:
      return exhaustive(form)
  }
}
