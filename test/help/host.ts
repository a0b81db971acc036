/** Starts the built loopback host as a process of its own on a data folder of the test's, as `npm start` does. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { createInterface } from 'node:readline'

const ENTRY = resolve(import.meta.dirname, '../../out/web/web.js')

export interface RunningHost {
  /** The address with the token in its fragment. */
  readonly url: string
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
  const url = await addressOf(child)
  if (url === null) throw new Error(`The loopback host did not start. ${complaints}`)
  const origin = new URL(url).origin
  const end = async (signal: 'SIGTERM' | 'SIGKILL'): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return
    const gone = once(child, 'exit')
    child.kill(signal)
    await gone
  }
  return {
    url,
    origin,
    token: url.split('#t=')[1] ?? '',
    pid: child.pid ?? 0,
    stop: () => end('SIGTERM'),
    kill: () => end('SIGKILL'),
  }
}

/** The address it prints, or null when it ends without one. */
async function addressOf(child: ChildProcess): Promise<string | null> {
  if (!child.stdout) return null
  for await (const line of createInterface({ input: child.stdout })) {
    const found = /http:\/\/127\.0\.0\.1:\d+\/#t=[\w-]+/.exec(line)
    if (found) {
      child.stdout.resume()
      return found[0]
    }
  }
  return null
}

/** A data folder of the test's own; `remove` when done. */
export async function temporaryData(): Promise<{ readonly folder: string; readonly remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'standpoint-data-'))
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}
