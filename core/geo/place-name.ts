/** Folds the names of places so that a search finds them however they are typed: case, accents, ß and ss, hyphens. */
import { PLAIN_LETTERS } from '#core/plain-letters.ts'

const LETTERS: Readonly<Record<string, string>> = { ...PLAIN_LETTERS, ŋ: 'ng', ə: 'e' }
const ODD_LETTER = new RegExp(`[${Object.keys(LETTERS).join('')}]`, 'gu')

const PLAIN = /^[\x20-\x7e]*$/

/** Lower case, no accents, no apostrophes; everything that is neither letter nor figure is one blank. */
export function foldPlaceName(name: string): string {
  // Most names are plain ASCII, and taking accents off costs the most by far.
  if (PLAIN.test(name))
    return name
      .toLowerCase()
      .replace(/['`]/g, '')
      .replace(/[^a-z0-9]+/g, ' ')
      .trim()
  const bare = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/\p{M}/gu, '')
  return bare
    .replace(ODD_LETTER, (letter) => LETTERS[letter] ?? letter)
    .replace(/['’‘ʻʼ`´]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}

/** The folded spelling with ä, ö, ü written ae, oe, ue, and ø and å as oe and aa; null when it is the same. */
export function foldWrittenOut(name: string): string | null {
  if (PLAIN.test(name)) return null
  const lower = name.normalize('NFC').toLowerCase()
  const written = lower.replace(/[äöüøå]/gu, (letter) => WRITTEN_OUT[letter] ?? letter)
  return written === lower ? null : foldPlaceName(written)
}

const WRITTEN_OUT: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue', ø: 'oe', å: 'aa' }
