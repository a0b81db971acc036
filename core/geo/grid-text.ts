/** Reads UTM and MGRS references as people write them. */
import { type Result, done, failed } from '#core/result.ts'
import { bandLatitudes, fromMgrs, fromUtm, isGridZone } from './grid-reference.ts'
import type { LatLon } from './lat-lon.ts'

export type GridReason = 'unreadable' | 'ambiguous' | 'out-of-range' | 'no-such-zone'

type GridResult = Result<{ readonly at: LatLon; readonly square: number | null }, GridReason>

const MGRS = /^(?:mgrs|usng)?\s*:?\s*(\d{1,2}\s*[a-z]\s*[a-z]{2}\s*\d*\s*\d*)$/iu
const POLAR = /^[abyz]\s*[a-z]{2}\s*(?:\d+\s*\d+)?$/iu
const UTM = /^(?:utm)?\s*:?\s*(?:zone)?\s*(\d{1,2})\s*(north|south|[a-z])?\s*[:,;]?\s+(.+)$/iu
const FIGURES = /^e?\s*(\d+(?:[.,]\d+)?)\s*(?:m\s*)?e?\s*[/,;]?\s+n?\s*(\d+(?:[.,]\d+)?)\s*(?:m\s*)?n?$/iu

const UTM_EXAMPLE = 'Write the zone, then easting and northing in metres, such as 25 North 454299 5138993.'

/** Null when the text is no MGRS reference at all. */
export function readMgrs(plain: string): GridResult | null {
  if (POLAR.test(plain)) {
    return failed(
      'out-of-range',
      `"${plain}" lies in the polar grid beyond 84 N or 80 S, which is not read here. Use degrees.`,
    )
  }
  const reference = MGRS.exec(plain)?.[1]?.replace(/\s/gu, '').toUpperCase()
  if (reference === undefined) return null
  const zone = Number.parseInt(reference, 10)
  const digits = reference.replace(/^\d+[A-Z]+/u, '').length
  if (!isGridZone(zone, reference.replace(/^\d+/u, '').charAt(0))) return noSuchZone(reference)
  if (digits % 2 === 1 || digits > 10) {
    return failed(
      'unreadable',
      `"${plain}" has ${digits} figures. A grid reference has 0, 2, 4, 6, 8 or 10 after its letters.`,
    )
  }
  const square = fromMgrs(reference)
  if (square === null) {
    return failed('unreadable', `There is no grid square "${reference}". Check the letters; I and O are never used.`)
  }
  return done({ at: square.at, square: square.side })
}

function noSuchZone(text: string): GridResult {
  return failed(
    'no-such-zone',
    `There is no zone for "${text}". Zones run from 1 to 60; 32X, 34X and 36X do not exist.`,
  )
}

/**
 * Null when the text is no UTM reference at all. The zone needs its hemisphere, in one of these spellings: the word North or
 * South; N (both the hemisphere and the northern band N); a latitude band letter; or S, which is the south unless the
 * northing also fits band S (32 to 40 degrees north), in which case it is ambiguous and refused.
 */
export function readUtm(plain: string): GridResult | null {
  const match = UTM.exec(plain)
  const figures = FIGURES.exec(match?.[3] ?? '')
  if (match === null || figures === null) return null
  const [easting, northing] = [metres(figures[1]), metres(figures[2])]
  const letter = (match[2] ?? '').toUpperCase()
  // Without a zone letter only figures of a grid's size are UTM; anything smaller may be degrees.
  if (letter === '' && (easting < 1000 || northing < 1000)) return null
  // "51 N 0 7" and the like are degrees: no easting of a zone is that small.
  if (easting < 1000) return null
  const zone = Number(match[1])
  if (!isGridZone(zone, letter)) return noSuchZone(match[1] + letter)
  if (letter === '')
    return failed('ambiguous', `"${plain}" does not say which hemisphere. Write ${zone} North or ${zone} South.`)
  if (easting < 100_000 || easting >= 1_000_000 || northing > 10_000_000) {
    return failed(
      'out-of-range',
      `Easting ${easting} or northing ${northing} lies outside zone ${zone}. ${UTM_EXAMPLE}`,
    )
  }
  return hemispheres(zone, letter, easting, northing)
}

function metres(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'))
}

function hemispheres(zone: number, letter: string, easting: number, northing: number): GridResult {
  const north = fromUtm({ zone, hemisphere: 'North', easting, northing })
  const south = fromUtm({ zone, hemisphere: 'South', easting, northing })
  const place = letter === 'S' ? southOrBandS(north, south) : placeByLetter(letter, north, south)
  if (place === 'ambiguous') {
    return failed(
      'ambiguous',
      `The S of zone ${zone}S can be the south or band S in the north. Write ${zone} North or ${zone} South.`,
    )
  }
  if (place === null || place.lat > 84.5 || place.lat < -80.5) {
    return failed(
      'out-of-range',
      `Northing ${northing} does not lie in ${zone}${letter}. Check the zone's letter and the northing.`,
    )
  }
  return done({ at: place, square: null })
}

function southOrBandS(north: LatLon, south: LatLon): LatLon | 'ambiguous' {
  const fitsBandS = north.lat >= 32 && north.lat <= 40
  return fitsBandS ? (south.lat < -80 ? north : 'ambiguous') : south
}

function placeByLetter(letter: string, north: LatLon, south: LatLon): LatLon | null {
  if (letter === 'NORTH' || letter === 'N') return north
  if (letter === 'SOUTH') return south
  const band = bandLatitudes(letter)
  if (band === null) return null
  const place = letter < 'N' ? south : north
  return place.lat >= band[0] - 0.5 && place.lat <= band[1] + 0.5 ? place : null
}
