/** Open Location Code (plus codes): written, read, shortened and made whole, all in whole numbers as its specification asks. */
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type LatLon, latLon, wrapLongitude } from './lat-lon.ts'

/** Digits by their value, 0..19 (specification, section "Digits"). */
const DIGITS = '23456789CFGHJMPQRVWX'
const BASE = 20
/** Digits before the plus. */
const BEFORE_PLUS = 8
/** So many digits come in pairs, latitude first; each one beyond is a field of 5 rows by 4 columns. */
const PAIRED = 10
const LONGEST = 15
const ROWS = 5
const COLUMNS = 4

/** Smallest steps of a degree: of the fifteenth digit, 1 / 2.5e7 of latitude and 1 / 8.192e6 of longitude. */
const LAT_STEPS = 8000 * ROWS ** (LONGEST - PAIRED)
const LON_STEPS = 8000 * COLUMNS ** (LONGEST - PAIRED)
const LAT_ALL = 180 * LAT_STEPS
const LON_ALL = 360 * LON_STEPS

/** Of a step: what a number with fifteen figures may be off when it is multiplied out; 4 nm on the ground. */
const NOISE = 1e-6

/** Metres of a degree of latitude, good to half a percent: enough to tell how large a square is. */
const METRES_PER_DEGREE = 111_195

/** A code's area: its south-west corner in steps from the south pole and from 180 west, and its sides in steps. */
interface Area {
  readonly south: number
  readonly west: number
  readonly high: number
  readonly wide: number
}

export type CodeKind = 'full' | 'short' | 'none'

export function codeKind(text: string): CodeKind {
  const match = /^([2-9CFGHJMPQRVWX]*)(0*)\+([2-9CFGHJMPQRVWX]*)$/iu.exec(text)
  const [, before = '', padding = '', after = ''] = match ?? []
  const plusAt = before.length + padding.length
  const odd = plusAt % 2 === 1 || padding.length % 2 === 1 || after.length === 1
  if (match === null || odd || plusAt > BEFORE_PLUS || plusAt + after.length === 0) return 'none'
  // Padding stands for digits left out at the end: only in a full code that ends with the plus, and never for all of them.
  if (padding !== '' && (plusAt < BEFORE_PLUS || before === '' || after !== '')) return 'none'
  if (plusAt < BEFORE_PLUS) return 'short'
  const [lat = '', lon = ''] = before.toUpperCase()
  return DIGITS.indexOf(lat) * BASE < 180 && DIGITS.indexOf(lon) * BASE < 360 ? 'full' : 'none'
}

/** Whole steps in a number of degrees, downward; 3.033 degrees are what their decimals say, not a hair less as a binary fraction. */
function wholeSteps(degrees: number, steps: number): number {
  const value = degrees * steps
  const nearest = Math.round(value)
  return Math.abs(value - nearest) < NOISE ? nearest : Math.floor(value)
}

function inSteps(at: LatLon): { readonly north: number; readonly east: number } {
  const north = wholeSteps(at.lat, LAT_STEPS) + LAT_ALL / 2
  const east = wholeSteps(wrapLongitude(at.lon), LON_STEPS) + LON_ALL / 2
  return { north: Math.min(LAT_ALL - 1, Math.max(0, north)), east: wrapped(east) }
}

function wrapped(east: number): number {
  return ((east % LON_ALL) + LON_ALL) % LON_ALL
}

function codeOf(north: number, east: number, length: number): string {
  let [lat, lon] = [north, east]
  let code = ''
  for (let digit = LONGEST; digit > PAIRED; digit--) {
    code = `${DIGITS.charAt((lat % ROWS) * COLUMNS + (lon % COLUMNS))}${code}`
    lat = Math.floor(lat / ROWS)
    lon = Math.floor(lon / COLUMNS)
  }
  for (let pair = 0; pair < PAIRED / 2; pair++) {
    code = `${DIGITS.charAt(lat % BASE)}${DIGITS.charAt(lon % BASE)}${code}`
    lat = Math.floor(lat / BASE)
    lon = Math.floor(lon / BASE)
  }
  const kept = code.slice(0, length).padEnd(BEFORE_PLUS, '0')
  return `${kept.slice(0, BEFORE_PLUS)}+${kept.slice(BEFORE_PLUS)}`
}

