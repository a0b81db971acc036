/** Owns archives: the .hgt files in a .zip, unpacked one after the other with memory bounded by one of them. */
import type { FileHandle } from 'node:fs/promises'
import { basename } from 'node:path'
import { Unzip, type UnzipFile, UnzipInflate } from 'fflate'
import { failed, type Result } from '#core/result.ts'

export interface Unpacked {
  readonly name: string
  /** Null for an entry larger than it may be. */
  readonly bytes: Uint8Array | null
}

const PIECE = 1_000_000

/** Tells of each entry whose name ends so, as it is complete; the next is read when that is done with. */
export async function unpack(
  file: FileHandle,
  ending: RegExp,
  largest: number,
  each: (entry: Unpacked) => Promise<void>,
): Promise<Result<null, 'broken-archive'>> {
  const complete: Unpacked[] = []
  let broken = false
  let open = 0
  const unzip = new Unzip((entry) => {
    // A Mac adds a shadow of each file, its name begun by a dot.
    const name = basename(entry.name.replaceAll('\\', '/'))
    if (!ending.test(name) || name.startsWith('.')) return
    open += 1
    gather(entry, largest, (bytes, fault) => {
      open -= 1
      if (fault) broken = true
      else complete.push({ name, bytes })
    })
  })
  unzip.register(UnzipInflate)
  const piece = Buffer.alloc(PIECE)
  for (let at = 0, read = 1; read > 0 && !broken; at += read) {
    // oxlint-disable-next-line no-await-in-loop -- in order
    read = (await file.read(piece, 0, PIECE, at)).bytesRead
    // The library may keep what it was given until more comes.
    if (!push(unzip, new Uint8Array(piece.subarray(0, read)), read === 0)) broken = true
    // oxlint-disable-next-line no-await-in-loop -- in order
    for (const entry of complete.splice(0)) await each(entry)
  }
  return broken || open > 0
    ? failed('broken-archive', 'The archive was cut short or is damaged. Fetch it again.')
    : { ok: true, value: null }
}

function push(unzip: Unzip, bytes: Uint8Array, last: boolean): boolean {
  try {
    unzip.push(bytes, last)
    return true
  } catch {
    return false
  }
}

function gather(entry: UnzipFile, largest: number, end: (bytes: Uint8Array | null, fault: boolean) => void): void {
  const parts: Uint8Array[] = []
  let size = 0
  let over = false
  const finish = (bytes: Uint8Array | null, fault: boolean): void => {
    if (!over) end(bytes, fault)
    over = true
  }
  entry.ondata = (error, part, last) => {
    if (over) return
    if (error !== null) return finish(null, true)
    size += part.length
    if (size > largest) {
      finish(null, false)
      entry.terminate()
      return
    }
    parts.push(part)
    if (last) finish(new Uint8Array(Buffer.concat(parts)), false)
  }
  try {
    entry.start()
  } catch {
    finish(null, true)
  }
}
