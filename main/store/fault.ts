/** What can go wrong with the library file, and SQLite's many codes folded into those few reasons. */
import type { Fault, Result } from '#core/result.ts'
import { isDiskFull } from '#main/disk-full.ts'
import { sqliteCode } from './handle.ts'

export type StoreReason =
  | 'changed-elsewhere'
  | 'gone'
  | 'invalid'
  | 'busy'
  | 'read-only'
  | 'disk-full'
  | 'damaged'
  | 'newer'
  | 'unavailable'

export type StoreFault = Fault<StoreReason>

/** Thrown inside a write transaction to roll it back with a fault of ours. */
export class Refused extends Error {
  readonly fault: StoreFault

  constructor(reason: StoreReason, message: string) {
    super(message)
    this.fault = { reason, message }
  }
}

const SENTENCES: Readonly<Partial<Record<StoreReason, string>>> = {
  busy: 'The library is being written by another window and did not come free. Nothing was changed; try again.',
  'read-only':
    'The library file may only be read here. Nothing was saved; allow writing to its folder and start again.',
  'disk-full': 'The disk with the library is full. Nothing of this change was saved; make room and do it again.',
  damaged: 'The library file is damaged. Nothing was changed; restore a backup.',
  invalid: 'The library refused a value out of its range. Nothing was saved.',
  unavailable:
    'The library file cannot be reached. Nothing was saved; check the disk and its folder, then start again.',
}

/** The fault that an error from the store stands for; null when it is a bug of ours and must go on as an exception. */
export function faultOf(error: unknown): StoreFault | null {
  if (error instanceof Refused) return error.fault
  const reason = reasonOf(error)
  return reason === null ? null : { reason, message: SENTENCES[reason] ?? reason }
}

/** Runs work on the store; what the outside world did wrong comes back as a fault, bugs are thrown on. */
export function resultOf<Value>(work: () => Value): Result<Value, StoreReason> {
  try {
    return { ok: true, value: work() }
  } catch (error) {
    return faultOrThrow(error)
  }
}

/** The same for work that waits. */
export async function guardedLater<Value>(work: () => Value | Promise<Value>): Promise<Result<Value, StoreReason>> {
  try {
    return { ok: true, value: await work() }
  } catch (error) {
    return faultOrThrow(error)
  }
}

function faultOrThrow(error: unknown): { readonly ok: false; readonly fault: StoreFault } {
  const fault = faultOf(error)
  if (fault === null) throw error
  return { ok: false, fault }
}

function reasonOf(error: unknown): StoreReason | null {
  const code = sqliteCode(error)
  if (code === null) return systemReason(error)
  if (code === 'SQLITE_FULL') return 'disk-full'
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return 'busy'
  if (code.startsWith('SQLITE_READONLY') || code === 'SQLITE_PERM' || code === 'SQLITE_AUTH') return 'read-only'
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB' || code === 'SQLITE_FORMAT') return 'damaged'
  if (code.startsWith('SQLITE_CONSTRAINT')) return 'invalid'
  if (code.startsWith('SQLITE_IOERR') || code.startsWith('SQLITE_CANTOPEN')) return 'unavailable'
  return null
}

/** Errors of the file system itself, met while copying and renaming. */
function systemReason(error: unknown): StoreReason | null {
  if (isDiskFull(error)) return 'disk-full'
  if (!(error instanceof Error) || !('code' in error)) return null
  if (error.code === 'EROFS' || error.code === 'EACCES' || error.code === 'EPERM') return 'read-only'
  if (error.code === 'EBUSY') return 'busy'
  return OUT_OF_REACH.has(String(error.code)) ? 'unavailable' : null
}

const OUT_OF_REACH: ReadonlySet<string> = new Set([
  'ENOENT',
  'EIO',
  'ENOTDIR',
  'EISDIR',
  'EEXIST',
  'ELOOP',
  'ENAMETOOLONG',
  'ENXIO',
  'EMFILE',
  'ENFILE',
])
