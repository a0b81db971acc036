/** Searches the town list: whole names before beginnings, beginnings before later words, those before parts; each by size. */
import { foldPlaceName } from '#core/geo/place-name.ts'
import { type Town, type TownList, townAt } from '#core/geo/town-list.ts'

export interface TownIndex {
  readonly find: (text: string, limit: number) => readonly Town[]
}

const countryNames = new Intl.DisplayNames('en', { type: 'region' })

export function indexTowns(list: TownList): TownIndex {
  return {
    find: (text, limit) => {
      const [name = '', ...regions] = text.split(',').map(foldPlaceName)
      if (name === '') return []
      const wanted = regions.filter((region) => region !== '')
      const found = new Map<number, Town>()
      for (const pattern of [`\t${name}\t`, `\t${name}`, ` ${name}`, name]) {
        for (const row of rowsWith(list.spellings, list.spellingStarts, pattern)) {
          if (found.size >= limit) return [...found.values()]
          if (found.has(row)) continue
          const town = townAt(list.details, list.detailStarts[row] ?? 0)
          if (wanted.every((region) => liesIn(town, region))) found.set(row, named(town))
        }
      }
      return [...found.values()]
    },
  }
}

/** The rows whose line holds the pattern, in their order, each once. */
function* rowsWith(text: string, starts: Uint32Array, pattern: string): Generator<number> {
  let from = 0
  for (let at = text.indexOf(pattern, from); at !== -1; at = text.indexOf(pattern, from)) {
    const row = rowOf(starts, at)
    yield row
    from = starts[row + 1] ?? text.length
  }
}

/** The last line that begins at or before a position. */
function rowOf(starts: Uint32Array, position: number): number {
  let low = 0
  let high = starts.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((starts[middle] ?? 0) <= position) low = middle
    else high = middle - 1
  }
  return low
}

/** True for a country's name (or its beginning), its two letters, or the state's letters. */
function liesIn(town: Town, region: string): boolean {
  const country = foldPlaceName(countryNames.of(town.country) ?? town.country)
  return country.startsWith(region) || town.country.toLowerCase() === region || town.admin.toLowerCase() === region
}

/** With the country's English name in place of its letters. */
function named(town: Town): Town {
  return { ...town, country: countryNames.of(town.country) ?? town.country }
}
