/** The one seam to better-sqlite3: a connection, and its two faces, one that reads and one that writes. */
import Database from 'better-sqlite3'

export type SqlValue = string | number | null

/** May look, never change. Rows are typed by the caller, who wrote the SELECT. */
export interface ReadHandle {
  // oxlint-disable-next-line typescript/no-unnecessary-type-parameters
  readonly row: <Row>(sql: string, ...values: readonly SqlValue[]) => Row | undefined
  readonly rows: <Row>(sql: string, ...values: readonly SqlValue[]) => Row[]
}

/** Exists only inside a write transaction: whoever holds one knows that all of it is kept or none. */
export interface WriteHandle extends ReadHandle {
  /** `key` is the row's key after an INSERT that inserted. */
  readonly run: (sql: string, ...values: readonly SqlValue[]) => { readonly changes: number; readonly key: number }
  /** Several statements without values: for schemas. */
  readonly script: (sql: string) => void
}

export interface Connection {
  readonly read: ReadHandle
  /** Several reads that see one and the same state, whatever other windows commit meanwhile. */
  readonly steadily: <Value>(work: (handle: ReadHandle) => Value) => Value
  /** One transaction, begun IMMEDIATE: a deferred one that reads first fails at once when another window committed. */
  readonly immediately: <Value>(work: (handle: WriteHandle) => Value) => Value
  /** SQLite's own backup, in small steps between which the program goes on; a plain copy would miss the WAL. */
  readonly backUp: (path: string) => Promise<void>
  /** Sets or asks a PRAGMA by its text; answers the first column of its first row. */
  readonly pragma: (text: string) => unknown
  readonly close: () => void
}

/** How long one attempt waits for another window's write, in milliseconds, and the whole program with it. */
const BUSY_WAIT = 50

export interface ConnectOptions {
  readonly readonly: boolean
}

/** Opens the file, which must exist. Throws better-sqlite3's errors: `faultOf` turns them into faults. */
export function connect(path: string, options: ConnectOptions): Connection {
  const database = new Database(path, { readonly: options.readonly, fileMustExist: true, timeout: BUSY_WAIT })
  try {
    database.pragma('foreign_keys = ON')
    database.pragma('trusted_schema = OFF')
    database.pragma('cache_size = -32000')
    if (!options.readonly) prepareForWriting(database)
  } catch (error) {
    database.close()
    throw error
  }
  return connectionOn(database)
}

/** Makes a new, empty database file in WAL mode. */
export function create(path: string, applicationId: number): Connection {
  const database = new Database(path, { timeout: BUSY_WAIT })
  database.pragma(`application_id = ${applicationId}`)
  database.pragma('foreign_keys = ON')
  database.pragma('trusted_schema = OFF')
  prepareForWriting(database)
  return connectionOn(database)
}

function prepareForWriting(database: Database.Database): void {
  database.pragma('journal_mode = WAL')
  // better-sqlite3 is built with NORMAL as WAL's default, under which a power cut may lose the last commits.
  database.pragma('synchronous = FULL')
  // After a large import the WAL file shrinks again to this many bytes.
  database.pragma('journal_size_limit = 16000000')
}

function connectionOn(database: Database.Database): Connection {
  const prepared = new Map<string, Database.Statement<SqlValue[]>>()
  const statement = (sql: string): Database.Statement<SqlValue[]> => {
    const known = prepared.get(sql)
    if (known !== undefined) return known
    const made = database.prepare<SqlValue[]>(sql)
    prepared.set(sql, made)
    return made
  }
  const read: ReadHandle = {
    // oxlint-disable-next-line typescript/no-unnecessary-type-parameters
    row: <Row>(sql: string, ...values: readonly SqlValue[]) => statement(sql).get(...values) as Row | undefined,
    rows: <Row>(sql: string, ...values: readonly SqlValue[]) => statement(sql).all(...values) as Row[],
  }
  const write: WriteHandle = {
    ...read,
    run: (sql, ...values) => {
      const { changes, lastInsertRowid } = statement(sql).run(...values)
      return { changes, key: Number(lastInsertRowid) }
    },
    script: (sql) => {
      database.exec(sql)
    },
  }
  return {
    read,
    steadily: (work) => database.transaction(() => work(read)).deferred(),
    immediately: (work) => database.transaction(() => work(write)).immediate(),
    backUp: async (path) => {
      // Pages at a time: 4 MB between two turns of the program.
      await database.backup(path, { progress: () => 1000 })
    },
    pragma: (text) => database.pragma(text, { simple: true }),
    close: () => {
      database.close()
    },
  }
}

/** The code of an SQLite error, such as SQLITE_BUSY; null for any other error. */
export function sqliteCode(error: unknown): string | null {
  return error instanceof Database.SqliteError ? error.code : null
}
