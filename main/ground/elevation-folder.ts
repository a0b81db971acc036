/** Owns the folder of elevation files: what lies in it, taking one in after looking at it, taking one out. */
import { randomUUID } from 'node:crypto'
import { readdir, rm, stat } from 'node:fs/promises'
import { basename, extname, join } from 'node:path'
import { type FileAdded } from '#app/contract/ground.ts'
import { done, failed, type Result } from '#core/result.ts'
import { DAY } from '#core/time/duration.ts'
import { type ElevationFile } from './elevation-facts.ts'
import { type FileReader, localId } from './file-reader.ts'
import { ownFolder } from '#main/owner-alone.ts'
import { type GapNotes, readGapNotes } from './gap-notes.ts'
import { INCOMING, takeInFile } from './take-in-file.ts'
import type { FileRef } from './local-file.ts'
import { settleFile } from './settle-file.ts'

/** A file that lies in the folder, and what came of opening it. */
export interface Listed {
  readonly id: string
  readonly name: string
  readonly bytes: number
  readonly opened: Result<ElevationFile>
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
const HALF_DAY = DAY / 2

export async function openElevationFolder(
  folder: string,
  reader: FileReader,
  forget: (id: string) => void,
): Promise<ElevationFolder> {
  const closing = new AbortController()
  const notes = await readGapNotes(join(folder, 'gaps.json'))
  const settling = { folder, reader, notes }
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
      next.push(await listOne({ path: join(folder, name), name, bytes, state }, reader, notes))
    }
    await letGo(listed.filter((one) => !next.includes(one)))
    listed = next
    states = new Map(found.map(({ name, state }) => [name, state]))
    return listed
  }

  async function letGo(gone: readonly Listed[]): Promise<void> {
    for (const { id, name } of gone) {
      forget(`${id}|`)
      // oxlint-disable-next-line no-await-in-loop -- few
      await reader.forget(join(folder, name))
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

  async function addArchive(received: string, name: string): Promise<Result<FileAdded>> {
    const added: string[] = []
    const left: string[] = []
    const prefix = `${INCOMING}${randomUUID()}`
    const unpacked = await reader.unpack(received, name, { folder, prefix })
    await rm(received, { force: true })
    if (!unpacked.ok) await clear(folder, prefix)
    const { entries, fault } = unpacked.ok ? unpacked.value : { entries: [], fault: unpacked.fault }
    for (const { name: entry, path } of entries) {
      // oxlint-disable-next-line no-await-in-loop -- one after the other: they share the disk
      const settled = path === null ? tooLarge(entry) : await settleFile(settling, path, entry)
      if (settled.ok) added.push(settled.value)
      else left.push(settled.fault.message)
    }
    if (fault !== null) left.push(unpacked.ok ? `${name}: ${fault.message}` : fault.message)
    if (added.length > 0) return done({ added, notes: left })
    return failed('nothing-added', left[0] ?? `${name} holds no .hgt file. Choose an archive that does.`)
  }

  async function take(name: string, body: AsyncIterable<Uint8Array>, signal: AbortSignal): Promise<Result<FileAdded>> {
    const plain = plainName(name)
    const ending = extname(plain).toLowerCase()
    if (ending !== '.zip' && !READ_ENDINGS.has(ending))
      return failed(
        'unknown-kind',
        `${plain} is not an elevation file that can be read here. Choose .hgt files, .zip files with such in them, or GeoTIFFs (.tif).`,
      )
    ownFolder(folder)
    const received = await takeInFile(folder, plain, body, AbortSignal.any([signal, closing.signal]))
    if (!received.ok) return received
    if (ending === '.zip') return addArchive(received.value, plain)
    const settled = await settleFile(settling, received.value, plain)
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
      if (one === undefined) return failed('gone', 'That elevation file is no longer there.')
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
    if (name.startsWith(INCOMING) && Date.now() - about.mtimeMs > HALF_DAY)
      await rm(join(folder, name), { force: true })
    if (name.startsWith('.') || !READ_ENDINGS.has(extname(name).toLowerCase())) continue
    found.push({ name, bytes: about.size, state: `${about.size}-${about.mtimeMs}` })
  }
  return found
}

async function listOne(ref: FileRef, reader: FileReader, notes: GapNotes): Promise<Listed> {
  const { name, bytes, state } = ref
  const listed = { id: localId(name), name, bytes }
  const opened = await reader.look(ref)
  const noted = notes.get(name, state)
  if (!opened.ok || noted !== null) return { ...listed, opened, gaps: opened.ok ? noted : null }
  const counted = await reader.countGaps(ref)
  // What can't be read to its end is not asked for samples either.
  if (!counted.ok) return { ...listed, opened: counted, gaps: null }
  const { unlikely, trouble, share } = counted.value
  if (unlikely !== null) return { ...listed, opened: failed('not-elevation', unlikely), gaps: null }
  // One that is damaged in part is of use where it is not.
  if (trouble !== null) return { ...listed, opened, gaps: null }
  await notes.put(name, state, share)
  return { ...listed, opened, gaps: share }
}

function tooLarge(name: string): Result<never> {
  return failed('bad-size', `${name} is larger than any .hgt file.`)
}

/** Takes away what a thread that was ended left half unpacked. */
async function clear(folder: string, prefix: string): Promise<void> {
  const left = (await readdir(folder)).filter((name) => name.startsWith(prefix))
  await Promise.all(left.map(async (name) => rm(join(folder, name), { force: true })))
}

/** The file's name as it is told, without folders. */
function plainName(name: string): string {
  return basename(name.replaceAll('\\', '/'))
}
