/** Keeps what the user owns for the user alone: folders 0700 and files 0600, where the system knows such modes. */
import { chmodSync, mkdirSync, readdirSync, statSync } from 'node:fs'
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

/** The files of a folder of ours, and of those in it. */
export function ownAllIn(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name)
    // What a link leads to may be anybody's.
    if (entry.isDirectory()) {
      close(path)
      ownAllIn(path)
    } else if (entry.isFile()) close(path)
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
