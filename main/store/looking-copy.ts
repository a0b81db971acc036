/** Opens a library that may only be read: where SQLite cannot even keep its log's index beside it, through a copy. */
import { copyFileSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { type Connection, connect, sqliteCode } from './handle.ts'

/** The file itself where that works; in a write-protected folder a copy of file and log in the system's own folder. */
export function connectForLooking(path: string): Connection {
  let connection: Connection | null = null
  try {
    connection = connect(path, { readonly: true })
    // Opening alone reads nothing: only the first look shows whether SQLite can.
    connection.read.row('SELECT 1 FROM sqlite_schema')
    return connection
  } catch (error) {
    connection?.close()
    if (!needsCopy(error)) throw error
    return connectCopy(path)
  }
}

function needsCopy(error: unknown): boolean {
  const code = sqliteCode(error) ?? ''
  return code.startsWith('SQLITE_CANTOPEN') || code.startsWith('SQLITE_READONLY')
}

function connectCopy(path: string): Connection {
  const folder = mkdtempSync(join(tmpdir(), 'library-copy-'))
  const clear = (): void => {
    rmSync(folder, { recursive: true, force: true })
  }
  try {
    const copy = join(folder, basename(path))
    copyFileSync(path, copy)
    if (statSync(`${path}-wal`, { throwIfNoEntry: false }) !== undefined) copyFileSync(`${path}-wal`, `${copy}-wal`)
    const connection = connect(copy, { readonly: true })
    return {
      ...connection,
      close: () => {
        connection.close()
        clear()
      },
    }
  } catch (error) {
    clear()
    throw error
  }
}
