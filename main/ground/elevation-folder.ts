/** Owns the folder of elevation files: what lies in it, taking one in after looking at it, taking one out. */
import { randomUUID } from 'node:crypto'
import { readdir, rename, rm, stat } from 'node:fs/promises'
import { extname, join } from 'node:path'
import type { FileAdded } from '#app/contract/ground.ts'
import { done, failed, type Result } from '#core/result.ts'
import { fileName } from '#main/files/file-name.ts'
import { ownFolder } from '#main/owner-alone.ts'
import { type GapNotes, readGapNotes } from './gap-notes.ts'
import { hgtCorner, hgtName, LARGEST_HGT } from './hgt.ts'
import { receive, unpackTo } from './intake.ts'
import { countGaps, type LocalFile, localId, openLocalFile, plainName } from './local-file.ts'

/** A file that lies in the folder, and what came of opening it. */
export interface Listed {
  readonly id: string
  readonly name: string
  readonly bytes: number
  readonly opened: Result<LocalFile>
  /** Null when it could not be counted. */
  readonly gaps: number | null
}

export interface ElevationFolder {
  /** As of the last look. */
  files(): Promise<readonly Listed[]>
  /** Looks again: files may be put there by hand. */
  look(): Promise<readonly Listed[]>
  add(name: string, body: AsyncIterable<Uint8Array>, signal: AbortSignal): Promise<Result<FileAdded>>
  remove(id: string): Promise<Result<{ readonly name: string }>>
  close(): Promise<void>
}

const READ_ENDINGS: ReadonlySet<string> = new Set(['.hgt', '.tif', '.tiff'])
const HALF_DAY = 43_200_000

export async function openElevationFolder(folder: string, forget: (id: string) => void): Promise<ElevationFolder> {
  const closing = new AbortController()
  const notes = await readGapNotes(join(folder, 'gaps.json'))
  let listed: readonly Listed[] = []
  let states = new Map<string, string>()
  let looking: Promise<readonly Listed[]> | null = null

  async function lookNow(): Promise<readonly Listed[]> {
    const found = await readFolder(folder)
    const next: Listed[] = []
    for (const { name, bytes, state } of found) {
      const known = listed.find((one) => one.name === name)
      if (known !== undefined && states.get(name) === state) {
        next.push(known)
        continue
      }
      // oxlint-disable-next-line no-await-in-loop -- one after the other: memory and disk are shared
      next.push(await listOne(join(folder, name), { name, bytes, state }, notes, closing.signal))
    }
    await letGo(listed.filter((one) => !next.includes(one)))
    listed = next
    states = new Map(found.map(({ name, state }) => [name, state]))
    return listed
  }

  async function letGo(gone: readonly Listed[]): Promise<void> {
    for (const { id, opened } of gone) {
      forget(`${id}|`)
      // oxlint-disable-next-line no-await-in-loop -- few
      if (opened.ok) await opened.value.close()
    }
  }

  async function look(): Promise<readonly Listed[]> {
    // Those who ask while another look is under way may have added what it does not see: a look of their own follows.
    const before = looking
    const own = (async () => {
      await before?.catch(() => undefined)
      return lookNow()
    })()
    looking = own
    return own
  }

  /** Looks at a received file and gives it its name; what cannot be used is deleted. */
  async function settle(received: string, name: string): Promise<Result<string>> {
    const settled = await settleUnder(folder, received, name, notes, closing.signal)
    if (!settled.ok) await rm(received, { force: true })
    return settled
  }

  async function addArchive(received: string, name: string): Promise<Result<FileAdded>> {
    const added: string[] = []
    const left: string[] = []
    const unpacked = await unpackTo(folder, received, LARGEST_HGT, async (entry, path) => {
      const settled = path === null ? tooLarge(entry) : await settle(path, entry)
      if (settled.ok) added.push(settled.value)
      else left.push(settled.fault.message)
    })
    await rm(received, { force: true })
    if (!unpacked.ok) left.push(`${name}: ${unpacked.fault.message}`)
    if (added.length > 0) return done({ added, notes: left })
    return failed('nothing-added', left[0] ?? `${name} holds no .hgt file. Choose an archive that does.`)
  }

  async function take(name: string, body: AsyncIterable<Uint8Array>, signal: AbortSignal): Promise<Result<FileAdded>> {
    const plain = plainName(name)
    const ending = extname(plain).toLowerCase()
    if (ending !== '.zip' && !READ_ENDINGS.has(ending))
      return failed(
        'unknown-kind',
        `${plain} is no elevation file that is read here. Choose .hgt files, .zip files with such in them, or GeoTIFFs (.tif).`,
      )
    ownFolder(folder)
    const received = await receive(folder, plain, body, AbortSignal.any([signal, closing.signal]))
    if (!received.ok) return received
    if (ending === '.zip') return addArchive(received.value, plain)
    const settled = await settle(received.value, plain)
    return settled.ok ? done({ added: [settled.value], notes: [] }) : settled
  }

  return {
    files: async () => (looking === null ? look() : looking),
    look,
    add: async (name, body, signal) => {
      const taken = await take(name, body, signal)
      if (taken.ok) await look()
      return taken
    },
    remove: async (id) => {
      const one = (await look()).find((file) => file.id === id)
      if (one === undefined) return failed('gone', 'That elevation file is there no more.')
      await letGo([one])
      listed = listed.filter((other) => other !== one)
      try {
        await rm(join(folder, one.name), { force: true })
      } catch {
        return failed(
          'not-removed',
          `${one.name} could not be deleted. Close what else uses it, or delete it in ${folder}.`,
        )
      } finally {
        await look()
      }
      return done({ name: one.name })
    },
    close: async () => {
      closing.abort()
      await looking?.catch(() => undefined)
      await letGo(listed)
      listed = []
    },
  }
}

