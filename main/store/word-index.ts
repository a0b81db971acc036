/** The words of spots: keeps each spot's folded text, the index by word and the list of words in step. */
import type { ReadHandle, WriteHandle } from './handle.ts'
import { FOLDING, searchText, type SearchableSpot } from './search-text.ts'

/** Sets the texts of these spots; one whose text stays as it was costs a look-up, and one known to be new not even that. */
export function enterWords(
  handle: WriteHandle,
  texts: ReadonlyMap<number, string>,
  isNew: (key: number) => boolean = () => false,
): void {
  const changed: number[] = []
  const seen = new Set<string>()
  for (const [key, words] of texts) {
    const before = isNew(key) ? null : textOf(handle, key)
    if (before === words) continue
    if (before !== null) removeFromIndex(handle, key, before)
    handle.run('INSERT OR REPLACE INTO spot_words (key, words) VALUES (?, ?)', key, words)
    changed.push(key)
    for (const word of words.split(/[ \n]/)) seen.add(word)
  }
  if (changed.length === 0) return
  // One statement for all of them: a third quicker over 20,000 spots than one each.
  handle.run(
    `INSERT INTO spot_find (rowid, words)
       SELECT key, words FROM spot_words WHERE key IN (SELECT value FROM json_each(?))`,
    JSON.stringify(changed),
  )
  enterInList(handle, seen)
}

export function leaveWords(handle: WriteHandle, keys: readonly number[]): void {
  for (const key of keys) {
    const before = textOf(handle, key)
    if (before === null) continue
    removeFromIndex(handle, key, before)
    handle.run('DELETE FROM spot_words WHERE key = ?', key)
  }
}

export function wordsAreFresh(handle: ReadHandle): boolean {
  return handle.row<{ value: number }>("SELECT value FROM counter WHERE name = 'folding'")?.value === FOLDING
}

/** Folds all texts again when they are missing or were folded in an older way; true when it had to. */
export function refreshWords(handle: WriteHandle): boolean {
  if (wordsAreFresh(handle)) return false
  handle.run('DELETE FROM spot_words')
  handle.run('DELETE FROM word')
  handle.script(
    "INSERT INTO spot_find (spot_find) VALUES ('rebuild'); INSERT INTO word_part (word_part) VALUES ('rebuild')",
  )
  enterWords(handle, textsWhere(handle, 'true', ''))
  handle.run("INSERT OR REPLACE INTO counter (name, value) VALUES ('folding', ?)", FOLDING)
  return true
}

/** The texts of one shoot's spots as they should be now: for when the shoot's name has changed. */
export function textsOfShoot(handle: ReadHandle, shootId: string): Map<number, string> {
  return textsWhere(handle, 'shoot.id = ?', shootId)
}

/**
 * Strikes words that no spot has any longer, left behind by every edit of a note, from the list. Answers how many.
 * They do no harm but length; a day's worth is struck with the day's backup.
 */
export function strikeUnusedWords(handle: WriteHandle): number {
  handle.script("CREATE VIRTUAL TABLE IF NOT EXISTS temp.used_word USING fts5vocab (main, spot_find, 'row')")
  const unused = handle.rows<{ key: number; word: string }>(
    'SELECT key, word FROM word WHERE word NOT IN (SELECT term FROM temp.used_word)',
  )
  for (const { key, word } of unused) {
    handle.run("INSERT INTO word_part (word_part, rowid, word) VALUES ('delete', ?, ?)", key, word)
    handle.run('DELETE FROM word WHERE key = ?', key)
  }
  return unused.length
}

function textOf(handle: ReadHandle, key: number): string | null {
  return handle.row<{ words: string }>('SELECT words FROM spot_words WHERE key = ?', key)?.words ?? null
}

function removeFromIndex(handle: WriteHandle, key: number, words: string): void {
  handle.run("INSERT INTO spot_find (spot_find, rowid, words) VALUES ('delete', ?, ?)", key, words)
}

function enterInList(handle: WriteHandle, words: ReadonlySet<string>): void {
  for (const word of words) {
    if (word === '') continue
    const { changes, key } = handle.run('INSERT OR IGNORE INTO word (word) VALUES (?)', word)
    if (changes > 0) handle.run('INSERT INTO word_part (rowid, word) VALUES (?, ?)', key, word)
  }
}

function textsWhere(handle: ReadHandle, condition: string, value: string): Map<number, string> {
  const rows = handle.rows<{ key: number; document: string; shootName: string }>(
    `SELECT spot.key, spot.document, shoot.name AS shootName
       FROM spot JOIN shoot ON shoot.id = spot.shoot_id WHERE ${condition}${value === '' ? " AND ? = ''" : ''}`,
    value,
  )
  return new Map(rows.map((row) => [row.key, searchText(JSON.parse(row.document) as SearchableSpot, row.shootName)]))
}