/** `length` 10 is a square of 14 m, 11 one of about 3 m; 2, 4, 6, 8 or 10..15. */
export function toOpenLocationCode(place: LatLon, length = 11): string {
  const { north, east } = inSteps(place)
  return codeOf(north, east, Math.min(length, LONGEST))
}

/** The digits of a code, without plus and padding; those beyond the fifteenth mean nothing. */
function digitsOf(code: string): string {
  return code.toUpperCase().replace(/[+0]/gu, '').slice(0, LONGEST)
}

function areaOf(digits: string): Area {
  let [south, west] = [0, 0]
  let [high, wide] = [400 * LAT_STEPS, 400 * LON_STEPS]
  for (let index = 0; index < digits.length; index++) {
    const value = DIGITS.indexOf(digits.charAt(index))
    if (index >= PAIRED) {
      high /= ROWS
      wide /= COLUMNS
      south += Math.floor(value / COLUMNS) * high
      west += (value % COLUMNS) * wide
    } else if (index % 2 === 0) {
      high /= BASE
      south += value * high
    } else {
      wide /= BASE
      west += value * wide
    }
  }
  return { south, west, high, wide }
}

function fullArea(code: string): Area {
  if (codeKind(code) !== 'full') throw new RangeError(`no full Open Location Code: ${code}`)
  return areaOf(digitsOf(code))
}

function middleOf({ south, west, high, wide }: Area): LatLon {
  return {
    lat: (2 * south + high - LAT_ALL) / (2 * LAT_STEPS),
    lon: (2 * west + wide - LON_ALL) / (2 * LON_STEPS),
  }
}

/** Middle of the square of a full code, and its longer side in metres. Throws on any other text: ask codeKind first. */
export function fromOpenLocationCode(code: string): { readonly at: LatLon; readonly side: number } {
  const area = fullArea(code)
  const { lat, lon } = middleOf(area)
  const height = (area.high / LAT_STEPS) * METRES_PER_DEGREE
  const width = (area.wide / LON_STEPS) * METRES_PER_DEGREE * Math.cos(lat * RADIANS_PER_DEGREE)
  return { at: latLon(lat, lon), side: Math.max(height, width) }
}

/** The full code nearest to a reference place that ends like the short one; a full code is itself. Throws on any other text. */
export function recoverCode(short: string, reference: LatLon): string {
  const kind = codeKind(short)
  if (kind === 'full') return short.toUpperCase()
  if (kind === 'none') throw new RangeError(`no Open Location Code: ${short}`)
  const { north, east } = inSteps(reference)
  const missing = BEFORE_PLUS - short.indexOf('+')
  const digits = digitsOf(codeOf(north, east, LONGEST).slice(0, missing) + short)
  const area = areaOf(digits)
  // The code means one place in each square of the digits that were left out: perhaps a neighbour's is nearer.
  const [row, column] = [LAT_STEPS, LON_STEPS].map((steps) => 400 * steps * BASE ** (-missing / 2)) as [number, number]
  const below = 2 * area.south + area.high - 2 * north
  const left = 2 * area.west + area.wide - 2 * east
  let { south, west } = area
  if (below > row && south >= row) south -= row
  else if (below < -row && south + row < LAT_ALL) south += row
  if (left > column) west -= column
  else if (left < -column) west += column
  return codeOf(south, wrapped(west), digits.length)
}

/** Share of a square's side within which a reference must lie: 0.5 would do, less is on the safe side (as in the published examples). */
const WITHIN = 0.3

/** The code without the leading part that a reference nearby makes needless. */
export function shortenCode(code: string, reference: LatLon): string {
  const middle = middleOf(fullArea(code))
  const off = Math.max(Math.abs(middle.lat - reference.lat), Math.abs(wrapLongitude(middle.lon - reference.lon)))
  if (code.includes('0')) return code.toUpperCase()
  for (const dropped of [8, 6, 4]) {
    if (off < WITHIN * 400 * BASE ** (-dropped / 2)) return code.toUpperCase().slice(dropped)
  }
  return code.toUpperCase()
}
