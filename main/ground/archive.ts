/** Owns archives: the files of an ending in a .zip, unpacked onto the disk piece by piece with memory and disk bounded. */
import { closeSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { Unzip, type UnzipFile, UnzipInflate } from 'fflate'
import { failed, type Fault } from '#core/result.ts'

export interface UnpackedEntry {
  readonly name: string
  /** Null for an entry larger than it may be. */
  readonly path: string | null
}

export interface Unpacked {
  /** Those that are whole. */
  readonly entries: readonly UnpackedEntry[]
  /** Why the rest is missing; null when nothing is. */
  readonly fault: Fault<'broken-archive' | 'too-much' | 'disk-full'> | null
}

export interface UnpackWish {
  readonly archive: string
  readonly folder: string
  /** What the names of unpacked entries begin with. */
  readonly prefix: string
  readonly ending: RegExp
  /** Bytes of one entry, and of all of them together. */
  readonly largest: number
  readonly most: number
}

/** Deflate makes at most 1,032 bytes of one: a piece unpacks to 8 MB, whatever it holds. */
const PIECE = 8_192
const MOST_ENTRIES = 2_000

/** `alive` is told after each piece. What is not whole is gone again when this ends. */
export async function unpack(wish: UnpackWish, alive: () => void): Promise<Unpacked> {
  const job = new Unpacking(wish)
  const file = await open(wish.archive, 'r')
  try {
    await job.run(file, alive)
  } finally {
    job.end()
    await file.close()
  }
  return { entries: job.entries, fault: job.fault }
}

class Unpacking {
  readonly entries: UnpackedEntry[] = []
  fault: Unpacked['fault'] = null
  readonly #wish: UnpackWish
  /** Half-written entries by where they lie. */
  readonly #open = new Map<string, number>()
  #count = 0
  #bytes = 0

  constructor(wish: UnpackWish) {
    this.#wish = wish
  }

  async run(file: FileHandle, alive: () => void): Promise<void> {
    const unzip = new Unzip((entry) => this.#take(entry))
    unzip.register(UnzipInflate)
    const piece = Buffer.alloc(PIECE)
    for (let at = 0, read = 1; read > 0 && this.fault === null; at += read) {
      // oxlint-disable-next-line no-await-in-loop -- in order
      read = (await file.read(piece, 0, PIECE, at)).bytesRead
      try {
        // The library may keep what it was given until more comes.
        unzip.push(new Uint8Array(piece.subarray(0, read)), read === 0)
      } catch {
        this.#fail('broken-archive')
      }
      alive()
    }
    if (this.fault === null && this.#open.size > 0) this.#fail('broken-archive')
  }

  end(): void {
    for (const path of this.#open.keys()) this.#drop(path)
  }

  #take(entry: UnzipFile): void {
    // A Mac adds a shadow of each file, its name begun by a dot.
    const name = basename(entry.name.replaceAll('\\', '/'))
    if (!this.#wish.ending.test(name) || name.startsWith('.')) return
    if ((this.#count += 1) > MOST_ENTRIES) return this.#fail('too-much')
    const path = join(this.#wish.folder, `${this.#wish.prefix}-${this.#count}`)
    let size = 0
    entry.ondata = (error, part, last) => {
      if (error !== null) return this.#fail('broken-archive')
      if (!this.#open.has(path)) return undefined
      size += part.length
      this.#bytes += part.length
      if (size > this.#wish.largest) {
        this.#drop(path)
        this.entries.push({ name, path: null })
        entry.terminate()
        return undefined
      }
      if (this.#bytes > this.#wish.most) return this.#fail('too-much')
      this.#write(path, part)
      if (last && this.#open.has(path)) this.#finish(name, path)
      return undefined
    }
    try {
      this.#open.set(path, openSync(path, 'wx', 0o600))
      entry.start()
    } catch {
      this.#fail('broken-archive')
    }
  }

  #write(path: string, part: Uint8Array): void {
    try {
      writeFileSync(this.#open.get(path) ?? -1, part)
    } catch (error) {
      const full = error instanceof Error && 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT')
      this.#fail(full ? 'disk-full' : 'broken-archive')
    }
  }

  #finish(name: string, path: string): void {
    closeSync(this.#open.get(path) ?? -1)
    this.#open.delete(path)
    this.entries.push({ name, path })
  }

  #drop(path: string): void {
    closeSync(this.#open.get(path) ?? -1)
    this.#open.delete(path)
    rmSync(path, { force: true })
  }

  #fail(reason: keyof typeof SENTENCES): void {
    this.fault ??= failed(reason, SENTENCES[reason]).fault
  }
}

const SENTENCES = {
  'broken-archive': 'The archive was cut short or is damaged. Fetch it again.',
  'too-much': 'The archive holds more than 4 GB or 2,000 files. Unpack it yourself and add the squares you need.',
  'disk-full': 'There is no room on the disk for what it holds. Make some and add it again.',
} as const