interface Found {
  readonly name: string
  readonly bytes: number
  /** Size and time of the last change: another content has another one. */
  readonly state: string
}

async function readFolder(folder: string): Promise<readonly Found[]> {
  const names = await readdir(folder).catch((): string[] => [])
  const found: Found[] = []
  for (const name of names.toSorted()) {
    // oxlint-disable-next-line no-await-in-loop -- a look at each
    const about = await stat(join(folder, name)).catch(() => null)
    if (about === null || !about.isFile()) continue
    // What a crash left half received.
    // oxlint-disable-next-line no-await-in-loop -- as above
    if (name.startsWith('.incoming-') && Date.now() - about.mtimeMs > HALF_DAY)
      await rm(join(folder, name), { force: true })
    if (name.startsWith('.') || !READ_ENDINGS.has(extname(name).toLowerCase())) continue
    found.push({ name, bytes: about.size, state: `${about.size}-${about.mtimeMs}` })
  }
  return found
}

async function listOne(
  path: string,
  { name, bytes, state }: Found,
  notes: GapNotes,
  signal: AbortSignal,
): Promise<Listed> {
  const opened = await openLocalFile(path, name, bytes, state).catch(() =>
    failed('unreadable', `${name} cannot be opened. Look at its permissions.`),
  )
  const gaps = opened.ok ? await gapsOf(opened.value, state, notes, signal) : null
  return { id: localId(name), name, bytes, opened, gaps }
}

async function gapsOf(file: LocalFile, state: string, notes: GapNotes, signal: AbortSignal): Promise<number | null> {
  const noted = notes.get(file.name, state)
  if (noted !== null) return noted
  const counted = await countGaps(file, signal).catch(() => null)
  if (counted === null || counted.trouble !== null) return null
  await notes.put(file.name, state, counted.share)
  return counted.share
}

/** The name under which it then lies in the folder. */
async function settleUnder(
  folder: string,
  received: string,
  name: string,
  notes: GapNotes,
  signal: AbortSignal,
): Promise<Result<string>> {
  const { size } = await stat(received)
  const file = await openLocalFile(received, name, size, randomUUID())
  if (!file.ok) return file
  const gaps = await countGaps(file.value, signal).finally(() => file.value.close())
  if (gaps.trouble !== null) return failed('damaged', gaps.trouble)
  if (gaps.whole && gaps.share === 1)
    return failed('empty', `${name} holds no height at all, only gaps. Choose another file.`)
  const settled = settledName(name)
  const path = join(folder, settled)
  if (await exists(path))
    return failed('already-there', `${settled} is there already. Remove it first if this one is to take its place.`)
  await rename(received, path)
  const about = await stat(path)
  await notes.put(settled, `${about.size}-${about.mtimeMs}`, gaps.share)
  return done(settled)
}

/** The plain name of a degree for .hgt; otherwise the file's own, without what a file system may not like. */
function settledName(name: string): string {
  const corner = /\.hgt$/i.test(name) ? hgtCorner(name) : null
  if (corner?.ok === true) return `${hgtName(corner.value)}.hgt`
  const ending = extname(name)
  return fileName(name.slice(0, -ending.length), 'elevation', ending.toLowerCase())
}

function tooLarge(name: string): Result<never> {
  return failed('bad-size', `${name} is larger than any .hgt file.`)
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  )
}
