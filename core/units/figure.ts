/** A number as people type it: decimal comma or point, blanks, full-width figures, any minus sign. */
import { cutShort } from '#core/cut-short.ts'
import { type Result, done, failed } from '#core/result.ts'

export type FigureReason = 'empty' | 'unreadable' | 'ambiguous'

/** Nothing longer than this is a number that somebody meant. */
const LONGEST = 40

/** Text with odd signs made plain: full-width and other variant characters, minus signs, blanks within the number. */
export function plainFigure(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[−–—‐‑‒﹣]/gu, '-')
    .replace(/[\u{200b}-\u{200f}\u{2060}\u{feff}]/gu, '')
    .replace(/\s+/gu, ' ')
    .trim()
}

function unreadable(text: string): Result<never, FigureReason> {
  return failed('unreadable', `"${cutShort(text)}" is not a number. Write figures, such as 2.5 or 2,5.`)
}

/** One number. A comma alone may be a decimal comma or a mark of thousands: `1,200` is refused rather than guessed. */
export function parseFigure(text: string): Result<number, FigureReason> {
  const plain = plainFigure(text).replace(/ /gu, '')
  if (plain === '') return failed('empty', 'Nothing was typed. Write a number, such as 2.5.')
  if (plain.length > LONGEST || !/^[+-]?[\d.,]*\d[\d.,]*$/u.test(plain)) return unreadable(plain)
  const sign = plain.startsWith('-') ? -1 : 1
  const body = plain.replace(/^[+-]/u, '')
  if (/^[1-9]\d{0,2},\d{3}$/u.test(body)) {
    const whole = body.replace(',', '')
    const parted = String(Number(body.replace(',', '.')))
    return failed('ambiguous', `"${body}" can be read as ${whole} or as ${parted}. Write ${whole} or ${parted}.`)
  }
  const value = Number(decimalPoint(body))
  return Number.isFinite(value) ? done(value === 0 ? 0 : sign * value) : unreadable(plain)
}

/** The body with its marks of thousands dropped and its decimal sign a point; a text that is no number stays none. */
function decimalPoint(body: string): string {
  const points = body.split('.').length - 1
  const commas = body.split(',').length - 1
  if (points > 0 && commas > 0) {
    const decimal = body.lastIndexOf('.') > body.lastIndexOf(',') ? '.' : ','
    const grouping = decimal === '.' ? ',' : '.'
    const [whole = '', part = '', ...rest] = body.split(decimal)
    return rest.length > 0 || !inThrees(whole, grouping) ? '?' : `${whole.replaceAll(grouping, '')}.${part}`
  }
  if (commas > 1) return inThrees(body, ',') ? body.replaceAll(',', '') : '?'
  if (points > 1) return inThrees(body, '.') ? body.replaceAll('.', '') : '?'
  return body.replace(',', '.')
}

function inThrees(whole: string, mark: string): boolean {
  const [first = '', ...rest] = whole.split(mark)
  return /^\d{1,3}$/u.test(first) && rest.every((group) => /^\d{3}$/u.test(group))
}
