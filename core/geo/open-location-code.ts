/** Open Location Code (plus codes): the one file that names its library, which comes without types. */
// @ts-expect-error The package has no types; what is used of it is told by Codec below.
import { OpenLocationCode } from 'open-location-code'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type LatLon, latLon, wrapLongitude } from './lat-lon.ts'

interface CodeArea {
  readonly latitudeLo: number
  readonly latitudeHi: number
  readonly longitudeLo: number
  readonly longitudeHi: number
}

interface Codec {
  isFull(code: string): boolean
  isShort(code: string): boolean
  encode(latitude: number, longitude: number, codeLength: number): string
  decode(code: string): CodeArea
  recoverNearest(code: string, latitude: number, longitude: number): string
  shorten(code: string, latitude: number, longitude: number): string
}

const codec: Codec = new (OpenLocationCode as new () => Codec)()

/** Metres of a degree of latitude, good to half a percent: enough to tell how large a square is. */
const METRES_PER_DEGREE = 111_195

/** A tenth of a millimetre in degrees. */
const HAIR = 1e-9

export type CodeKind = 'full' | 'short' | 'none'

export function codeKind(text: string): CodeKind {
  if (codec.isFull(text)) return 'full'
  return codec.isShort(text) ? 'short' : 'none'
}

/** `length` 10 is a square of 14 m, 11 one of about 3 m. */
export function toOpenLocationCode(place: LatLon, length = 11): string {
  // Any nearer to 180, adding 180 rounds to 360 and the library leaves its alphabet.
  const at = { lat: place.lat, lon: Math.min(wrapLongitude(place.lon), 180 - 1e-12) }
  const code = codec.encode(at.lat, at.lon, length)
  if (holds(code, at) || at.lat === 90) return code
  // Floating-point remainders can slip a place on a square's very edge into the wrong one: step a hair inside.
  return codec.encode(Math.min(at.lat + HAIR, 90), at.lon + HAIR, length)
}

function holds(code: string, at: LatLon): boolean {
  const area = codec.decode(code)
  const inLat = at.lat >= area.latitudeLo - HAIR && at.lat <= area.latitudeHi + HAIR
  return inLat && at.lon >= area.longitudeLo - HAIR && at.lon <= area.longitudeHi + HAIR
}

/** Middle of the square of a full code, and its longer side in metres. Throws on any other text: ask codeKind first. */
export function fromOpenLocationCode(code: string): { readonly at: LatLon; readonly side: number } {
  const area = codec.decode(code)
  const lat = (area.latitudeLo + area.latitudeHi) / 2
  const height = (area.latitudeHi - area.latitudeLo) * METRES_PER_DEGREE
  const width =
    (area.longitudeHi - area.longitudeLo) *
    METRES_PER_DEGREE *
    Math.cos(Math.min(90, Math.abs(lat)) * RADIANS_PER_DEGREE)
  const at = latLon(Math.min(lat, 90), (area.longitudeLo + area.longitudeHi) / 2)
  return { at, side: Math.max(height, width) }
}

/** The full code nearest to a reference place that ends like the short one. */
export function recoverCode(short: string, reference: LatLon): string {
  return codec.recoverNearest(short, reference.lat, reference.lon)
}

/** The code without the leading part that a reference nearby makes needless. */
export function shortenCode(code: string, reference: LatLon): string {
  return codec.shorten(code, reference.lat, reference.lon)
}
