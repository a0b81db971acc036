/** Places as other programs hand them over: in a link to a map, as a point of well-known text, with the name of the datum beside them. */
import { type LatLon, isLatLon, latLon } from './lat-lon.ts'

const NUMBER = String.raw`[-+]?\d{1,3}(?:\.\d+)?`
const PAIR = new RegExp(`^(?:loc:)?\\s*(${NUMBER})\\s*,\\s*(${NUMBER})(?:\\s*,|$)`, 'u')

export function isLink(text: string): boolean {
  return /^\s*https?:\/\//iu.test(text)
}

function place(lat: string | undefined, lon: string | undefined): LatLon | null {
  const [north, east] = [Number(lat), Number(lon)]
  const known = lat !== undefined && lon !== undefined && isLatLon(north, east) && Math.abs(east) <= 180
  return known ? latLon(north, east) : null
}

/** Parameters of an address that name a marked place come before those that name the map's middle. */
const MARKED = ['q', 'query', 'daddr', 'destination', 'loc', 'pin', 'marker', 'll', 'center', 'cp'] as const

function decoded(text: string): string {
  try {
    return decodeURIComponent(text.replaceAll('+', ' '))
  } catch {
    // A percent sign that begins no character stands for itself.
    return text
  }
}

/** What stands before the question mark, the parameters behind it, and what follows the hash. */
function partsOf(link: string): { path: string; parameters: ReadonlyMap<string, string>; hash: string } {
  const [before = '', ...rest] = link.trim().split('#')
  const [path = '', ...query] = before.split('?')
  const pairs = query.join('?').split('&')
  const parameters = pairs.map((pair): [string, string] => {
    const [name = '', ...value] = pair.split('=')
    return [decoded(name), decoded(value.join('='))]
  })
  return { path, parameters: new Map(parameters), hash: rest.length === 0 ? '' : `#${rest.join('#')}` }
}

/** The place that a link to a map names: its mark where it has one, else the middle of its map; null when it names none. */
export function placeInLink(text: string): LatLon | null {
  const { path, parameters, hash } = partsOf(text)
  const marked = place(parameters.get('mlat'), parameters.get('mlon'))
  if (marked !== null) return marked
  const written = new RegExp(`!3d(${NUMBER})!4d(${NUMBER})`, 'u').exec(text)
  const inPath = written === null ? null : place(written[1], written[2])
  if (inPath !== null) return inPath
  for (const name of MARKED) {
    const pair = PAIR.exec(parameters.get(name) ?? '')
    const named = pair === null ? null : place(pair[1], pair[2])
    if (named !== null) return named
  }
  const alone = place(parameters.get('lat'), parameters.get('lon') ?? parameters.get('lng'))
  if (alone !== null) return alone
  const at = new RegExp(`@(${NUMBER}),(${NUMBER})`, 'u').exec(path)
  if (at !== null) return place(at[1], at[2])
  const middle = new RegExp(`[#=](?:\\d+(?:\\.\\d+)?)\\/(${NUMBER})\\/(${NUMBER})`, 'u').exec(hash)
  return middle === null ? null : place(middle[1], middle[2])
}

/** A point of well-known text (OGC 06-103r4, 7.2), longitude first; null when the text is none. */
export function pointOfText(text: string): LatLon | null {
  const point =
    /^\s*(?:SRID\s*=\s*4326\s*;)?\s*POINT\s*(?:Z|M|ZM)?\s*\(\s*(\S+)\s+(\S+?)(?:\s+\S+?){0,2}\s*\)\s*$/iu.exec(text)
  return point === null ? null : place(point[2], point[1])
}

/** The text without the name of the one datum that is read here, which many programs write beside it. */
export function withoutDatum(text: string): string {
  return text
    .replace(/^\s*[([]?\s*WGS[ -]?(?:19)?84\s*[)\]]?\s*[:,;]?\s*/iu, '')
    .replace(/\s*[,;]?\s*[([]?\s*WGS[ -]?(?:19)?84\s*[)\]]?\s*$/iu, '')
}
