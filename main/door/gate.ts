/** The loopback host's key: a random token per start, and the ways in that hand it to a page without leaving it in an address. */
import { randomBytes } from 'node:crypto'
import { sameText } from '#main/serve.ts'

/** How long the way in stays open: the browser is started right after it is made. */
const WAY_IN_LIFETIME_MS = 60_000
/** Addresses given out and not used yet; the oldest give way. */
const MOST_KEYS = 16

/** `stolen`: the way in was used twice within its time, so that somebody else may hold the token; it is now another. */
export type GateEntry = 'let-in' | 'stolen' | 'closed'

/** Who was given a key: the reader of the terminal, or a browser that came by the way in. */
export type GivenTo = 'terminal' | 'browser'

export interface Gate {
  readonly token: () => string
  readonly admits: (authorization: string | undefined) => boolean
  /** A key for an address, good for one exchange against the token: what a browser writes into its history is used up. */
  readonly makeKey: (to: GivenTo) => string
  /** Whom the key was given to, once; null for a key that is used up or none of ours. */
  readonly takeKey: (key: string) => GivenTo | null
  /** A path for a browser's command line: worthless once used or a minute later. */
  readonly makeWayIn: (now: number) => string
  readonly enter: (path: string, now: number) => GateEntry
}

export function makeGate(): Gate {
  let token = secret()
  let wayIn: { path: string; until: number; used: boolean } | null = null
  const keys = new Map<string, GivenTo>()
  return {
    token: () => token,
    admits: (authorization) => sameText(authorization ?? '', `Bearer ${token}`),
    makeKey: (to) => {
      const key = secret()
      keys.set(key, to)
      const oldest = keys.keys().next().value
      if (keys.size > MOST_KEYS && oldest !== undefined) keys.delete(oldest)
      return key
    },
    takeKey: (key) => {
      const found = [...keys].find(([known]) => sameText(key, known))
      if (found === undefined) return null
      keys.delete(found[0])
      return found[1]
    },
    makeWayIn: (now) => {
      wayIn = { path: `/open/${secret()}`, until: now + WAY_IN_LIFETIME_MS, used: false }
      return wayIn.path
    },
    enter: (path, now) => {
      if (wayIn === null || now > wayIn.until || !sameText(path, wayIn.path)) return 'closed'
      if (wayIn.used) {
        wayIn = null
        token = secret()
        // The key that the first user was sent on with may not have been taken yet.
        keys.clear()
        return 'stolen'
      }
      wayIn.used = true
      return 'let-in'
    },
  }
}

/** 256 random bits in letters that need no escaping in an address. */
export function secret(): string {
  return randomBytes(32).toString('base64url')
}
