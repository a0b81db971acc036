/** Files opened from the desktop: found in a command line by their ending, read with a limit, as a name and its text. */
import { open } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { done, failed, type Result } from '#core/result.ts'
import type { OpenedFile } from '#app/bridge.ts'
import { SHOOT_FILE_ENDING, SHOOT_FILE_LIMIT } from '#app/contract/files.ts'

/** Paths of shoot files anywhere in a command line; browsers' and systems' own switches stand among them. */
export function shootFilesAmong(words: readonly string[], folder: string): string[] {
  return words.filter((word) => !word.startsWith('-') && isShootFile(word)).map((word) => resolve(folder, word))
}

export function isShootFile(path: string): boolean {
  return path.toLowerCase().endsWith(SHOOT_FILE_ENDING)
}

export async function readOpened(path: string): Promise<Result<OpenedFile, 'unreadable' | 'too-large'>> {
  const name = basename(path)
  try {
    await using file = await open(path)
    const about = await file.stat()
    if (!about.isFile()) return failed('unreadable', `${name} is not a file.`)
    if (about.size > SHOOT_FILE_LIMIT) return failed('too-large', `${name} is too large to be a shoot file.`)
    return done({ name, text: await file.readFile('utf8') })
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
    return failed('unreadable', `${name} could not be read (${code}). Check that it is there and may be read.`)
  }
}
