/** Maps the characters people really type or paste into coordinates (odd degree signs, quotes, full width) to plain ones. */

/**
 * Runs before NFKC on purpose: NFKC would turn the ordinal sign º into the letter o and the double prime into two primes,
 * and after that nobody can tell what was meant.
 */
const BEFORE_NFKC: readonly (readonly [RegExp, string])[] = [
  [/[º˚°⁰∘◦゜]/gu, '°'],
  [/[″“”„‟ʺ˝〃‶＂]/gu, '"'],
  [/[′‘’‚‛ʹʼˈ´`‵＇]/gu, "'"],
  [/''/gu, '"'],
  [/[−–—‐‑‒﹣－]/gu, '-'],
  [/[、，﹐]/gu, ','],
  [/[；﹔]/gu, ';'],
  [/[．﹒]/gu, '.'],
]

const WORDS: readonly (readonly [RegExp, string])[] = [
  // The word latitude or longitude with its colon tells the axis; see degree-text.ts.
  [/\b(?:latitude|lat)\b\.?\s*[:=]?/giu, ' φ '],
  [/\b(?:longitude|long|lon|lng)\b\.?\s*[:=]?/giu, ' λ '],
  [/(?<![a-z])north(?![a-z])/giu, 'N'],
  [/(?<![a-z])south(?![a-z])/giu, 'S'],
  [/(?<![a-z])east(?![a-z])/giu, 'E'],
  [/(?<![a-z])west(?![a-z])/giu, 'W'],
  [/(?<=\d\s*)(?:degrees|degree|deg)(?![a-z])\.?/giu, '°'],
  [/(?<=\d\s*)(?:minutes|minute|min)(?![a-z])\.?/giu, "'"],
  [/(?<=\d\s*)(?:seconds|second|sec)(?![a-z])\.?/giu, '"'],
  // 48d51m29.6s: an s is a second only after minutes, otherwise it is the south.
  [/(\d)\s*d\s*(?=\d)/giu, '$1°'],
  [/(\d)\s*m\s*(\d+(?:[.,]\d+)?)\s*s/giu, '$1\'$2"'],
  [/(\d)\s*m(?![a-z])/giu, "$1'"],
]

/** The text in plain characters, outer blanks gone, every inner run of blanks one blank. */
export function plainCharacters(text: string): string {
  let plain = text
  for (const [odd, usual] of BEFORE_NFKC) plain = plain.replace(odd, usual)
  plain = plain.normalize('NFKC')
  // NFKC can bring new pairs of primes and new hyphens to light (such as full-width ones).
  plain = plain.replace(/''/gu, '"').replace(/[\u{200b}-\u{200f}\u{2060}\u{feff}]/gu, '')
  return plain.replace(/\s+/gu, ' ').trim()
}

/** Plain text of degrees with words turned into signs and letters: `48 deg 51 min north` becomes `48 ° 51 ' N`. */
export function degreeSigns(plain: string): string {
  let signed = plain
  for (const [word, sign] of WORDS) signed = signed.replace(word, sign)
  return signed.replace(/\s+/gu, ' ').trim()
}
