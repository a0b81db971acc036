/** Lengths in the units people measure with: conversions, and reading what they type, feet and inches included. */
import { type Result, done, failed } from '#core/result.ts'
import { type FigureReason, parseFigure, plainFigure } from './figure.ts'

export const METRES_PER_FOOT = 0.3048
export const METRES_PER_INCH = 0.0254
export const METRES_PER_MILE = 1609.344
const METRES_PER_YARD = 0.9144

export type UnitSystem = 'metric' | 'imperial'

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/(?:km|kilomet(?:re|er)s?)$/iu, 1000],
  [/(?:cm|centimet(?:re|er)s?)$/iu, 0.01],
  [/(?:mm|millimet(?:re|er)s?)$/iu, 0.001],
  [/(?:m|met(?:re|er)s?)$/iu, 1],
  [/(?:mi|miles?)$/iu, METRES_PER_MILE],
  [/(?:yd|yards?)$/iu, METRES_PER_YARD],
  [/(?:ft|foot|feet|')$/iu, METRES_PER_FOOT],
  [/(?:in|inch|inches|")$/iu, METRES_PER_INCH],
]

/** Odd primes and quotes as plain ones; two single primes are the sign of the inch. Before NFKC, which splits them. */
function plainPrimes(text: string): string {
  const primes = text.replace(/[″“”„‟ʺ˝〃＂]/gu, '"').replace(/[′‘’‚‛ʹʼ´`＇]/gu, "'")
  return plainFigure(primes.replace(/''/gu, '"'))
}

const FEET_AND_INCHES = /^(.*?)\s*(?:ft|foot|feet|')\s*(.+?)\s*(?:in|inch|inches|")?$/iu

/** Metres. A bare number is in metres, or in feet where the units are imperial. */
export function parseLength(text: string, units: UnitSystem): Result<number, FigureReason> {
  const plain = plainPrimes(text)
  const pair = FEET_AND_INCHES.exec(plain)
  if (pair !== null) return feetAndInches(pair[1] ?? '', pair[2] ?? '')
  for (const [ending, metres] of UNITS) {
    if (ending.test(plain)) return scaled(plain.replace(ending, ''), metres)
  }
  return scaled(plain, units === 'imperial' ? METRES_PER_FOOT : 1)
}

function scaled(text: string, metres: number): Result<number, FigureReason> {
  const figure = parseFigure(text)
  return figure.ok ? done(figure.value * metres) : figure
}

function feetAndInches(feetText: string, inchText: string): Result<number, FigureReason> {
  const feet = parseFigure(feetText)
  if (!feet.ok) return feet
  const inches = parseFigure(inchText)
  if (!inches.ok) return inches
  if (inches.value < 0 || inches.value >= 12) {
    return failed('unreadable', `${inches.value} inches beside feet: write 0 to 11.9 inches, such as 5 ft 3 in.`)
  }
  const sign = feetText.trim().startsWith('-') ? -1 : 1
  return done(sign * (Math.abs(feet.value) * METRES_PER_FOOT + inches.value * METRES_PER_INCH))
}
