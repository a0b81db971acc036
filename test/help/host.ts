/** Starts the built loopback host as a process of its own on a data folder of the test's, as `npm start` does. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { createInterface } from 'node:readline'

const ENTRY = resolve(import.meta.dirname, '../../out/web/web.js')

export interface RunningHost {
  /** An address for one window more, as the terminal shows it: the key in its fragment works once. */
  readonly address: () => Promise<string>
  readonly origin: string
  readonly token: string
  readonly pid: number
  /** Ends it as Ctrl+C would and waits. */
  readonly stop: () => Promise<void>
  /** Takes it away in the middle of whatever it does, as a power cut would. */
  readonly kill: () => Promise<void>
}

export async function startHost(
  dataFolder: string,
  environment: Readonly<Record<string, string>> = {},
): Promise<RunningHost> {
  const child = spawn(process.execPath, [ENTRY, '--no-open'], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...environment, STANDPOINT_DATA: dataFolder },
  })
  let complaints = ''
  child.stderr.on('data', (piece: Buffer) => {
    complaints += piece.toString()
  })
  const addresses = addressesOf(child)
  const next = async (): Promise<string> => {
    const { value } = await addresses.next()
    if (value === undefined) throw new Error(`The loopback host gave no address. ${complaints}`)
    return value
  }
  const first = await next()
  const { origin } = new URL(first)
  const token = await tokenFor(first)
  const end = async (signal: 'SIGTERM' | 'SIGKILL'): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return
    const gone = once(child, 'exit')
    child.kill(signal)
    await gone
  }
  return {
    address: next,
    origin,
    token,
    pid: child.pid ?? 0,
    stop: () => end('SIGTERM'),
    kill: () => end('SIGKILL'),
  }
}

/** The addresses it prints, one after the use of the one before. */
async function* addressesOf(child: ChildProcess): AsyncGenerator<string, undefined> {
  if (!child.stdout) return undefined
  for await (const line of createInterface({ input: child.stdout })) {
    const found = /http:\/\/127\.0\.0\.1:\d+\/#k=[\w-]+/.exec(line)
    if (found) yield found[0]
  }
  return undefined
}

/** Changes the key of an address for the token, as the page does. */
export async function tokenFor(address: string): Promise<string> {
  const { origin } = new URL(address)
  const answer = await fetch(`${origin}/enter`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin },
    body: JSON.stringify({ key: address.split('#k=')[1] ?? '' }),
  })
  if (!answer.ok) throw new Error(`The key in ${address} is not taken: ${await answer.text()}.`)
  return ((await answer.json()) as { token: string }).token
}

/** A data folder of the test's own; `remove` when done. */
export async function temporaryData(): Promise<{ readonly folder: string; readonly remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'standpoint-data-'))
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}
