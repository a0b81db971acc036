/** Notices that another program wrote over the library's file while it is open here, before anything more is acknowledged. */
import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs'
import { beginsLibrary, pageSizeOf } from './file-header.ts'

/** `replaced`: another file stands under the name, or none. `overwritten`: the same file holds what SQLite never wrote. */
export type FileChange = 'none' | 'replaced' | 'overwritten'

export interface FileWatch {
  /** Cheap while nothing was written to the file itself: one look at its size and time. */
  look(): FileChange
  /** To be called once SQLite has closed the file, and not before. To whoever still looks it is another file from then on. */
  close(): void
}

/** Pages of our libraries, SQLite's own default. */
const PAGE = 4_096
const LOG_HEADER = 32
const FRAME_HEADER = 24
/** Looks before a file counts as written over, and with the pauses between them a tenth of a second. */
const LOOKS = 3

export const NO_CHANGE: FileWatch = { look: () => 'none', close: () => undefined }

interface Seen {
  readonly identity: string
  readonly bytes: bigint
  readonly changedAt: bigint
  readonly firstPage: Buffer
  /** The log's header: SQLite draws new numbers into it each time the log begins again. */
  readonly log: string
}

/**
 * To be called once SQLite has the file open in its way. Under a write-ahead log the file itself changes only when the log is copied
 * into it, by whichever window. So a first page that is neither the one seen last nor any that stands in the log is not
 * SQLite's, unless the log has begun again since.
 *
 * The descriptor stays open as long as SQLite's own: closing any descriptor of a file drops all the locks this process
 * holds on it, SQLite's too (https://sqlite.org/howtocorrupt.html, section 2.2).
 */
export function watchFile(path: string): FileWatch {
  const file = opened(path)
  if (file === null) return NO_CHANGE
  let seen = see(path, file)
  let closed = false
  return {
    look: () => {
      // Its number may be another file's by now.
      if (closed) return 'replaced'
      const now = see(path, file, seen)
      if (now === null || seen === null || now.identity !== seen.identity) return 'replaced'
      if (isForeign(now, seen, path)) return 'overwritten'
      seen = now
      return 'none'
    },
    close: () => {
      if (closed) return
      closed = true
      closeSync(file)
    },
  }
}

/** Another window's copying of the log may be half seen: what looks foreign has to look so for a while. */
export async function settledChange(
  watch: FileWatch,
  pause: (milliseconds: number) => Promise<void>,
): Promise<FileChange> {
  for (let look = 1; ; look += 1) {
    const change = watch.look()
    if (change !== 'overwritten' || look === LOOKS) return change
    // oxlint-disable-next-line no-await-in-loop
    await pause(50)
  }
}

function opened(path: string): number | null {
  try {
    return openSync(path, 'r')
  } catch {
    return null
  }
}

/** Null when the file is gone or cannot be reached under its name. */
function see(path: string, file: number, before: Seen | null = null): Seen | null {
  try {
    const about = statSync(path, { bigint: true })
    const untouched = before !== null && about.mtimeNs === before.changedAt && about.size === before.bytes
    return {
      identity: `${about.dev}:${about.ino}`,
      bytes: about.size,
      changedAt: about.mtimeNs,
      firstPage: untouched ? before.firstPage : firstPage(file),
      log: logHeader(path),
    }
  } catch {
    return null
  }
}

function isForeign(now: Seen, seen: Seen, path: string): boolean {
  if (now.firstPage.equals(seen.firstPage)) return now.bytes < seen.bytes
  if (!isFirstPage(now.firstPage)) return true
  if (now.log !== seen.log) return false
  return !standsInLog(path, now.firstPage)
}

/** The first page of a library of ours, whole. */
function isFirstPage(page: Buffer): boolean {
  return page.length === PAGE && beginsLibrary(page) && pageSizeOf(page) === PAGE
}

function firstPage(file: number): Buffer {
  const page = Buffer.alloc(PAGE)
  return page.subarray(0, readSync(file, page, 0, PAGE, 0))
}

/** The log bears no locks, so it may be opened and closed. */
function logHeader(path: string): string {
  try {
    const file = openSync(`${path}-wal`, 'r')
    try {
      const head = Buffer.alloc(LOG_HEADER)
      return head.toString('latin1', 0, readSync(file, head, 0, LOG_HEADER, 0))
    } finally {
      closeSync(file)
    }
  } catch {
    return ''
  }
}

/** By the format of the write-ahead log: after its header, frames of a header whose first number is the page's, and the page. */
function standsInLog(path: string, page: Buffer): boolean {
  const log = readFileSync(`${path}-wal`)
  for (let at = LOG_HEADER; at + FRAME_HEADER + PAGE <= log.length; at += FRAME_HEADER + PAGE) {
    const body = at + FRAME_HEADER
    if (log.readUInt32BE(at) === 1 && page.equals(log.subarray(body, body + PAGE))) return true
  }
  return false
}
