/** Whether Electron's binary is here, and the attempt to fetch it; never by `require('electron')`, which fetches on its own. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync } from 'node:fs'
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const PACKAGE = resolve(import.meta.dirname, '../node_modules/electron')
/** A download that has not moved for this long is taken for a missing network. */
const STALL_MS = 10_000
const LOOK_EVERY_MS = 500

/** The variable by which Electron's own package takes a system's Electron in the place of its own. */
const OVERRIDE = 'ELECTRON_OVERRIDE_DIST_PATH'

const USUAL: Readonly<Record<string, string>> = {
  win32: 'electron.exe',
  darwin: 'Electron.app/Contents/MacOS/Electron',
}

/** Path of Electron's executable, or null when it is not installed. */
export function electronBinary(
  folder: string = PACKAGE,
  environment: Readonly<Record<string, string | undefined>> = process.env,
): string | null {
  const other = environment[OVERRIDE]
  if (other !== undefined && other !== '') {
    const binary = join(other, USUAL[process.platform] ?? 'electron')
    return existsSync(binary) ? binary : null
  }
  const pathFile = join(folder, 'path.txt')
  if (!existsSync(pathFile)) return null
  const binary = join(folder, 'dist', readFileSync(pathFile, 'utf8').trim())
  return existsSync(binary) ? binary : null
}

export interface FetchOptions {
  readonly folder?: string
  readonly stallMs?: number
  readonly lookEveryMs?: number
}

/** Runs Electron's own install step and watches it grow; stops it when nothing arrives. */
export async function fetchElectron(say: (line: string) => void, options: FetchOptions = {}): Promise<string | null> {
  const { folder = PACKAGE, stallMs = STALL_MS, lookEveryMs = LOOK_EVERY_MS } = options
  const arriving = await mkdtemp(join(tmpdir(), 'standpoint-electron-'))
  const child = spawn(process.execPath, [join(folder, 'install.js')], {
    stdio: 'ignore',
    env: { ...process.env, TMPDIR: arriving, TEMP: arriving, TMP: arriving },
  })
  const ended = once(child, 'exit').then(
    () => true,
    () => true,
  )
  let size = 0
  let movedAt = Date.now()
  while (!(await Promise.race([ended, pause(lookEveryMs)]))) {
    const now = (await sizeOf(arriving)) + (await sizeOf(join(folder, 'dist')))
    if (now > size) {
      if (size === 0) say('Fetching Electron (once, about 120 MB) …')
      size = now
      movedAt = Date.now()
    } else if (Date.now() - movedAt > stallMs) child.kill()
  }
  await rm(arriving, { recursive: true, force: true })
  return electronBinary(folder)
}

function pause(milliseconds: number): Promise<false> {
  const { promise, resolve: done } = Promise.withResolvers<false>()
  setTimeout(() => done(false), milliseconds)
  return promise
}

async function sizeOf(path: string): Promise<number> {
  const about = await stat(path).catch(() => null)
  if (about === null) return 0
  if (!about.isDirectory()) return about.size
  const entries = await readdir(path).catch(() => [])
  const sizes = await Promise.all(entries.map((entry) => sizeOf(join(path, entry))))
  return sizes.reduce((sum, size) => sum + size, 0)
}
