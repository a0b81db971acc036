/** The text form of the offline gazetteer: what the build writes and the search reads, largest towns first. */
import { foldPlaceName, foldWrittenOut } from './place-name.ts'

export interface Town {
  readonly name: string
  /** Two letters, ISO 3166-1. */
  readonly country: string
  /** State or province as people write it (such as IL); empty where the source has only a number. */
  readonly admin: string
  readonly population: number
  readonly lat: number
  readonly lon: number
}

export interface TownList {
  /** One line per town, its folded spellings each between two tabs: a tab begins and ends a name. */
  readonly spellings: string
  /** One line per town in the same order; townAt reads it. */
  readonly details: string
  /** Where the lines of the two begin. */
  readonly spellingStarts: Uint32Array
  readonly detailStarts: Uint32Array
}

const TITLE = 'standpoint-towns 1'

/** `otherNames` are further spellings under which a town is found. */
export function writeTownList(towns: readonly (Town & { readonly otherNames: readonly string[] })[]): string {
  const sorted = towns.toSorted((one, other) => other.population - one.population)
  const spellings = sorted.map((town) => `\t${foldedSpellings([town.name, ...town.otherNames]).join('\t')}\t\n`)
  const details = sorted.map((town) => `${detail(town).join('\t')}\n`)
  return `${TITLE} ${sorted.length}\n${spellings.join('')}\f${details.join('')}`
}

function foldedSpellings(names: readonly string[]): string[] {
  const folded = names.flatMap((name) => [foldPlaceName(name), foldWrittenOut(name) ?? ''])
  return [...new Set(folded.filter((spelling) => spelling !== ''))]
}

function detail(town: Town): readonly (string | number)[] {
  const name = town.name.replace(/\s+/gu, ' ')
  return [name, town.country, town.admin, town.population, town.lat, town.lon]
}

/** Null when the text is not a whole list of this version. */
export function readTownList(text: string): TownList | null {
  const titleEnd = text.indexOf('\n')
  const middle = text.indexOf('\f')
  const count = /^standpoint-towns 1 (\d+)$/u.exec(text.slice(0, Math.max(0, titleEnd)))?.[1]
  if (count === undefined || middle === -1 || !text.endsWith('\n')) return null
  const [spellings, details] = [text.slice(titleEnd + 1, middle), text.slice(middle + 1)]
  const spellingStarts = lineStarts(spellings, Number(count))
  const detailStarts = lineStarts(details, Number(count))
  if (spellingStarts === null || detailStarts === null) return null
  return { spellings, details, spellingStarts, detailStarts }
}

/** Where each line begins; every line ends with a line feed. Null when there are not `count` lines. */
function lineStarts(text: string, count: number): Uint32Array | null {
  const starts = new Uint32Array(count)
  let row = 0
  for (let at = 0; at < text.length; at = text.indexOf('\n', at) + 1) starts[row++] = at
  return row === count ? starts : null
}

export function townAt(details: string, start: number): Town {
  const [name = '', country = '', admin = '', population, lat, lon] = details
    .slice(start, details.indexOf('\n', start))
    .split('\t')
  return { name, country, admin, population: Number(population), lat: Number(lat), lon: Number(lon) }
}
