/** The library's file in the data folder: opens it or says why not, makes a new one whole, knows when it was replaced. */
import { messageOf } from '#core/message-of.ts'
import { accessSync, constants, copyFileSync, linkSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { backupFolder, isBackupFile, listBackups, stampOf } from './backup.ts'
import { ownEntriesIn, ownFile, ownFolder } from '#main/owner-alone.ts'
import { faultOf } from './fault.ts'
import { APPLICATION_ID, readFileHeader } from './file-header.ts'
import { type Connection, connect, create } from './handle.ts'
import { connectForLooking } from './looking-copy.ts'
import { formOf, migrate, NEWEST_FORM } from './migrate.ts'
import { refreshWords, wordsAreFresh } from './word-index.ts'

export const LIBRARY_NAME = 'library.sqlite'

export type Opening =
  | { readonly state: 'open' | 'read-only'; readonly connection: Connection; readonly message: string }
  | { readonly state: 'damaged' | 'newer' | 'unavailable'; readonly message: string }

export interface OpeningOptions {
  readonly dataFolder: string
  readonly now: () => number
  /** Opens for reading alone even where writing would be allowed. */
  readonly readonly: boolean
  /** False once the library has been open in this session: a file that vanished meanwhile is not made again, empty. */
  readonly mayMake: boolean
}

export function libraryPath(dataFolder: string): string {
  return join(dataFolder, LIBRARY_NAME)
}

/** Up to the point where migrating may begin: the form is known, nothing has been changed. */
export function openFile(options: OpeningOptions): Opening {
  try {
    return openChecked(options)
  } catch (error) {
    return { state: stateFor(error), message: sentenceFor(error) }
  }
}

/** True when a start has nothing to bring up to date: then it need not wait for another window's write either. */
export function isComplete(connection: Connection): boolean {
  return formOf(connection.read) === NEWEST_FORM && wordsAreFresh(connection.read)
}

/** Brings an opened file to the newest form and its word index to the newest folding. */
export function completeForm(connection: Connection): void {
  migrate(connection)
  connection.immediately(refreshWords)
}

function openChecked(options: OpeningOptions): Opening {
  const path = libraryPath(options.dataFolder)
  if (!options.readonly && statSync(options.dataFolder, { throwIfNoEntry: false }) !== undefined) {
    ownFolder(options.dataFolder)
    closeOwn(options.dataFolder)
  }
  const missing = readFileHeader(path).kind === 'missing'
  if (missing) {
    const obstacle = whyNotMade(options)
    if (obstacle !== null) return obstacle
    makeLibrary(options)
  }
  const header = readFileHeader(path)
  if (header.kind === 'cut-short') {
    const message = `The library file is cut short: ${header.bytes} bytes are left of ${header.shouldBe}. ${WAY_BACK}`
    return { state: 'damaged', message }
  }
  if (header.kind !== 'library') {
    return { state: 'damaged', message: `The file ${LIBRARY_NAME} is not a library of this program. ${WAY_BACK}` }
  }
  if (header.form > NEWEST_FORM) return newer()
  return connected(path, options.readonly || !mayWrite(options.dataFolder, path), missing)
}

/** The library's file with what SQLite keeps beside it, half-made, put aside, or left over. */
const OWN_NAME = /^library(?:-\d+\.part|(?:-(?:replaced|left-over)-[\dTZ-]+)?\.sqlite)(?:-(?:wal|shm|journal))?$/

/** Closes what an earlier version left open. The user may have named any folder: what else lies in it is none of ours. */
function closeOwn(dataFolder: string): void {
  const backups = backupFolder(dataFolder)
  ownEntriesIn(dataFolder, (name) => OWN_NAME.test(name) || name === basename(backups))
  ownEntriesIn(backups, isBackupFile)
}

const WAY_BACK = 'Restore a backup; the damaged file is kept under another name.'

function connected(path: string, readonly: boolean, made: boolean): Opening {
  const connection = readonly ? connectForLooking(path) : connect(path, { readonly })
  try {
    // Once more through SQLite: the newer form may stand in the write-ahead log alone.
    const form = formOf(connection.read)
    if (form > NEWEST_FORM) {
      connection.close()
      return newer()
    }
    if (!readonly)
      return { state: 'open', connection, message: made ? 'A new library was made.' : 'The library is open.' }
    if (form === NEWEST_FORM) return { state: 'read-only', connection, message: READ_ONLY }
  } catch (error) {
    connection.close()
    throw error
  }
  connection.close()
  return {
    state: 'unavailable',
    message:
      'The library is from an older version and can only be read here, so the program cannot update it. ' +
      'Allow writing to its folder and start again.',
  }
}

const READ_ONLY =
  'The library may be looked at but not changed: its file or folder is write-protected. ' +
  'Allow writing to it and start again to save.'

function newer(): Opening {
  return {
    state: 'newer',
    message: 'The library was written by a newer version of this program. It was left untouched; update the program.',
  }
}

/** A missing file is made only on a fresh start: where backups or a log exist it has been lost, and that is said. */
function whyNotMade({ dataFolder, mayMake, readonly, now }: OpeningOptions): Opening | null {
  const backups = listBackups(dataFolder, now()).length
  if (backups > 0) {
    const message = `The library file is missing, but ${backups} of its backups are there. Restore one.`
    return { state: 'damaged', message }
  }
  if (!mayMake) {
    return { state: 'unavailable', message: 'The library file is gone from its folder. Put it back, then start again.' }
  }
  if (readonly) return { state: 'unavailable', message: 'There is no library yet, and none can be made here.' }
  return null
}

/**
 * Another program has written over the file that is open here: what it put there becomes the library, as a file of its
 * own, since closing the connection plays the old log into the old one. Answers under which name the log is kept, with
 * the changes of the last minutes in it; '' when there was none.
 */
export function takeOverwritten(dataFolder: string, connection: Connection, now: number): string {
  const path = libraryPath(dataFolder)
  const ready = join(dataFolder, `library-${process.pid}.part`)
  copyFileSync(path, ready)
  const log = `library-left-over-${stampOf(now)}.sqlite-wal`
  const hasLog = statSync(`${path}-wal`, { throwIfNoEntry: false }) !== undefined
  if (hasLog) copyFileSync(`${path}-wal`, join(dataFolder, log))
  connection.close()
  for (const suffix of ['-wal', '-shm']) rmSync(path + suffix, { force: true })
  renameSync(ready, path)
  return hasLog ? log : ''
}

/** Made whole under another name first: a start cut off half-way never leaves half a library. */
function makeLibrary({ dataFolder, now }: OpeningOptions): void {
  const path = libraryPath(dataFolder)
  ownFolder(dataFolder)
  // A log without its file: kept, but not under a name by which SQLite would play it into the new library.
  if (statSync(`${path}-wal`, { throwIfNoEntry: false }) !== undefined) {
    renameSync(`${path}-wal`, join(dataFolder, `library-left-over-${stampOf(now())}.sqlite-wal`))
  }
  rmSync(`${path}-shm`, { force: true })
  const unfinished = join(dataFolder, `library-${process.pid}.part`)
  for (const suffix of ['', '-wal', '-shm']) rmSync(unfinished + suffix, { force: true })
  const connection = create(unfinished, APPLICATION_ID)
  try {
    completeForm(connection)
  } finally {
    connection.close()
  }
  ownFile(unfinished)
  placeWithoutReplacing(unfinished, path)
}

/** Of two windows making a library at once the second finds the first one's and takes it. */
function placeWithoutReplacing(from: string, to: string): void {
  try {
    linkSync(from, to)
  } catch {
    // Taken already, or a file system without links: the copy refuses the first and serves the second.
    if (statSync(to, { throwIfNoEntry: false }) === undefined) copyFileSync(from, to, constants.COPYFILE_EXCL)
  }
  rmSync(from, { force: true })
}

/** SQLite needs to write the file, and in its folder the log beside it. */
function mayWrite(dataFolder: string, path: string): boolean {
  try {
    accessSync(path, constants.W_OK)
    accessSync(dataFolder, constants.W_OK)
    return true
  } catch {
    return false
  }
}

function stateFor(error: unknown): 'damaged' | 'unavailable' {
  return faultOf(error)?.reason === 'damaged' ? 'damaged' : 'unavailable'
}

function sentenceFor(error: unknown): string {
  const fault = faultOf(error)
  if (fault?.reason === 'damaged') return `The library file is damaged. ${WAY_BACK}`
  if (fault !== null) return `The library could not be opened. ${fault.message}`
  // Not SQLite's own error: the part of the program that speaks to it did not load.
  const why = messageOf(error)
  return `The part of the program that reads the library did not start. Install the program again. (${why})`
}
