/** Turns what was typed into what the word index is asked: every word quoted, parts of words looked up in the list. */
import type { ReadHandle } from './handle.ts'
import { standsAlone } from './search-text.ts'

export interface Wording {
  /** For MATCH; null when the index is no help and the texts have to be read. */
  readonly match: string | null
  /** Texts that the index alone cannot vouch for: each must stand in the spot's text. */
  readonly verify: readonly string[]
}

/** More words than this that a typed part stands in: asking for each is slower than reading the texts. */
const MOST_EXPANDED = 200

/** The index is asked for this much of a part; the rest is told apart by the word itself. */
const MOST_LETTERS = 20

type Fit = 'part' | 'end' | 'start'

/** Null when a word is borne by no spot at all: then nothing can be found. */
export function wordingOf(handle: ReadHandle, terms: readonly string[]): Wording | null {
  const groups: string[] = []
  const verify: string[] = []
  for (const term of terms) {
    const words = term.split(' ')
    let vouched = words.length === 1
    for (const [place, word] of words.entries()) {
      const group = groupFor(handle, word, fitAt(place, words.length))
      if (group === null) vouched = false
      else if (group.length === 0) return null
      else groups.push(`(${group.map((one) => `"${one}"`).join(' OR ')})`)
    }
    if (!vouched) verify.push(term)
  }
  return { match: groups.length === 0 ? null : groups.join(' AND '), verify }
}

/** Of a term's several words the first may be the end of one and the last the beginning; those between are whole. */
function fitAt(place: number, count: number): Fit | 'whole' {
  if (count === 1) return 'part'
  if (place === 0) return 'end'
  return place === count - 1 ? 'start' : 'whole'
}

/** The stored words that the sought one may stand for; null when there are too many. */
function groupFor(handle: ReadHandle, word: string, fit: Fit | 'whole'): readonly string[] | null {
  if (fit === 'whole' || standsAlone(word)) return [word]
  const found = Array.from(word).length < 3 ? byReading(handle, word) : byParts(handle, word)
  if (found.length > MOST_EXPANDED) return null
  if (fit === 'end') return found.filter((one) => one.endsWith(word))
  return fit === 'start' ? found.filter((one) => one.startsWith(word)) : found
}

function byParts(handle: ReadHandle, word: string): readonly string[] {
  const letters = Array.from(word).slice(0, MOST_LETTERS)
  const threes = letters.slice(2).map((_, at) => `"${letters.slice(at, at + 3).join('')}"`)
  return wordsFrom(
    handle,
    `SELECT word.word FROM word_part CROSS JOIN word ON word.key = word_part.rowid
       WHERE word_part MATCH ? AND instr(word.word, ?) > 0 LIMIT ?`,
    [[...new Set(threes)].join(' AND '), word, MOST_EXPANDED + 1],
  )
}

/** Too short for three letters: the list of words is read, which ends early where a part is common. */
function byReading(handle: ReadHandle, word: string): readonly string[] {
  return wordsFrom(handle, 'SELECT word FROM word WHERE instr(word, ?) > 0 LIMIT ?', [word, MOST_EXPANDED + 1])
}

function wordsFrom(handle: ReadHandle, sql: string, values: readonly (string | number)[]): readonly string[] {
  return handle.rows<{ word: string }>(sql, ...values).map((row) => row.word)
}
