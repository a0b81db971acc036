/** Starts on a data folder in which something cannot be used: each ends in a sentence, or goes on; none shows a stack. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmod, chown, cp, lstat, mkdir, readdir, rm, symlink, writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { temporaryData } from '#test/help/host.ts'

const ENTRY = resolve(import.meta.dirname, '../../out/web/web.js')
const NOBODY = 65_534

/** Starts the loopback host as an ordinary user until it tells its address or ends. */
async function started(
  folder: string,
): Promise<{ readonly said: string; readonly complained: string; readonly up: boolean }> {
  const as = process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {}
  const child = spawn(process.execPath, [ENTRY, '--no-open'], {
    ...as,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, STANDPOINT_DATA: folder },
  })
  let [said, complained, up] = ['', '', false]
  child.stderr.on('data', (piece: Buffer) => {
    complained += piece.toString()
  })
  child.stdout.on('data', (piece: Buffer) => {
    said += piece.toString()
    if (!said.includes('#k=')) return
    up = true
    child.kill('SIGTERM')
  })
  await once(child, 'close')
  return { said, complained, up }
}

async function ownedByNobody(place: string): Promise<void> {
  if (process.getuid?.() !== 0) return
  await chown(place, NOBODY, NOBODY)
  for (const entry of await readdir(place, { withFileTypes: true })) {
    const path = join(place, entry.name)
    // oxlint-disable-next-line no-await-in-loop
    if (entry.isDirectory()) await ownedByNobody(path)
    // oxlint-disable-next-line no-await-in-loop
    else if (!entry.isSymbolicLink()) await chown(path, NOBODY, NOBODY)
  }
}

let sample: Awaited<ReturnType<typeof temporaryData>>

beforeAll(async () => {
  sample = await temporaryData()
  await chmod(sample.folder, 0o755)
  await ownedByNobody(sample.folder)
  if (!(await started(sample.folder)).up) throw new Error('An untouched data folder does not come up.')
})
afterAll(() => sample.remove())

/** A data folder that a start before has filled. */
async function filled(): Promise<string> {
  const data = await temporaryData()
  onTestFinished(async () => {
    await chmod(data.folder, 0o700)
    await data.remove()
  })
  await cp(sample.folder, data.folder, { recursive: true })
  await chmod(data.folder, 0o755)
  await ownedByNobody(data.folder)
  return data.folder
}

type Spoil = (path: string) => Promise<unknown>

const UNREADABLE: readonly [string, Spoil] = ['unreadable', (path) => chmod(path, 0)]
const DANGLING: readonly [string, Spoil] = ['a link that leads nowhere', (path) => symlink('/nowhere/at/all', path)]
const A_FILE: readonly [string, Spoil] = ['a file', (path) => writeFile(path, 'in its place')]
const A_FOLDER: readonly [string, Spoil] = ['a folder', (path) => mkdir(path)]

const FOLDERS = ['library', 'library/backups', 'logs', 'tiles', 'elevation']
const FILES = ['library/library.sqlite', 'tiles/tiles.sqlite', 'keys.json']
const CASES = [
  ...FOLDERS.flatMap((name) => [UNREADABLE, DANGLING, A_FILE].map(([how, spoil]) => [name, how, spoil] as const)),
  ...FILES.flatMap((name) => [UNREADABLE, DANGLING, A_FOLDER].map(([how, spoil]) => [name, how, spoil] as const)),
]

function isInWords({ complained, up }: Awaited<ReturnType<typeof started>>): void {
  expect(complained).not.toMatch(/\n\s+at /)
  expect(complained).toMatch(up ? /^$/ : /^Standpoint could not start\. .*\.\n$/)
}

describe.skipIf(process.platform === 'win32')('a start', () => {
  test('with an unreadable data folder ends in words', async () => {
    const folder = await filled()
    await chmod(folder, 0)
    const outcome = await started(folder)
    expect(outcome.up).toBe(false)
    isInWords(outcome)
  })

  test.each(CASES)('with %s being %s goes on, or ends in words', async (name, how, spoil) => {
    const folder = await filled()
    const path = join(folder, name)
    const there = (await lstat(path).catch(() => null)) !== null
    if (how === UNREADABLE[0] && !there) await mkdir(path)
    if (how !== UNREADABLE[0]) await rm(path, { recursive: true, force: true })
    await spoil(path)
    if (how === A_FILE[0] || how === A_FOLDER[0]) await ownedByNobody(folder)
    const outcome = await started(folder)
    if (how === UNREADABLE[0]) await chmod(path, 0o700)
    isInWords(outcome)
  })
})
