/** The loopback host's key: a random token per start, and a one-time way to hand it to the browser without showing it. */
import { randomBytes } from 'node:crypto'
import { sameText } from '#main/serve.ts'

/** How long the way in stays open: the browser is started right after it is made. */
const WAY_IN_LIFETIME_MS = 60_000

/** `stolen`: the way in was used twice within its time, so that somebody else may hold the token; it is now another. */
export type Entry = 'let-in' | 'stolen' | 'closed'

export interface Gate {
  readonly token: () => string
  readonly admits: (authorization: string | undefined) => boolean
  /** A path for a browser's command line: worthless once used or a minute later. */
  readonly makeWayIn: (now: number) => string
  readonly enter: (path: string, now: number) => Entry
}

export function makeGate(): Gate {
  let token = secret()
  let wayIn: { path: string; until: number; used: boolean } | null = null
  return {
    token: () => token,
    admits: (authorization) => sameText(authorization ?? '', `Bearer ${token}`),
    makeWayIn: (now) => {
      wayIn = { path: `/open/${secret()}`, until: now + WAY_IN_LIFETIME_MS, used: false }
      return wayIn.path
    },
    enter: (path, now) => {
      if (wayIn === null || now > wayIn.until || !sameText(path, wayIn.path)) return 'closed'
      if (wayIn.used) {
        wayIn = null
        token = secret()
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
