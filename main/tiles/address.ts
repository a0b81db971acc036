/** Owns the addresses of tiles: whether a template is fit to be used, how it is filled, and where its host really is. */
import { lookup } from 'node:dns/promises'
import { isIP } from 'node:net'
import { done, failed, type Result } from '#core/result.ts'
import { isLoopbackAddress, isPublicAddress } from './public-address.ts'

/** Every address a host name stands for; throws when the name can't be looked up. */
export type Resolve = (hostname: string) => Promise<readonly string[]>

export type TemplateReason = 'template-malformed' | 'template-not-https' | 'template-credentials' | 'address-private'

export interface AddressRules {
  /** For tests and development alone: tile servers on this machine may be used, and by plain http. */
  readonly allowLoopbackHttp: boolean
}

export interface TilePlace {
  readonly z: number
  readonly x: number
  readonly y: number
}

const PLACEHOLDERS = new Set(['z', 'x', 'y', 's', 'key'])
const MIRRORS = ['a', 'b', 'c'] as const
const WHAT_TO_DO = 'Use a template such as https://tiles.example.org/{z}/{x}/{y}.png.'

/** Checks a template as typed, without asking the network. */
export function checkTemplate(template: string, rules: AddressRules): Result<string, TemplateReason> {
  const malformed = malformation(template)
  if (malformed !== null) return failed('template-malformed', `${malformed} ${WHAT_TO_DO}`)
  const url = new URL(fill(template, { z: 0, x: 0, y: 0 }, 'k'))
  if (url.username !== '' || url.password !== '') {
    return failed(
      'template-credentials',
      'The tile address holds a user name or password. Take it out and put {key} where the key belongs.',
    )
  }
  const here = isLoopbackHost(url.hostname)
  if (here && rules.allowLoopbackHttp) return done(template)
  if (url.protocol !== 'https:') {
    return failed(
      'template-not-https',
      `The tile address begins with ${url.protocol}// but only https:// is used. ${WHAT_TO_DO}`,
    )
  }
  if (here || isPrivateLiteral(url.hostname)) return failed('address-private', privateSentence(url.hostname))
  return done(template)
}

/**
 * Looks the host up and refuses it when any of its addresses is not public. The connection looks it up once more, so a name
 * that changes in between could still lead inside; https stops that one, since no inner server has that name's certificate.
 */
export async function checkHost(
  hostname: string,
  resolve: Resolve,
  rules: AddressRules,
): Promise<Result<null, 'address-private' | 'name-unknown'>> {
  if (isLoopbackHost(hostname) && rules.allowLoopbackHttp) return done(null)
  const bare = unbracketed(hostname)
  let addresses: readonly string[]
  try {
    addresses = isIP(bare) === 0 ? await resolve(bare) : [bare]
  } catch {
    return failed(
      'name-unknown',
      `The host ${bare} could not be found. Check the network and the spelling of the tile address.`,
    )
  }
  if (addresses.length === 0) return failed('name-unknown', `The host ${bare} has no address. Check the tile address.`)
  return addresses.every(isPublicAddress) ? done(null) : failed('address-private', privateSentence(bare))
}

export async function resolveWithSystem(hostname: string): Promise<readonly string[]> {
  const found = await lookup(hostname, { all: true, verbatim: true })
  return found.map((one) => one.address)
}

/** The address of one tile. The same tile always goes to the same mirror, which keeps caches along the way useful. */
export function tileUrl(template: string, place: TilePlace, key: string | null): string {
  return fill(template, place, key ?? '')
}

/** What counts as one host when requests are held back: mirrors of a source are the same people's machine. */
export function queueNameOf(template: string): string {
  return new URL(fill(template.replaceAll('{s}', 'mirror'), { z: 0, x: 0, y: 0 }, 'k')).host
}

export function isTilePlace(place: TilePlace, maxNativeZoom: number): boolean {
  const { z, x, y } = place
  if (![z, x, y].every(Number.isSafeInteger)) return false
  return z >= 0 && z <= maxNativeZoom && x >= 0 && x < 2 ** z && y >= 0 && y < 2 ** z
}

function fill(template: string, { z, x, y }: TilePlace, key: string): string {
  const values: Readonly<Record<string, string>> = {
    z: String(z),
    x: String(x),
    y: String(y),
    s: MIRRORS[(x + y) % MIRRORS.length] ?? 'a',
    key: encodeURIComponent(key),
  }
  return template.replaceAll(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole)
}

/** Says what is wrong with the template's form, or null. */
function malformation(template: string): string | null {
  for (const name of ['z', 'x', 'y']) {
    if (!template.includes(`{${name}}`)) return `The tile address has no {${name}} in it.`
  }
  const unknown = [...template.matchAll(/\{([^{}]*)\}/g)].find((match) => !PLACEHOLDERS.has(match[1] ?? ''))
  if (unknown) return `The tile address holds ${unknown[0]}, which is not known; {z} {x} {y} {s} {key} are.`
  if (!/^https?:\/\//i.test(template)) return 'The tile address is not a web address.'
  const first = fill(template, { z: 0, x: 0, y: 0 }, 'k')
  const second = fill(template, { z: 3, x: 3, y: 3 }, 'other')
  if (!URL.canParse(first) || !URL.canParse(second)) return 'The tile address is not a web address.'
  // Both fillings use mirror a, so only a misplaced {z} {x} {y} or {key} can change the host.
  if (new URL(first).origin !== new URL(second).origin) return 'The host of the tile address may hold {s} alone.'
  return null
}

/** URL has already turned 2130706433, 0x7f.1 and the like into four numbers. */
function isPrivateLiteral(hostname: string): boolean {
  const bare = unbracketed(hostname)
  return isIP(bare) === 0 ? isInnerName(bare) : !isPublicAddress(bare)
}

/** Names that never leave a house (RFC 6762, RFC 6761, RFC 8375; from memory); a name without a dot is a neighbour's. */
function isInnerName(hostname: string): boolean {
  const name = hostname.replace(/\.$/, '')
  return !name.includes('.') || /\.(?:local|localhost|internal|home\.arpa)$/.test(name)
}

function isLoopbackHost(hostname: string): boolean {
  const name = unbracketed(hostname).replace(/\.$/, '')
  return name === 'localhost' || isLoopbackAddress(name)
}

function unbracketed(hostname: string): string {
  return hostname.startsWith('[') ? hostname.slice(1, -1) : hostname
}

function privateSentence(hostname: string): string {
  return `The tile address leads to ${unbracketed(hostname)}, inside this machine or its own network. Use a tile server on the public internet.`
}
