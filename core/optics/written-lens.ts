/** A lens as photographers write it: 70-200/2.8, 50 1.4, 18–55 mm 1:3.5–5.6, 1,4/50. Reads focal lengths and maximum apertures off one line. */
import { cutShort } from '#core/cut-short.ts'
import { type Result, done, failed } from '#core/result.ts'
import { type FigureReason, parseFigure, plainFigure } from '#core/units/figure.ts'
import { LENS_LIMITS } from './lens.ts'

export interface WrittenLens {
  /** Millimetres, the short end first; twice the same for a prime. */
  readonly focal: readonly [number, number]
  /** F-numbers at the short and at the long end; null where none was written. */
  readonly widest: readonly [number, number] | null
}

export type WrittenLensReason = FigureReason | 'no-focal-length' | 'two-readings' | 'prime-with-two' | 'out-of-range'

/** Nothing longer than this is a lens that somebody meant. */
const LONGEST = 80
/** Without a sign beside it a larger number is taken for no f-number: lenses that open less wide than this are hardly made. */
const PLAIN_MOST = 11
/** An f-number may stand first without a sign where the other number is so many times larger: 1.4/50, but not 8 16. */
const PLAIN_RATIO = 4

/** Millimetres: a smaller number alone, without mm, is likelier an aperture whose focal length was forgotten. */
const BARE_LEAST = 3

const EXAMPLE = 'such as 70-200/2.8 or 50/1.4'

const SIGNS = [
  ['figure', /^[.,]?\d+(?:[.,]\d+)*/u],
  ['mm', /^(?:mm|millimet(?:re|er)s?)(?![a-z])/u],
  // f/2.8 and 1:2.8 can mean nothing but an opening; f 50 mm and f=50 mm stand on old lenses for the focal length.
  ['opening', /^f\s*[/:]/u],
  ['f', /^f\s*=?/u],
  ['to', /^(?:-|to(?![a-z]))/u],
  ['between', /^[/,;@]/u],
] as const

type Sign = (typeof SIGNS)[number][0]

interface Token {
  readonly sign: Sign
  readonly text: string
}

/** One or two numbers that belong together, and what the signs beside them say they are. */
interface Group {
  readonly numbers: readonly number[]
  readonly is: 'focal' | 'opening' | null
}

type Read<Value> = Result<Value, WrittenLensReason>

function unreadable(text: string): Read<never> {
  return failed(
    'unreadable',
    `"${cutShort(text)}" cannot be read as a lens. Write focal length and maximum aperture, ${EXAMPLE}.`,
  )
}

function plainLens(text: string): string {
  return plainFigure(text).toLowerCase().replaceAll('ƒ', 'f').replace(/[⁄∕]/gu, '/').replaceAll('∶', ':')
}

/** The text cut into signs; null where something in it is none. */
function tokensOf(plain: string): Token[] | null {
  const tokens: Token[] = []
  let rest = plain
  while (rest !== '') {
    const ratio = /^1\s*:/u.exec(rest)
    const [sign, cut] = ratio === null ? firstSign(rest) : (['opening', ratio[0]] as const)
    if (sign === null) return null
    tokens.push({ sign, text: cut })
    rest = rest.slice(cut.length).trimStart()
  }
  return tokens
}

function firstSign(rest: string): readonly [Sign, string] | readonly [null, ''] {
  for (const [sign, pattern] of SIGNS) {
    const cut = pattern.exec(rest)
    if (cut !== null) return [sign, cut[0]]
  }
  return [null, '']
}

