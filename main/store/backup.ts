/** Backups of the library: made by SQLite's own backup, checked before they count, kept in a folder beside the library. */
import { closeSync, fsyncSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ownFile, ownFolder } from '#main/owner-alone.ts'
import { DAY } from '#core/time/duration.ts'
import { Refused } from './fault.ts'
import { readFileHeader } from './file-header.ts'
import { type Connection, connect } from './handle.ts'
import { dayNumber, outdatedBackups } from './rotation.ts'

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

/**
 * Newest first. What is dated in the future was made under a clock that ran ahead, or the clock runs behind now: nobody
 * can tell how new that is, so it comes last.
 */
export function listBackups(dataFolder: string, now: number): Backup[] {
  return [...namesIn(backupFolder(dataFolder))]
    .flatMap((name) => parsedName(name) ?? [])
    .map(({ name, savedAt, spots }) => ({ name, savedAt, spots }))
    .toSorted(
      (one, other) =>
        Number(isAhead(one, now)) - Number(isAhead(other, now)) ||
        other.savedAt - one.savedAt ||
        other.name.localeCompare(one.name),
    )
}

/** By its name: a backup, or one that was cut off half-made, with what SQLite left beside it. */
export function isBackupFile(name: string): boolean {
  const own = name.replace(/-(?:wal|shm|journal)$/, '')
  return NAME.test(own) || /^unchecked-\d+\.part$/.test(own)
}

/** One a day is enough: true when the day of `now` has none yet. */
export function backupIsDue(dataFolder: string, now: number): boolean {
  const newest = datedSoFar(dataFolder, 'daily', now)[0]
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
  ownFolder(folder)
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
    ownFile(unchecked)
    flush(unchecked)
    const name = `${kind}_${stampOf(now)}_${spots}-spots.sqlite`
    renameSync(unchecked, join(folder, name))
    strikeOutdated(dataFolder, kind, now)
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

/** What is dated in the future takes no place from the others and is never struck: it may be the newest there is. */
function strikeOutdated(dataFolder: string, kind: BackupKind, now: number): void {
  const all = datedSoFar(dataFolder, kind, now)
  const old = kind === 'daily' ? outdatedBackups(all) : all.slice(COPIES_KEPT)
  for (const { name } of old) clear(join(backupFolder(dataFolder), name))
}

function datedSoFar(dataFolder: string, kind: BackupKind, now: number): readonly Backup[] {
  return listBackups(dataFolder, now).filter((backup) => backup.name.startsWith(`${kind}_`) && !isAhead(backup, now))
}

/** Beyond what a clock is off by when it is set, or a machine carried to another zone with the wrong one. */
export function isAhead({ savedAt }: Pick<Backup, 'savedAt'>, now: number): boolean {
  return savedAt > now + DAY
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
