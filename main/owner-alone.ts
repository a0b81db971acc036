/** Keeps what the user owns for the user alone: folders 0700 and files 0600, where the system knows such modes. */
import { chmodSync, type Dirent, mkdirSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

const FOLDER = 0o700
/** What the owner may do stays: a file that was write-protected on purpose is not opened to writing. */
const OWNERS = 0o700

/** Makes a folder of ours, or closes one that an earlier version left open. Throws where it cannot be made. */
export function ownFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: FOLDER })
  close(folder)
}

export function ownFile(file: string): void {
  close(file)
}

/**
 * What is ours by its name in a folder that may hold other things, too: those keep their modes. Where the names cannot be
 * read, all stays as it is.
 */
export function ownEntriesIn(folder: string, isOurs: (name: string) => boolean): void {
  for (const entry of entriesIn(folder)) {
    // What a link leads to may be anybody's.
    if ((entry.isDirectory() || entry.isFile()) && isOurs(entry.name)) close(join(folder, entry.name))
  }
}

function entriesIn(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
  } catch {
    return []
  }
}

/** A disk without modes, or a file of somebody else's: whoever can use it at all goes on as before. */
function close(path: string): void {
  try {
    const { mode } = statSync(path)
    if ((mode & 0o777) !== (mode & OWNERS)) chmodSync(path, mode & OWNERS)
  } catch {
    // Told by nothing: the program works, and who owns the file has decided who reads it.
  }
}
