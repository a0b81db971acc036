/** Reads a place typed or pasted in any usual form: degrees, UTM, MGRS, Open Location Code, geo URI. */
import { type Result, done, failed } from '#core/result.ts'
import { readDegrees } from './degree-text.ts'
import { isGeoUri, parseGeoUri } from './geo-uri.ts'
import { readMgrs, readUtm } from './grid-text.ts'
import type { LatLon } from './lat-lon.ts'
import { codeKind, fromOpenLocationCode, recoverCode } from './open-location-code.ts'
import { isLink, placeInLink, pointOfText, withoutDatum } from './pasted-place.ts'
import { plainCharacters } from './typed-characters.ts'

export const COORDINATE_FORMS = ['decimal', 'dms', 'utm', 'mgrs', 'olc', 'geo-uri'] as const
export type CoordinateForm = (typeof COORDINATE_FORMS)[number]

export interface CoordinatesRead {
  readonly at: LatLon
  readonly form: CoordinateForm
  /** Side in metres of the square that the text names and whose middle `at` is; null when it names a point. */
  readonly square: number | null
  /** The other reading when the order of the two numbers is a guess: for a swap button; null otherwise. */
  readonly swapped: LatLon | null
}

export type CoordinateReason =
  | 'empty'
  | 'unreadable'
  | 'ambiguous'
  | 'out-of-range'
  | 'sign-against-letter'
  | 'no-such-zone'
  | 'short-code'

export type CoordinateResult = Result<CoordinatesRead, CoordinateReason>

/** Nothing longer than this is a coordinate. */
const LONGEST = 200
const LONGEST_LINK = 4_000

/** `reference` is a place nearby (such as the middle of the map) that completes short codes. */
export function parseCoordinates(text: string, reference: LatLon | null = null): CoordinateResult {
  if (isLink(text) && text.length <= LONGEST_LINK) return readLink(text)
  if (text.length > LONGEST) {
    return failed('unreadable', 'That is too long for coordinates. Paste only the coordinates.')
  }
  const point = pointOfText(text)
  if (point !== null) return done({ at: point, form: 'decimal', square: null, swapped: null })
  const plain = withoutDatum(plainCharacters(text))
  if (plain === '') return failed('empty', 'Nothing was typed. Type coordinates, such as 46.4030, -33.5945.')
  if (isGeoUri(plain)) return readGeo(plain)
  const grid = readGrid(plain)
  if (grid !== null) return grid
  const code = readCode(plain, reference)
  if (code !== null) return code
  const degrees = readDegrees(plain)
  return degrees.ok ? done({ ...degrees.value, square: null }) : degrees
}

function readLink(text: string): CoordinateResult {
  const at = placeInLink(text)
  return at === null
    ? failed(
        'unreadable',
        'This link names no coordinates. Open it, copy the coordinates of the place and paste those.',
      )
    : done({ at, form: 'decimal', square: null, swapped: null })
}

function readGeo(plain: string): CoordinateResult {
  const uri = parseGeoUri(plain)
  return uri.ok ? done({ at: uri.value.at, form: 'geo-uri', square: null, swapped: null }) : uri
}

function readGrid(plain: string): CoordinateResult | null {
  const mgrs = readMgrs(plain)
  if (mgrs !== null) return mgrs.ok ? done({ ...mgrs.value, form: 'mgrs', swapped: null }) : mgrs
  const utm = readUtm(plain)
  if (utm === null) return null
  return utm.ok ? done({ ...utm.value, form: 'utm', swapped: null }) : utm
}

const SHORT_CODE =
  'is a short code, which is meant near some town. Write the full code, with eight characters before the +.'

/** Null when the text is no Open Location Code at all. A place name after a short code does not make it whole here. */
function readCode(plain: string, reference: LatLon | null): CoordinateResult | null {
  const [first = '', ...rest] = plain.split(' ')
  // A code is told by its plus and by at least one letter or six figures: +48.8 +2.3 is none.
  if (!/^[2-9CFGHJMPQRVWX]{2,8}0{0,6}\+[2-9CFGHJMPQRVWX]*$/iu.test(first)) return null
  const kind = codeKind(first)
  if (kind === 'full' && rest.length === 0) return middleOf(first)
  if (kind !== 'short')
    return failed('unreadable', `"${plain}" is not a valid Open Location Code. Compare it with its source.`)
  if (reference === null || rest.length > 0) return failed('short-code', `"${plain}" ${SHORT_CODE}`)
  return middleOf(recoverCode(first, reference))
}

function middleOf(code: string): CoordinateResult {
  const { at, side } = fromOpenLocationCode(code)
  return done({ at, form: 'olc', square: side, swapped: null })
}
