/** Finds spots by word, by box, or both: counts both ways in first and takes the narrower one. */
import type { Output } from '#app/contract/index.ts'
import { Refused } from './fault.ts'
import type { Bounds } from '#core/geo/bounds.ts'
import type { ReadHandle, SqlValue } from './handle.ts'
import { anyBoxValues, boxValues, countPlaces, IN_BOX, joinInAny, plainBoxes } from './place-index.ts'
import { fold, searchTerms } from './search-text.ts'
import { wordingOf } from './wording.ts'

/** Hits are counted up to here and no further: a whole continent is never read. */
export const MOST_COUNTED = 10_000
const ENOUGH = MOST_COUNTED + 1

export interface Search {
  readonly words: string
  readonly within: Bounds | null
  readonly limit: number
}

export function findSpots(handle: ReadHandle, { words, within, limit }: Search): Output<'library.find'> {
  if (within !== null && within.south > within.north) {
    throw new Refused('invalid', 'The south edge of the box lies north of its north edge. Swap them.')
  }
  const terms = searchTerms(words)
  // Something was typed but nothing in it can be sought, such as a lone quotation mark: nothing bears it.
  if (terms.length === 0 && words.trim() !== '') return { spots: [], total: 0, more: false }
  const keys = keysOf(handle, terms, within === null ? null : plainBoxes(within))
  return {
    spots: briefs(handle, newestFirst(keys, limit), terms),
    total: Math.min(keys.length, MOST_COUNTED),
    more: keys.length > limit,
  }
}

/** So few spots in the box that reading their texts is quicker than asking the index anything. */
const FEW = 2_000

/** Keys of the hits, at most one more than are counted. */
function keysOf(handle: ReadHandle, terms: readonly string[], boxes: readonly Bounds[] | null): readonly number[] {
  if (boxes !== null && terms.length === 0) return byBox(handle, terms, boxes)
  const placed = boxes === null ? Infinity : countPlaces(handle, boxes, ENOUGH)
  if (boxes !== null && placed <= FEW) return byBox(handle, terms, boxes)
  const wording = wordingOf(handle, terms)
  if (wording === null) return []
  const { match, verify } = wording
  if (match === null) return byReading(handle, verify, boxes)
  if (boxes !== null && placed < ENOUGH && countWorded(handle, match, placed) >= placed)
    return byBox(handle, terms, boxes)
  return byWord(handle, match, verify, boxes)
}

/** Spots with the words, counted no further than the box's count: as many as that, and the box is the narrower way. */
function countWorded(handle: ReadHandle, match: string, placed: number): number {
  const sql = 'SELECT count(*) AS count FROM (SELECT 1 FROM spot_find WHERE spot_find MATCH ? LIMIT ?)'
  return handle.row<{ count: number }>(sql, match, placed)?.count ?? 0
}

function byBox(handle: ReadHandle, texts: readonly string[], boxes: readonly Bounds[]): readonly number[] {
  const join = texts.length === 0 ? '' : 'CROSS JOIN spot_words AS own ON own.key = place.key'
  const sql = `SELECT place.key FROM spot_place AS place ${join} WHERE ${IN_BOX} ${contains(texts)} LIMIT ?`
  const keys: number[] = []
  for (const box of boxes) {
    keys.push(...keysFrom(handle, sql, [...boxValues(box), ...texts, ENOUGH - keys.length]))
  }
  return keys
}

function byWord(
  handle: ReadHandle,
  match: string,
  verify: readonly string[],
  boxes: readonly Bounds[] | null,
): readonly number[] {
  const read = verify.length === 0 ? '' : 'CROSS JOIN spot_words AS own ON own.key = found.rowid'
  const place = boxes === null ? '' : joinInAny('found.rowid', boxes)
  const sql = `SELECT found.rowid AS key FROM spot_find AS found ${place} ${read}
    WHERE found.spot_find MATCH ? ${contains(verify)} ORDER BY found.rowid DESC LIMIT ?`
  return keysFrom(handle, sql, [...anyBoxValues(boxes ?? []), match, ...verify, ENOUGH])
}

/** Reads the texts themselves, newest first: for words so common or so short that the index is no shorter way. */
function byReading(handle: ReadHandle, verify: readonly string[], boxes: readonly Bounds[] | null): readonly number[] {
  const place = boxes === null ? '' : joinInAny('own.key', boxes)
  const sql = `SELECT own.key FROM spot_words AS own ${place} WHERE true ${contains(verify)} ORDER BY own.key DESC LIMIT ?`
  return keysFrom(handle, sql, [...anyBoxValues(boxes ?? []), ...verify, ENOUGH])
}

function keysFrom(handle: ReadHandle, sql: string, values: readonly SqlValue[]): readonly number[] {
  return handle.rows<{ key: number }>(sql, ...values).map((row) => row.key)
}

function contains(texts: readonly string[]): string {
  return texts.map(() => 'AND instr(own.words, ?) > 0').join(' ')
}

function newestFirst(keys: readonly number[], limit: number): readonly number[] {
  return keys.toSorted((one, other) => other - one).slice(0, limit)
}

type Brief = Output<'library.find'>['spots'][number]

/** Those that bear a word in their name come before those that bear it in their notes. */
function briefs(handle: ReadHandle, keys: readonly number[], terms: readonly string[]): Brief[] {
  const rows = handle.rows<Brief>(
    `SELECT spot.id, spot.shoot_id AS shootId, shoot.name AS shootName, spot.name, spot.status, spot.stars, spot.lat, spot.lon
       FROM json_each(?) AS wanted CROSS JOIN spot ON spot.key = wanted.value JOIN shoot ON shoot.id = spot.shoot_id`,
    JSON.stringify(keys),
  )
  if (terms.length === 0) return rows
  const named = new Set(rows.filter(({ name }) => bears(fold(name), terms)))
  return [...named, ...rows.filter((row) => !named.has(row))]
}

function bears(name: string, terms: readonly string[]): boolean {
  return terms.some((term) => name.includes(term))
}
