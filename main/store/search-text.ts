/** How text is folded for finding, alike when stored and when asked: case, accents, ß, punctuation, scripts without spaces. */
import type { Spot } from '#core/record/spot.ts'
import { PLAIN_LETTERS } from '#core/plain-letters.ts'

/** Grows when the folding below changes: the stored texts are then made again at the next opening. */
export const FOLDING = 1

const LETTERS: Readonly<Record<string, string>> = { ...PLAIN_LETTERS, ς: 'σ' }
const LETTER = new RegExp(`[${Object.keys(LETTERS).join('')}]`, 'gu')

/** Accents, Hebrew points, Arabic vowels, variation selectors: what a reader leaves out when typing. */
const MARKS = /[\u0300-\u036f\u0591-\u05c7\u064b-\u065f\u0670\ufe00-\ufe0f]/gu
const BETWEEN_WORDS = /[^\p{L}\p{N}\p{M}\p{So}]+/gu
const PLAIN = /^[\x20-\x7e\n]*$/
const BETWEEN_PLAIN_WORDS = /[^a-z0-9]+/g

/** Written without spaces, or a picture: each character is a word of its own, so that any one of them is found. */
const ALONE =
  /[[\p{sc=Han}\p{sc=Hira}\p{sc=Kana}\p{sc=Bopo}\p{sc=Hang}\p{sc=Thai}\p{sc=Laoo}\p{sc=Khmr}\p{sc=Mymr}\p{sc=Tibt}\p{Extended_Pictographic}]--[\0-\u0dff]]\p{M}*/gv
/** All of those stand above this: a look for it spares most texts the slow one. */
const MAY_STAND_ALONE = /[\u0e00-\uffff]/

/** The words of a text in their order, one space between two of them; empty when there are none. */
export function fold(text: string): string {
  if (PLAIN.test(text)) return text.toLowerCase().replace(BETWEEN_PLAIN_WORDS, ' ').trim()
  const bare = text
    .normalize('NFKD')
    .replace(MARKS, '')
    .toLowerCase()
    .replace(LETTER, (letter) => LETTERS[letter] ?? letter)
  if (PLAIN.test(bare)) return bare.replace(BETWEEN_PLAIN_WORDS, ' ').trim()
  const words = bare.normalize('NFC').replace(BETWEEN_WORDS, ' ')
  if (!MAY_STAND_ALONE.test(words)) return words.trim()
  return words.replace(ALONE, ' $& ').replace(/ +/g, ' ').trim()
}

export function standsAlone(word: string): boolean {
  return word.replace(ALONE, '') === ''
}

export type SearchableSpot = Pick<Spot, 'name' | 'notes' | 'hazardNote'> & {
  readonly permission: Pick<Spot['permission'], 'whom'>
  readonly access: Pick<Spot['access'], 'surface'>
}

/** All that a spot is found by, one line each: nothing is found across two lines. */
export function searchText(spot: SearchableSpot, shootName: string): string {
  return [spot.name, shootName, spot.notes, spot.permission.whom, spot.access.surface, spot.hazardNote]
    .map(fold)
    .filter((line) => line !== '')
    .join('\n')
}

/** More words than this in one search are left out: nobody types them, and each costs a look-up. */
const MOST_WORDS = 32

/** What is sought, split at white space; a term of several words, such as o'brien, is sought as it stands. */
export function searchTerms(typed: string): readonly string[] {
  const terms = typed.split(/\s+/u).map(fold)
  return [...new Set(terms.filter((term) => term !== ''))].slice(0, MOST_WORDS)
}
