/** The page's only way to the services: the preload's bridge in the Electron shell, HTTP with a token on the loopback host. */
import type { Answer } from '#app/contract/call.ts'
import type { CallName, Input, Output } from '#app/contract/index.ts'
import { makeTurns } from '#renderer/job/turns.ts'
import { boardWords } from '#renderer/words/en-board.ts'
import { faultInJson } from '#core/parsed-json.ts'
import type { Fault } from '#core/result.ts'

interface Bridge {
  call(name: string, input: unknown): Promise<unknown>
  onCommand(listener: (command: string) => void): void
  onOpenFile(listener: (file: { name: string; text: string }) => void): void
}

const bridge = (globalThis as { standpoint?: Bridge }).standpoint

const TOKEN_KEY = 'standpoint-token'

let token = ''
/** Under way while the key out of the address is changed for the token; null once there is nothing to wait for. */
let entering: Promise<void> | null = bridge === undefined ? enter() : null
void entering?.then(() => {
  entering = null
})

/**
 * The address brings a key in its fragment that is good once: the browser's history keeps such an address, whatever is
 * done to it here. The token that stands for it after that is kept for this tab alone and never stands in an address.
 */
async function enter(): Promise<void> {
  token = sessionStorage.getItem(TOKEN_KEY) ?? ''
  const key = takeKey()
  if (key !== null) await changeKey(key)
}

function takeKey(): string | null {
  const fragment = new URLSearchParams(location.hash.slice(1))
  const key = fragment.get('k')
  if (key === null) return null
  fragment.delete('k')
  const rest = fragment.toString()
  history.replaceState(null, '', location.pathname + location.search + (rest === '' ? '' : `#${rest}`))
  return key
}

/** A key that is used up leaves the tab with the token it has: the first call tells when it has none. */
async function changeKey(key: string): Promise<void> {
  try {
    const response = await fetch('/enter', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ key }),
    })
    if (!response.ok) return
    const entered = (await response.json()) as { readonly token: string }
    token = entered.token
    sessionStorage.setItem(TOKEN_KEY, token)
  } catch {
    // No host: the first call tells.
  }
}

/** Calls that change what is kept: they outlive the page that made them. */
const KEEPING: ReadonlySet<string> = new Set<CallName>(['library.save', 'settings.set', 'settings.key'])

/** Bytes of all calls together that may outlive their page: 64 KiB, by the Fetch standard (HTTP-network-or-cache fetch). */
const OUTLIVING = 65_536
let outliving = 0

/** How large a call may be that is to outlive the page, with no other under way. In the shell a page is waited for. */
export const MOST_OUTLIVING = bridge === undefined ? OUTLIVING : Number.POSITIVE_INFINITY

/** How large it may be beside those under way. */
export function roomToOutlive(): number {
  return MOST_OUTLIVING - outliving
}

async function overHttp(name: string, input: unknown, signal: AbortSignal | undefined): Promise<unknown> {
  // Only ever before the first answer: later calls must reach the network before the page is left.
  if (entering !== null) await entering
  const body = JSON.stringify(input)
  const bytes = KEEPING.has(name) && body.length <= OUTLIVING ? new TextEncoder().encode(body).length : Infinity
  const keepalive = bytes <= roomToOutlive()
  if (keepalive) outliving += bytes
  let holds = keepalive
  const leaveRoom = (): void => {
    if (holds) outliving -= bytes
    holds = false
  }
  // At once: what is sent in its place needs the room.
  signal?.addEventListener('abort', leaveRoom)
  try {
    const response = await fetch(`/api/${name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
      body,
      keepalive,
      signal: signal ?? null,
    })
    return response.status === 401 ? noKey() : await response.json()
  } finally {
    leaveRoom()
  }
}

/** Asks the services. Faults come back as data; a host that is gone is the fault `no-host`, a call given up by the signal `left`. */
export async function ask<Name extends CallName>(
  name: Name,
  input: Input<Name>,
  signal?: AbortSignal,
): Promise<Answer<Output<Name>>> {
  try {
    const answer = bridge === undefined ? await overHttp(name, input, signal) : await bridge.call(name, input)
    return answer as Answer<Output<Name>>
  } catch {
    return signal?.aborted === true ? left() : noHost()
  }
}

function noKey(): { readonly ok: false; readonly fault: Fault } {
  return { ok: false, fault: { reason: 'no-key', message: boardWords.trouble.noKeyWhat } }
}

function noHost(): { readonly ok: false; readonly fault: Fault } {
  return {
    ok: false,
    fault: {
      reason: 'no-host',
      message: 'The program behind this page does not answer. Start Standpoint again; everything saved is kept.',
    },
  }
}

/** Bytes with what is told of them, in the named header as JSON. */
export interface Bytes {
  readonly body: ArrayBuffer
  readonly facts: unknown
}

/** As many as the program cuts at once. A window of ground may wait for slow tiles: more of them would keep saves waiting. */
const windows = makeTurns(2)

/** Reads a route whose path a call told, secret like the tiles'. Given up by the signal it is the fault `left`. */
export async function readBytes(path: string, header: string, signal: AbortSignal): Promise<Answer<Bytes>> {
  try {
    return await windows.run(() => readOnce(path, header, signal), signal)
  } catch {
    return signal.aborted ? left() : noHost()
  }
}

async function readOnce(path: string, header: string, signal: AbortSignal): Promise<Answer<Bytes>> {
  const response = await fetch(path, { signal })
  if (!response.ok) return { ok: false, fault: await faultOf(response) }
  const facts: unknown = JSON.parse(response.headers.get(header) ?? '{}')
  return { ok: true, value: { body: await response.arrayBuffer(), facts } }
}

/** Sends a file to a route whose path a call told; the answer is that of a call. */
export async function sendBytes(path: string, body: Blob, signal: AbortSignal): Promise<Answer<unknown>> {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream', authorization: `Bearer ${token}` },
      body,
      signal,
    })
    if (response.ok) return (await response.json()) as Answer<unknown>
    return { ok: false, fault: await faultOf(response) }
  } catch {
    return signal.aborted ? left() : noHost()
  }
}

function left(): { readonly ok: false; readonly fault: Fault } {
  return { ok: false, fault: { reason: 'left', message: 'Cancelled.' } }
}

/** A refusal in JSON tells itself; one of the door is a line of text. */
async function faultOf(response: Response): Promise<Fault> {
  const text = await response.text()
  const fault = faultInJson(text)
  if (fault !== null) return fault
  return { reason: `status-${response.status}`, message: text === '' ? `Status ${response.status}.` : `${text}.` }
}

export function onMenuCommand(listener: (command: string) => void): void {
  bridge?.onCommand(listener)
}

export function onFileOpened(listener: (file: { name: string; text: string }) => void): void {
  bridge?.onOpenFile(listener)
}

/** What the shell runs before it closes the window: see `main/leaving.ts`. */
export function onLeaving(leave: () => Promise<boolean>): void {
  Object.assign(globalThis, { standpointLeave: leave })
}

export function inShell(): boolean {
  return bridge !== undefined
}
