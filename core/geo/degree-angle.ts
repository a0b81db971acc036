/** Turns the figures, marks, sign and letter of one coordinate into one angle in degrees. */
import { type Result, done, failed } from '#core/result.ts'

export type DegreeToken =
  | { readonly kind: 'number'; readonly value: number; readonly decimal: boolean; readonly glued: boolean }
  | { readonly kind: 'mark'; readonly mark: '°' | "'" | '"' }
  | { readonly kind: 'letter'; readonly letter: 'N' | 'S' | 'E' | 'W' }
  | { readonly kind: 'axis'; readonly axis: 'lat' | 'lon' }
  | { readonly kind: 'sign'; readonly negative: boolean }
  | { readonly kind: 'separator' }

export interface AngleRead {
  /** Degrees, with its sign; never -0. */
  readonly value: number
  /** Told by a letter or a word; null when the order decides. */
  readonly axis: 'lat' | 'lon' | null
  /** 1 for degrees alone, 2 with minutes, 3 with seconds. */
  readonly parts: number
  readonly unmarked: boolean
}

type AngleReason = 'unreadable' | 'ambiguous' | 'out-of-range' | 'sign-against-letter'

interface Figure {
  readonly value: number
  readonly decimal: boolean
  readonly mark: '°' | "'" | '"' | null
}

const DIVISORS: Readonly<Record<'°' | "'" | '"', number>> = { '°': 1, "'": 60, '"': 3600 }
const ORDER = ['°', "'", '"'] as const

export function readAngle(tokens: readonly DegreeToken[]): Result<AngleRead, AngleReason> {
  const figures = figuresOf(tokens)
  const size = figures === null ? null : sizeOf(figures)
  if (figures === null || size === null) {
    return failed(
      'unreadable',
      'A coordinate is degrees, then minutes, then seconds, and only the last may have decimals.',
    )
  }
  if (figures.some((figure, at) => at > 0 && figure.value >= 60)) {
    return failed('out-of-range', 'Minutes and seconds run from 0 to below 60. Check the second and third figures.')
  }
  return withDirection(tokens, size, figures)
}

function withDirection(
  tokens: readonly DegreeToken[],
  size: number,
  figures: readonly Figure[],
): Result<AngleRead, AngleReason> {
  const letters = tokens.flatMap((token) => (token.kind === 'letter' ? [token.letter] : []))
  const signs = tokens.flatMap((token) => (token.kind === 'sign' ? [token.negative] : []))
  const words = tokens.flatMap((token) => (token.kind === 'axis' ? [token.axis] : []))
  const [letter] = letters
  const [negative] = signs
  if (letters.length > 1 || signs.length > 1 || words.length > 1 || !signLeads(tokens)) {
    return failed(
      'unreadable',
      'One coordinate has more than one sign or letter. Give each one N, S, E or W, or a sign.',
    )
  }
  const letterAxis = letter === undefined ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lon'
  const [word] = words
  if (letterAxis !== null && word !== undefined && word !== letterAxis) {
    return failed('sign-against-letter', `The letter ${letter} contradicts the word before it. Keep one of the two.`)
  }
  const downward = letter === 'S' || letter === 'W'
  if (letter !== undefined && negative !== undefined && negative !== downward) {
    return failed(
      'sign-against-letter',
      `The sign contradicts the letter ${letter}. Write the sign or the letter, not both.`,
    )
  }
  const value = negative === true || downward ? -size : size
  const unmarked = figures.every((figure) => figure.mark === null)
  return done({ value: value + 0, axis: letterAxis ?? word ?? null, parts: figures.length, unmarked })
}

/** A sign belongs before the first figure. */
function signLeads(tokens: readonly DegreeToken[]): boolean {
  const sign = tokens.findIndex((token) => token.kind === 'sign')
  return sign === -1 || sign < tokens.findIndex((token) => token.kind === 'number')
}

/** The figures with the marks that follow them; null when a mark has no figure or there are none or too many. */
function figuresOf(tokens: readonly DegreeToken[]): Figure[] | null {
  const figures: Figure[] = []
  for (const [at, token] of tokens.entries()) {
    if (token.kind === 'number') {
      const next = tokens[at + 1]
      figures.push({ value: token.value, decimal: token.decimal, mark: next?.kind === 'mark' ? next.mark : null })
    } else if (token.kind === 'mark' && tokens[at - 1]?.kind !== 'number') return null
    else if (token.kind === 'separator') return null
  }
  return figures.length >= 1 && figures.length <= 3 ? figures : null
}

/** Degrees without sign; null when the units don't run downward or a figure before the last has decimals. */
function sizeOf(figures: readonly Figure[]): number | null {
  let size = 0
  let rank = -1
  for (const [at, figure] of figures.entries()) {
    const own = figure.mark === null ? rank + 1 : ORDER.indexOf(figure.mark)
    const mark = ORDER[own]
    const last = at === figures.length - 1
    if (mark === undefined || own <= rank || (at === 0 && own !== 0) || (figure.decimal && !last)) return null
    size += figure.value / DIVISORS[mark]
    rank = own
  }
  return size
}
