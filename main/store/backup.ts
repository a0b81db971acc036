/** Backups of the library: made by SQLite's own backup, checked before they count, kept in a folder beside the library. */
import { closeSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { Refused } from './fault.ts'
import { readFileHeader } from './file-header.ts'
import { type Connection, connect } from './handle.ts'
import { dayNumber, outdated } from './rotation.ts'

export interface Backup {
  /** File name in the backup folder. */
  readonly name: string
  readonly savedAt: number
  readonly spots: number
}

/** `daily` ones rotate; a `before` one is the copy made ahead of a migration. */
type BackupKind = 'daily' | 'before'

/** A file gets this name only after it has been checked: what the folder shows is good. */
const NAME = /^(daily|before)_(\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})-(\d{2})Z_(\d+)-spots\.sqlite$/
const COPIES_KEPT = 3

export function backupFolder(dataFolder: string): string {
  return join(dataFolder, 'backups')
}

/** Newest first. */
export function listBackups(dataFolder: string): Backup[] {
  return [...namesIn(backupFolder(dataFolder))]
    .flatMap((name) => parsedName(name) ?? [])
    .map(({ name, savedAt, spots }) => ({ name, savedAt, spots }))
    .toSorted((one, other) => other.savedAt - one.savedAt || other.name.localeCompare(one.name))
}

/** One a day is enough: true when the day of `now` has none yet. A clock set back counts as the same day. */
export function backupIsDue(dataFolder: string, now: number): boolean {
  const newest = kindOf(dataFolder, 'daily')[0]
  return newest === undefined || dayNumber(newest.savedAt) < dayNumber(now)
}

/** Makes a backup and strikes the outdated ones of its kind. Throws errors that `faultOf` knows. */
export async function backUp(
  connection: Connection,
  dataFolder: string,
  now: number,
  kind: BackupKind,
): Promise<Backup> {
  const folder = backupFolder(dataFolder)
  mkdirSync(folder, { recursive: true })
  // The process id keeps two windows from writing into one another's half-made file.
  const unchecked = join(folder, `unchecked-${process.pid}.part`)
  clear(unchecked)
  try {
    await connection.backUp(unchecked)
    const spots = spotsIfGood(unchecked)
    if (spots === null) {
      throw new Refused(
        'damaged',
        'The backup just made does not pass its check: the library file or the disk is damaged.',
      )
    }
    flush(unchecked)
    const name = `${kind}_${stampOf(now)}_${spots}-spots.sqlite`
    renameSync(unchecked, join(folder, name))
    strikeOutdated(dataFolder, kind)
    return { name, savedAt: Math.floor(now / 1000) * 1000, spots }
  } finally {
    clear(unchecked)
  }
}

/** The spots in a file that passes SQLite's whole check; null when it does not. */
export function spotsIfGood(path: string): number | null {
  if (readFileHeader(path).kind !== 'library') return null
  try {
    const connection = connect(path, { readonly: true })
    try {
      if (connection.pragma('integrity_check') !== 'ok') return null
      return connection.read.row<{ count: number }>('SELECT count(*) AS count FROM spot')?.count ?? null
    } finally {
      connection.close()
    }
  } catch {
    return null
  }
}

/** Waits until the disk has the file; a rename alone may outlive the bytes it names. */
export function flush(path: string): void {
  const file = openSync(path, 'r+')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/** UTC to the second, fit for file names everywhere. */
export function stampOf(instant: number): string {
  return `${new Date(instant).toISOString().slice(0, 19).replaceAll(':', '-')}Z`
}

function strikeOutdated(dataFolder: string, kind: BackupKind): void {
  const all = kindOf(dataFolder, kind)
  const old = kind === 'daily' ? outdated(all) : all.slice(COPIES_KEPT)
  for (const { name } of old) clear(join(backupFolder(dataFolder), name))
}

function kindOf(dataFolder: string, kind: BackupKind): readonly Backup[] {
  return listBackups(dataFolder).filter(({ name }) => name.startsWith(`${kind}_`))
}

function parsedName(name: string): Backup | null {
  const [, , day, hours, minutes, seconds, spots] = NAME.exec(name) ?? []
  if (day === undefined) return null
  const savedAt = Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`)
  return Number.isNaN(savedAt) ? null : { name, savedAt, spots: Number(spots) }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}

/** SQLite may have left a log beside a file that was opened for its check. */
function clear(path: string): void {
  for (const suffix of ['', '-wal', '-shm', '-journal']) rmSync(path + suffix, { force: true })
}
