/** Owns how long a tile may be used without asking again: the caching rules of HTTP (RFC 9111) for a private cache. */
import { DAY } from '#core/time/duration.ts'

export interface Freshness {
  /** False when the server forbids keeping it at all. */
  readonly keep: boolean
  /** Instant in milliseconds up to which it is used unasked. */
  readonly freshUntil: number
  /** False when the server forbids showing it past that instant, even without a network. */
  readonly staleAllowed: boolean
}

/** OpenStreetMap's tile usage policy: where no lifetime is sent, keep for at least seven days. */
const UNSAID_LIFETIME = 7 * DAY
/** RFC 2616 asked servers not to say more than a year; a slip of theirs should not bind us for longer. */
const LONGEST_LIFETIME = 365 * DAY

export function freshnessOf(headers: Headers, now: number): Freshness {
  const control = directives(headers.get('cache-control') ?? '')
  // What may not be stored may not be kept by the page either, nor by the browser for it.
  const asked = control.has('no-cache') || control.has('no-store')
  const lifetime = asked ? 0 : lifetimeOf(headers, control, now)
  return {
    keep: !control.has('no-store'),
    freshUntil: now + Math.min(Math.max(lifetime, 0), LONGEST_LIFETIME),
    staleAllowed: !control.has('no-cache') && !control.has('must-revalidate'),
  }
}

/** Milliseconds left from now, below zero when it came stale already. */
function lifetimeOf(headers: Headers, control: ReadonlyMap<string, string>, now: number): number {
  const age = (wholeSeconds(headers.get('age') ?? '') ?? 0) * 1000
  const maxAge = control.get('max-age')
  // A lifetime that can't be read counts as over (RFC 9111, 4.2.1).
  if (maxAge !== undefined) return (wholeSeconds(maxAge) ?? 0) * 1000 - age
  const expires = headers.get('expires')
  if (expires === null) return UNSAID_LIFETIME
  const until = Date.parse(expires)
  if (Number.isNaN(until)) return 0
  const sent = Date.parse(headers.get('date') ?? '')
  return until - (Number.isNaN(sent) ? now : sent) - age
}

function directives(text: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  // A quoted list, as in no-cache="set-cookie", may hold commas of its own; it limits single headers, not the tile.
  for (const [, name = '', quoted, plain] of text.matchAll(/([\w-]+)(?:\s*=\s*(?:"([^"]*)"|([^\s,;]*)))?/g)) {
    const word = name.toLowerCase()
    if (quoted !== undefined && word === 'no-cache') continue
    if (!found.has(word)) found.set(word, quoted ?? plain ?? '')
  }
  return found
}

function wholeSeconds(text: string): number | null {
  return /^\d+$/.test(text) ? Number(text) : null
}