/** Takes groups off the front of the tokens until none is left. */
function groupsOf(tokens: readonly Token[], plain: string): Read<Group[]> {
  const groups: Group[] = []
  let at = 0
  const next = (...signs: Sign[]): Token | null => {
    const token = tokens[at]
    if (token === undefined || !signs.includes(token.sign)) return null
    at += 1
    return token
  }
  while (at < tokens.length) {
    if (groups.length > 0) next('between')
    const numbers: number[] = []
    const seen = new Set<Sign>()
    do {
      const before = next('opening', 'f')
      const figure = next('figure')
      if (figure === null) return unreadable(plain)
      const read = parseFigure(figure.text)
      if (!read.ok) return read.fault.reason === 'ambiguous' ? read : unreadable(plain)
      numbers.push(read.value)
      const after = next('mm')
      for (const token of [before, after]) if (token !== null) seen.add(token.sign)
    } while (numbers.length < 2 && next('to') !== null)
    if (seen.has('mm') && seen.has('opening')) return unreadable(plain)
    groups.push({ numbers, is: seen.has('mm') ? 'focal' : seen.size > 0 ? 'opening' : null })
  }
  return done(groups)
}

/** Whether two groups without a sign can be a focal length and a maximum aperture; `ratio` is how far apart they must lie. */
function canBe(focal: Group, widest: Group, ratio: number): boolean {
  const most = Math.max(...widest.numbers)
  return most <= PLAIN_MOST && Math.min(...focal.numbers) >= most * ratio
}

/** Which of the groups is the focal length, which the maximum aperture. */
function partsOf(groups: readonly Group[], plain: string): Read<{ focal: Group; widest: Group | null }> {
  const [one, other, ...more] = groups
  if (one === undefined || more.length > 0) return unreadable(plain)
  if (other === undefined) {
    const bare = one.is === null && Math.max(...one.numbers) < BARE_LEAST
    if (one.is !== 'opening' && !bare) return done({ focal: one, widest: null })
    return failed('no-focal-length', `The focal length is missing. Write it beside the maximum aperture, ${EXAMPLE}.`)
  }
  if (one.is !== null && one.is === other.is) return unreadable(plain)
  if (one.is === 'focal' || other.is === 'opening') return done({ focal: one, widest: other })
  if (one.is === 'opening' || other.is === 'focal') return done({ focal: other, widest: one })
  if (canBe(one, other, 1)) return done({ focal: one, widest: other })
  if (canBe(other, one, PLAIN_RATIO)) return done({ focal: other, widest: one })
  return failed(
    'two-readings',
    `In "${plain}" it is not clear which is the focal length and which the aperture. Write a zoom with a dash and the aperture after f/, such as 16-35 f/4.`,
  )
}

/** The two numbers in order: a zoom opens wider at its short end, or alike at both. */
function inOrder({ numbers }: Group): readonly [number, number] {
  return [Math.min(...numbers), Math.max(...numbers)]
}

function outside(
  what: string,
  [least, most]: readonly [number, number],
  limits: (typeof LENS_LIMITS)[keyof typeof LENS_LIMITS],
): string | null {
  if (least >= limits.least && most <= limits.most) return null
  return `${what} must lie between ${limits.least} and ${limits.most}; this has ${least < limits.least ? least : most}.`
}

/** What a line says of a lens. The order of two ends, and of focal length and aperture, does not matter where it is clear. */
export function readLens(text: string): Read<WrittenLens> {
  const plain = plainLens(text)
  if (plain === '') return failed('empty', `Nothing was typed. Write what is on the lens, ${EXAMPLE}.`)
  const tokens = plain.length > LONGEST ? null : tokensOf(plain)
  if (tokens === null) return unreadable(plain)
  const groups = groupsOf(tokens, plain)
  if (!groups.ok) return groups
  const parts = partsOf(groups.value, plain)
  if (!parts.ok) return parts
  const focal = inOrder(parts.value.focal)
  const widest = parts.value.widest === null ? null : inOrder(parts.value.widest)
  const fault =
    outside('A focal length in mm', focal, LENS_LIMITS.focal) ??
    (widest === null ? null : outside('An f-number', widest, LENS_LIMITS.fNumber))
  if (fault !== null) return failed('out-of-range', fault)
  if (widest !== null && focal[0] === focal[1] && widest[0] !== widest[1]) {
    return failed(
      'prime-with-two',
      'A prime has one maximum aperture. Write one, such as 50/1.4, or both ends of a zoom, such as 70-300/4-5.6.',
    )
  }
  return done({ focal, widest })
}
