/** What the loopback host refuses before it looks at a request's body: each rule answers one threat. */
import type { IncomingHttpHeaders } from 'node:http'

export interface DoorRefusal {
  readonly status: number
  readonly text: string
}

export interface DoorRequest {
  readonly method: string
  readonly target: string
  readonly headers: IncomingHttpHeaders
  /** Each header as often as it was sent: `headers` shows the first of some and joins the others. */
  readonly allHeaders: NodeJS.Dict<string[]>
}

/** Headers that decide something here: sent twice, two readers may go by different ones (RFC 9112, 3.2, for Host). */
const ONCE = ['host', 'origin', 'authorization', 'content-type', 'content-length', 'sec-fetch-site', 'sec-fetch-mode']

/** Rules for every request. `authority` is `127.0.0.1:<port>`. */
export function refuseRequest(asked: DoorRequest, authority: string): DoorRefusal | null {
  // A proxy's absolute form or `//host` would make the address's host differ from the header that is checked.
  if (!asked.target.startsWith('/') || asked.target.startsWith('//') || asked.target.startsWith('/\\'))
    return { status: 400, text: 'Bad request target' }
  if (ONCE.some((name) => (asked.allHeaders[name]?.length ?? 0) > 1))
    return { status: 400, text: 'A header was sent twice' }
  // DNS rebinding: another name that points at this machine.
  if (asked.headers.host !== authority) return { status: 421, text: 'Not the address of this program' }
  const site = asked.headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none' && !isPlainVisit(asked))
    return { status: 403, text: 'Asked by another site' }
  return null
}

/** A person following a link to the page itself: harmless, since the page without its token can do nothing. */
function isPlainVisit(asked: DoorRequest): boolean {
  return (
    asked.method === 'GET' &&
    asked.headers['sec-fetch-mode'] === 'navigate' &&
    asked.headers['sec-fetch-dest'] === 'document' &&
    !asked.target.startsWith('/api/') &&
    !asked.target.startsWith('/tiles/') &&
    !asked.target.startsWith('/ground/') &&
    !asked.target.startsWith('/open/') &&
    asked.target !== '/enter'
  )
}

/** What a call brings: its input, or a file as plain bytes. */
export type CallBody = 'application/json' | 'application/octet-stream'

/** Rules for a call besides its token: only the page's own script can meet them, no form and no other site. */
export function refuseCall(
  asked: DoorRequest,
  authority: string,
  type: CallBody = 'application/json',
): DoorRefusal | null {
  if (asked.method !== 'POST') return { status: 405, text: 'Calls are made by POST' }
  if (asked.headers.origin !== `http://${authority}`) return { status: 403, text: 'Asked by another site' }
  const contentType = (asked.headers['content-type'] ?? '').toLowerCase().replace(/;\s*charset=utf-8$/, '')
  if (contentType !== type)
    return { status: 415, text: type === 'application/json' ? 'Calls are made in JSON' : 'Files come as plain bytes' }
  return null
}
