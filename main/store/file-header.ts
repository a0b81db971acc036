/** The first hundred bytes of a library file: whether it is one of ours, which form it has, whether it is cut short. */
import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs'

/** "StPt": tells our library from any other SQLite file. */
export const APPLICATION_ID = 0x53_74_50_74

const MAGIC = 'SQLite format 3\0'
const HEADER_BYTES = 100

export type FileHeader =
  | { readonly kind: 'missing' }
  /** Not SQLite's file, or too short to be one. */
  | { readonly kind: 'not-a-library' }
  | { readonly kind: 'cut-short'; readonly bytes: number; readonly shouldBe: number }
  | { readonly kind: 'library'; readonly form: number; readonly bytes: number }

/**
 * Reads the header without SQLite, so that nothing is touched. Offsets by the SQLite file format: page size 16, change
 * counter 24, pages 28, user version 60, application id 68, version-valid-for 92.
 */
export function readFileHeader(path: string): FileHeader {
  if (statSync(path, { throwIfNoEntry: false }) === undefined) return { kind: 'missing' }
  const file = openSync(path, 'r')
  try {
    const bytes = fstatSync(file).size
    const head = Buffer.alloc(HEADER_BYTES)
    if (readSync(file, head, 0, HEADER_BYTES, 0) < HEADER_BYTES) return { kind: 'not-a-library' }
    if (!beginsLibrary(head)) return { kind: 'not-a-library' }
    const shouldBe = sizeByHeader(head)
    if (shouldBe > bytes && !hasLog(path)) return { kind: 'cut-short', bytes, shouldBe }
    return { kind: 'library', form: head.readUInt32BE(60), bytes }
  } finally {
    closeSync(file)
  }
}

/** Whether bytes read from a file's beginning, the header at least, are those of a library of ours. */
export function beginsLibrary(head: Buffer): boolean {
  return head.toString('latin1', 0, 16) === MAGIC && head.readUInt32BE(68) === APPLICATION_ID
}

/** Bytes in a page by the header. */
export function pageSizeOf(head: Buffer): number {
  const size = head.readUInt16BE(16)
  return size === 1 ? 65_536 : size
}

/** Bytes that the header promises; 0 when it makes no promise. */
function sizeByHeader(head: Buffer): number {
  const promised = head.readUInt32BE(24) === head.readUInt32BE(92)
  return promised ? head.readUInt32BE(28) * pageSizeOf(head) : 0
}

/** With a write-ahead log beside it the file alone says nothing about its size: the missing pages may stand in the log. */
function hasLog(path: string): boolean {
  return (statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0) > 0
}
