/** Telephone numbers within what somebody wrote of a contact: where each stands, and how it is dialled. */

export interface TelephonePiece {
  readonly text: string
  /** What is dialled, digits with at most a plus before them; null for text that is no number. */
  readonly dialled: string | null
}

/** Fewer digits are a house number or a year; E.164 knows no more than fifteen. */
const FEWEST = 6
const MOST = 15
/** Without a plus or a nought in front, so many digits in groups look like a number to dial. */
const FEWEST_LOCAL = 7

/** Digits in groups on one line, begun by a plus, a bracket or a digit; no part of a longer word or of a decimal. */
const CANDIDATE = /(?<![\p{L}\d.,:+(-])(?:\+\s?)?\(?\d[\d \u{a0}()./–-]{4,}\d(?![\p{L}\d:]|[.,]\d)/gu

const NOT_DIALLED: readonly RegExp[] = [
  // Days: 2026-06-14, 14.06.2026, and years from and until.
  /^\d{4}[-./]\d{1,2}[-./]\d{1,2}$/u,
  /^\d{1,2}[-./ ]{1,2}\d{1,2}[-./ ]{1,2}(?:\d{4}|\d{2})$/u,
  /^(?:19|20)\d\d\s?[-–/]\s?(?:19|20)\d\d$/u,
  // Hours from and until: 0800-1700.
  /^(?:[01]\d|2[0-4])[0-5]\d\s?[-–]\s?(?:[01]\d|2[0-4])[0-5]\d$/u,
  // One decimal, such as a degree of latitude.
  /^\d{1,3}\.\d{3,}$/u,
]

function dialled(written: string): string | null {
  if (NOT_DIALLED.some((form) => form.test(written))) return null
  const plus = written.startsWith('+')
  // "+44 (0)20": the nought is only for those who dial within the country.
  const digits = (plus ? written.replaceAll('(0)', '') : written).replaceAll(/\D/gu, '')
  if (digits.length > MOST) return null
  const led = plus || /^\(?0/u.test(written)
  if (led) return digits.length < FEWEST ? null : `${plus ? '+' : ''}${digits}`
  return digits.length < FEWEST_LOCAL || digits.length === written.length ? null : digits
}

/** The text in pieces that together are all of it. */
export function telephonePieces(text: string): TelephonePiece[] {
  const pieces: TelephonePiece[] = []
  let start = 0
  const plain = (until: number): void => {
    if (until > start) pieces.push({ text: text.slice(start, until), dialled: null })
  }
  for (const found of text.matchAll(CANDIDATE)) {
    const [written] = found
    const number = dialled(written)
    if (number === null) continue
    plain(found.index)
    pieces.push({ text: written, dialled: number })
    start = found.index + written.length
  }
  plain(text.length)
  return pieces
}
