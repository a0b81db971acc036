/** Reads a latitude and a longitude written in degrees: decimal, degrees-minutes, degrees-minutes-seconds, in any usual spelling. */
import { type Result, done, failed } from '#core/result.ts'
import { type DegreeToken, readAngle } from './degree-angle.ts'
import type { LatLon } from './lat-lon.ts'
import { degreeSigns } from './typed-characters.ts'

export type DegreeReason = 'unreadable' | 'ambiguous' | 'out-of-range' | 'sign-against-letter'

export interface DegreesRead {
  readonly at: LatLon
  readonly form: 'decimal' | 'dms'
  readonly swapped: LatLon | null
}

type Axis = 'lat' | 'lon'

const EXAMPLE = 'Write latitude and longitude, such as 46.4030, -33.5945 or 46°24\'10.7"N 33°35\'40.3"W.'

/**
 * `plain` comes from plainCharacters. Latitude is first (ISO 6709) unless letters or words say otherwise.
 * A comma may be a decimal sign or a separator: both readings are tried, and when they can't be told apart it says so.
 */
export function readDegrees(plain: string): Result<DegreesRead, DegreeReason> {
  const text = degreeSigns(plain).replace(/\/$/u, '').trim()
  if (/^-?\d+,\d+$/u.test(text)) {
    return failed(
      'ambiguous',
      `"${plain}" can be one number with a decimal comma or two whole numbers. ` +
        'Write both numbers with a space or a semicolon between them, such as 51,5; 0,12.',
    )
  }
  if (/\d - \d/u.test(text)) {
    return failed(
      'ambiguous',
      `The dash in "${plain}" can be a minus or a mere dash. Write -0.12 for a minus, or a semicolon.`,
    )
  }
  if (/\d[^a-z]*\bO\b/iu.test(text)) {
    return failed('ambiguous', `The O in "${plain}" is east in German and west in French and Spanish. Write E or W.`)
  }
  const readings = commaReadings(text).map((reading) => readPlainDegrees(reading, plain))
  const good = readings.filter((reading) => reading.ok)
  const [first, second] = good
  if (first === undefined) return mostTelling(readings)
  if (second !== undefined && !samePlace(first.value.at, second.value.at)) {
    return failed(
      'ambiguous',
      `The comma in "${plain}" can be read in two ways. Put a semicolon between the two numbers.`,
    )
  }
  return first
}

function samePlace(one: LatLon, other: LatLon): boolean {
  return one.lat === other.lat && one.lon === other.lon
}

/** Of several failed readings, the one that got furthest: a number out of range tells more than "unreadable". */
function mostTelling(readings: readonly Result<DegreesRead, DegreeReason>[]): Result<DegreesRead, DegreeReason> {
  const faults = readings.filter((reading) => !reading.ok)
  const telling = faults.find((reading) => reading.fault.reason !== 'unreadable') ?? faults[0]
  return telling ?? failed('unreadable', EXAMPLE)
}

/** The text with commas turned into decimal points, and with its one comma turned into a separator. */
function commaReadings(text: string): string[] {
  if (!text.includes(',')) return [text]
  const loose = text.replace(/,(?!\d)|(?<!\d),/gu, ';')
  if (!loose.includes(',')) return [loose]
  const separated = text.split(',').length === 2 ? [text.replace(',', ';')] : []
  // A point anywhere is the decimal sign, so every comma separates.
  if (text.includes('.')) return separated
  return [loose.replaceAll(',', '.'), ...separated]
}

/** `typed` is what it is read of, before words became signs: a fault quotes that. */
function readPlainDegrees(text: string, typed: string): Result<DegreesRead, DegreeReason> {
  const tokens = tokenise(text)
  if (tokens === null) return failed('unreadable', `"${typed}" is not a coordinate. ${EXAMPLE}`)
  const halves = splitHalves(tokens)
  if (!halves.ok) return halves
  const [one, other] = halves.value
  const first = readAngle(one)
  if (!first.ok) return first
  const second = readAngle(other)
  if (!second.ok) return second
  const byCount = first.value.unmarked && second.value.unmarked && first.value.axis === null
  if (byCount && first.value.parts !== second.value.parts) {
    return failed('unreadable', `The two halves of "${text}" differ in their number of figures. ${EXAMPLE}`)
  }
  const form = first.value.parts === 1 && second.value.parts === 1 ? 'decimal' : 'dms'
  return place(first.value, second.value, form)
}

function place(
  first: { readonly value: number; readonly axis: Axis | null },
  second: { readonly value: number; readonly axis: Axis | null },
  form: 'decimal' | 'dms',
): Result<DegreesRead, DegreeReason> {
  if ((first.axis === null) !== (second.axis === null)) {
    return failed('ambiguous', 'Only one of the two numbers has a letter. Give both (N or S, and E or W) or none.')
  }
  if (first.axis !== null && first.axis === second.axis) {
    return failed('unreadable', `Both numbers are ${first.axis === 'lat' ? 'latitudes' : 'longitudes'}. ${EXAMPLE}`)
  }
  const [lat, lon] = first.axis === 'lon' ? [second.value, first.value] : [first.value, second.value]
  const fault = rangeFault(lat, lon, first.axis === null)
  if (fault !== null) return failed('out-of-range', fault)
  const guessed = first.axis === null && Math.abs(lon) <= 90 && lat !== lon
  return done({ at: { lat, lon: onMeridian(lon) }, form, swapped: guessed ? { lat: lon, lon: onMeridian(lat) } : null })
}

