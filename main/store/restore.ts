/** Puts a backup in the library's place and keeps what stood there, with its log, under another name. */
import { copyFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { backupFolder, flush, listBackups, spotsIfGood, stampOf } from './backup.ts'
import { Refused } from './fault.ts'
import { LIBRARY_NAME, libraryPath } from './library-file.ts'

/** The library must be closed in this window. Answers the name under which the former file is kept; '' if there was none. */
export function restoreBackup(dataFolder: string, backup: string, now: number): string {
  // Only names that the list shows: no path of the caller's is ever opened.
  if (!listBackups(dataFolder, now).some(({ name }) => name === backup)) {
    throw new Refused('gone', 'This backup is no longer there. Nothing was changed; choose another one.')
  }
  const source = join(backupFolder(dataFolder), backup)
  if (spotsIfGood(source) === null) {
    throw new Refused('damaged', 'This backup is damaged too. Nothing was changed; choose another one.')
  }
  const ready = join(dataFolder, `library-${process.pid}.part`)
  copyFileSync(source, ready)
  flush(ready)
  const keptAs = putAside(dataFolder, now)
  renameSync(ready, libraryPath(dataFolder))
  return keptAs
}

/** The log moves along: left behind, SQLite would play it into the backup. */
function putAside(dataFolder: string, now: number): string {
  const path = libraryPath(dataFolder)
  const there = (name: string): boolean => statSync(name, { throwIfNoEntry: false }) !== undefined
  const keptAs = freeName(dataFolder, now)
  const hadFile = there(path)
  // The file first: cut off in between, the next start finds it missing and says so, instead of using it without its log.
  if (hadFile) renameSync(path, join(dataFolder, keptAs))
  if (there(`${path}-wal`)) renameSync(`${path}-wal`, join(dataFolder, `${keptAs}-wal`))
  rmSync(`${path}-shm`, { force: true })
  return hadFile ? keptAs : ''
}

function freeName(dataFolder: string, now: number): string {
  const stem = LIBRARY_NAME.replace('.sqlite', '')
  for (let count = 1; ; count += 1) {
    const name = `${stem}-replaced-${stampOf(now)}${count === 1 ? '' : `-${count}`}.sqlite`
    if (statSync(join(dataFolder, name), { throwIfNoEntry: false }) === undefined) return name
  }
}
