/** Owns archives: the files of an ending in a .zip, unpacked onto the disk piece by piece with memory and disk bounded. */
import { closeSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { Unzip, type UnzipDecoderConstructor, type UnzipFile, UnzipInflate, UnzipPassThrough } from 'fflate'
import { failed, type Fault } from '#core/result.ts'
import { isDiskFull } from '#main/disk-full.ts'

export interface UnpackedEntry {
  readonly name: string
  /** Null for an entry larger than it may be. */
  readonly path: string | null
}

export interface Unpacked {
  /** Those that are whole. */
  readonly entries: readonly UnpackedEntry[]
  /** Why the rest is missing; null when nothing is. */
  readonly fault: Fault<'broken-archive' | 'too-much' | 'disk-full' | 'not-written'> | null
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

/** Bytes read at a time. */
const BLOCK = 1_048_576
/** Bytes unpacked at a time. Deflate makes at most 1,032 bytes of one: a piece unpacks to 8 MB, whatever it holds. */
const PIECE = 8_192
/** Milliseconds between two signs of life. */
const ALIVE_EVERY = 1_000
const MOST_ENTRIES = 2_000

/** `alive` is told once a second. What is not whole is gone again when this ends. */
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
  /** Half-written entries by where they lie; null for one that is closed, whose number may be another file's by now. */
  readonly #open = new Map<string, number | null>()
  #count = 0
  #bytes = 0

  constructor(wish: UnpackWish) {
    this.#wish = wish
  }

  async run(file: FileHandle, alive: () => void): Promise<void> {
    const unzip = new Unzip((entry) => this.#take(unzip, entry))
    let lastSign = performance.now()
    for (let at = 0, read = 1; read > 0 && this.fault === null; at += read) {
      // A new one each time: the library may keep what it was given until more comes.
      const block = new Uint8Array(BLOCK)
      // oxlint-disable-next-line no-await-in-loop -- in order
      read = (await file.read(block, 0, BLOCK, at)).bytesRead
      for (let from = 0; from < Math.max(1, read) && this.fault === null; from += PIECE) {
        this.#unpackPiece(unzip, block.subarray(from, Math.min(from + PIECE, read)), read === 0)
        if (performance.now() - lastSign < ALIVE_EVERY) continue
        lastSign = performance.now()
        alive()
      }
    }
    if (this.fault === null && this.#open.size > 0) this.#fail('broken-archive')
  }

  #unpackPiece(unzip: Unzip, piece: Uint8Array, last: boolean): void {
    try {
      unzip.push(piece, last)
    } catch {
      this.#fail('broken-archive')
    }
  }

  end(): void {
    for (const path of this.#open.keys()) this.#onDisk(() => this.#drop(path))
  }

  #take(unzip: Unzip, entry: UnzipFile): void {
    // A Mac adds a shadow of each file, its name begun by a dot.
    const name = basename(entry.name.replaceAll('\\', '/'))
    if (!this.#wish.ending.test(name) || name.startsWith('.')) return pass(unzip, entry)
    for (const decoder of [UnzipPassThrough, UnzipInflate]) unzip.register(decoder)
    if ((this.#count += 1) > MOST_ENTRIES) return this.#fail('too-much')
    const path = join(this.#wish.folder, `${this.#wish.prefix}-${this.#count}`)
    let size = 0
    entry.ondata = (error, part, last) => {
      if (error !== null) return this.#fail('broken-archive')
      size += part.length
      // Of what is left out, too: it may go on and on, and is unpacked all the same.
      this.#bytes += part.length
      if (this.#bytes > this.#wish.most) return this.#fail('too-much')
      if (!this.#open.has(path)) return undefined
      if (size > this.#wish.largest) {
        this.#onDisk(() => this.#drop(path))
        this.entries.push({ name, path: null })
        entry.terminate()
        return undefined
      }
      this.#onDisk(() => {
        writeFileSync(this.#open.get(path) ?? -1, part)
        if (last) this.#finish(name, path)
      })
      return undefined
    }
    this.#onDisk(() => this.#open.set(path, openSync(path, 'wx', 0o600)))
    if (this.#open.has(path)) entry.start()
  }

  /** What goes wrong on the disk is no fault of the archive's. */
  #onDisk(work: () => void): void {
    try {
      work()
    } catch (error) {
      this.#fail(isDiskFull(error) ? 'disk-full' : 'not-written')
    }
  }

  #close(path: string): void {
    const file = this.#open.get(path) ?? null
    this.#open.set(path, null)
    if (file !== null) closeSync(file)
  }

  #finish(name: string, path: string): void {
    this.#close(path)
    this.#open.delete(path)
    this.entries.push({ name, path })
  }

  #drop(path: string): void {
    try {
      this.#close(path)
    } finally {
      this.#open.delete(path)
      rmSync(path, { force: true })
    }
  }

  #fail(reason: keyof typeof SENTENCES): void {
    this.fault ??= failed(reason, SENTENCES[reason]).fault
  }
}

/** Lets go of what nobody wants as it comes: of an entry that is not begun the library would keep everything, however large it is. */
function pass(unzip: Unzip, entry: UnzipFile): void {
  unzip.register(droppingAll(entry.compression))
  entry.ondata = () => undefined
  entry.start()
}

function droppingAll(method: number): UnzipDecoderConstructor {
  return class {
    static readonly compression = method
    readonly ondata = (): void => undefined
    readonly push = (): void => undefined
  }
}

const SENTENCES = {
  'broken-archive': 'The archive was cut short or is damaged. Download it again.',
  'too-much': 'The archive holds more than 4 GB or 2,000 files. Unpack it yourself and add the squares you need.',
  'not-written':
    'What it holds could not be written to the folder of elevation files. Look at its permissions and add it again.',
  'disk-full': 'There is no room on the disk for what it holds. Make some and add it again.',
} as const