/** +180 and -180 are one meridian; zero has no sign. */
function onMeridian(lon: number): number {
  return lon === 180 ? -180 : lon + 0
}

function rangeFault(lat: number, lon: number, guessedOrder: boolean): string | null {
  if (Math.abs(lat) > 90) {
    const turned = guessedOrder && Math.abs(lon) <= 90 && Math.abs(lat) <= 180
    const hint = turned
      ? ` If the longitude was written first, write ${lon}, ${lat}.`
      : ' Check the first number; latitude comes first.'
    return `Latitude ${lat} is beyond 90 degrees.${hint}`
  }
  if (Math.abs(lon) > 180) return `Longitude ${lon} is beyond 180 degrees. Write it from -180 to 180.`
  return null
}

const TOKEN = /\s*(\d+(?:\.\d*)?|\.\d+|[°'"NSEWnsew;|/φλ+-])/uy

/** Null when any character is left over that means nothing in a coordinate. */
function tokenise(text: string): DegreeToken[] | null {
  const tokens: DegreeToken[] = []
  TOKEN.lastIndex = 0
  let glued = false
  while (TOKEN.lastIndex < text.length) {
    const match = TOKEN.exec(text)
    const found = match?.[1]
    if (match === null || found === undefined) return null
    const whole = tokens.at(-1)
    if (found === '-' && match[0] === '-' && whole?.kind === 'number' && !whole.decimal && glueAfter(text)) {
      // 51-30-00N: a hyphen tight between whole numbers joins degrees, minutes and seconds.
      glued = true
      continue
    }
    tokens.push(token(found, glued))
    glued = false
  }
  return tokens
}

function glueAfter(text: string): boolean {
  return /\d/u.test(text.charAt(TOKEN.lastIndex))
}

function token(found: string, glued: boolean): DegreeToken {
  if (/[\d.]/u.test(found)) return { kind: 'number', value: Number(found), decimal: found.includes('.'), glued }
  if (/[°'"]/u.test(found)) return { kind: 'mark', mark: found as '°' | "'" | '"' }
  if (/[+-]/u.test(found)) return { kind: 'sign', negative: found === '-' }
  if (/[;|/]/u.test(found)) return { kind: 'separator' }
  if (found === 'φ' || found === 'λ') return { kind: 'axis', axis: found === 'φ' ? 'lat' : 'lon' }
  return { kind: 'letter', letter: found.toUpperCase() as 'N' | 'S' | 'E' | 'W' }
}

/** Where the second coordinate begins: told by a separator, letters, words, degree signs, signs, or an even count. */
function splitHalves(all: readonly DegreeToken[]): Result<readonly [DegreeToken[], DegreeToken[]], DegreeReason> {
  const tokens = [...all]
  while (tokens.at(-1)?.kind === 'separator') tokens.pop()
  const separators = tokens.filter((each) => each.kind === 'separator').length
  const at = separators === 1 ? tokens.findIndex((each) => each.kind === 'separator') : secondStart(tokens)
  const figures = tokens.filter((each) => each.kind === 'number').length
  const second = separators === 1 ? (at ?? 0) + 1 : (at ?? 0)
  if (separators > 1 || at === null || at <= 0 || second >= tokens.length) {
    return failed('unreadable', `A latitude and a longitude are needed; figures found: ${figures}. ${EXAMPLE}`)
  }
  return done([tokens.slice(0, at), tokens.slice(second)] as const)
}

function secondStart(tokens: readonly DegreeToken[]): number | null {
  const all = (kind: DegreeToken['kind']): number[] => tokens.flatMap((each, at) => (each.kind === kind ? [at] : []))
  const words = all('axis')
  if (words.length === 2) return words[1] ?? null
  const letters = all('letter')
  if (letters.length === 2) return letters[0] === 0 ? (letters[1] ?? null) : (letters[0] ?? 0) + 1
  const degreeMarks = tokens.flatMap((each, at) => (each.kind === 'mark' && each.mark === '°' ? [at] : []))
  const signs = all('sign')
  const laterSign = signs.find((at) => at > 0)
  if (laterSign !== undefined) return laterSign
  if (degreeMarks.length === 2) return (degreeMarks[1] ?? 0) - 1
  const numbers = all('number')
  const middle = numbers.length % 2 === 0 && numbers.length <= 6 ? numbers[numbers.length / 2] : undefined
  const second = middle === undefined ? undefined : tokens[middle]
  return second?.kind === 'number' && !second.glued ? (middle ?? null) : null
}
