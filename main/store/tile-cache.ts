/** Owns the tile cache's file: a store of its own that may be deleted at any time and is made again when damaged. */
import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { ownFolder } from '#main/owner-alone.ts'

/** Which tile, by the template it came from: a source whose address changes must not show the old one's tiles. */
export interface TileKey {
  readonly template: string
  readonly z: number
  readonly x: number
  readonly y: number
}

export interface KeptTile {
  readonly type: string
  readonly body: Uint8Array
  readonly etag: string | null
  readonly lastModified: string | null
  /** Instant in milliseconds. */
  readonly freshUntil: number
  readonly staleAllowed: boolean
}

export interface TileCache {
  get(key: TileKey, now: number): KeptTile | null
  put(key: TileKey, tile: KeptTile, now: number): void
  remove(key: TileKey): void
  /** Bytes of the tiles held. */
  size(): number
  /** Empties the cache and says how many bytes of disk that gave back. */
  clear(): number
  close(): void
}

export interface TileCacheOptions {
  readonly folder: string
  readonly capBytes?: number
}

export const TILE_CACHE_FILE = 'tiles.sqlite'

const DEFAULT_CAP_BYTES = 500_000_000
/** Evicting a little below the cap keeps the next tiles from evicting one by one. */
const EVICT_TO = 0.95
/** The size is summed up again after this share of the cap was written: summing at each tile takes longer than the tile. */
const SUM_EVERY = 0.01
/** Reads note their use no oftener than this, so that looking at a map is not a stream of writes. */
const USE_GRAIN = 60_000
const LAYOUT = 1
const APPLICATION = 0x54696c65

const MAKE = `
  CREATE TABLE tile (
    id INTEGER PRIMARY KEY,
    template TEXT NOT NULL, z INTEGER NOT NULL, x INTEGER NOT NULL, y INTEGER NOT NULL,
    used INTEGER NOT NULL, bytes INTEGER NOT NULL, fresh_until INTEGER NOT NULL, stale_allowed INTEGER NOT NULL,
    type TEXT NOT NULL, etag TEXT, last_modified TEXT, body BLOB NOT NULL,
    UNIQUE (template, z, x, y)
  ) STRICT;
  CREATE INDEX tile_by_use ON tile (used, bytes);
  PRAGMA application_id = ${APPLICATION};
  PRAGMA user_version = ${LAYOUT};`

interface Row {
  readonly id: number
  readonly used: number
  readonly fresh_until: number
  readonly stale_allowed: number
  readonly type: string
  readonly etag: string | null
  readonly last_modified: string | null
  readonly body: Uint8Array
}

/** Opens or makes the cache; it never throws, since no map should be lost for want of a cache. */
export function openTileCache({ folder, capBytes = DEFAULT_CAP_BYTES }: TileCacheOptions): TileCache {
  const file = join(folder, TILE_CACHE_FILE)
  let database = openOrRemake(file)
  let unsummed = Number.POSITIVE_INFINITY

  function put(open: Database.Database, key: TileKey, tile: KeptTile, now: number): void {
    if (tile.body.byteLength > capBytes) return
    open.transaction(() => {
      write(open, key, tile, now)
      unsummed += tile.body.byteLength
      if (unsummed < capBytes * SUM_EVERY) return
      evict(open, capBytes)
      unsummed = 0
    })()
  }

  /** A fault of the file costs the tiles in it, never the answer; a full or read-only disk costs only the keeping. */
  function guarded<Value>(work: (open: Database.Database) => Value, otherwise: Value): Value {
    try {
      return work(database)
    } catch (error) {
      if (!(error instanceof Database.SqliteError)) throw error
      if (isDamage(error)) {
        database.close()
        database = remake(file)
      }
      return otherwise
    }
  }

  return {
    get: (key, now) => guarded((open) => read(open, key, now), null),
    put: (key, tile, now) => guarded((open) => put(open, key, tile, now), undefined),
    remove: (key) =>
      guarded((open) => {
        open.prepare('DELETE FROM tile WHERE template = :template AND z = :z AND x = :x AND y = :y').run(key)
      }, undefined),
    size: () => guarded(total, 0),
    clear: () => guarded(empty, 0),
    close: () => {
      database.close()
    },
  }
}

function read(open: Database.Database, key: TileKey, now: number): KeptTile | null {
  const row = open
    .prepare<[TileKey], Row>(
      `SELECT id, used, fresh_until, stale_allowed, type, etag, last_modified, body
       FROM tile WHERE template = :template AND z = :z AND x = :x AND y = :y`,
    )
    .get(key)
  if (row === undefined) return null
  if (Math.abs(now - row.used) >= USE_GRAIN) open.prepare('UPDATE tile SET used = ? WHERE id = ?').run(now, row.id)
  return {
    type: row.type,
    body: row.body,
    etag: row.etag,
    lastModified: row.last_modified,
    freshUntil: row.fresh_until,
    staleAllowed: row.stale_allowed === 1,
  }
}

function write(open: Database.Database, key: TileKey, tile: KeptTile, now: number): void {
  open
    .prepare(
      `INSERT INTO tile (template, z, x, y, used, bytes, fresh_until, stale_allowed, type, etag, last_modified, body)
       VALUES (:template, :z, :x, :y, :used, :bytes, :freshUntil, :staleAllowed, :type, :etag, :lastModified, :body)
       ON CONFLICT (template, z, x, y) DO UPDATE SET
         used = excluded.used, bytes = excluded.bytes, fresh_until = excluded.fresh_until,
         stale_allowed = excluded.stale_allowed, type = excluded.type, etag = excluded.etag,
         last_modified = excluded.last_modified, body = excluded.body`,
    )
    .run({ ...key, ...tile, staleAllowed: tile.staleAllowed ? 1 : 0, used: now, bytes: tile.body.byteLength })
}

/** Drops the tiles longest unused until the rest fits, with room for what is written before the next look. */
function evict(open: Database.Database, capBytes: number): void {
  let size = total(open)
  if (size <= capBytes * (1 - SUM_EVERY)) return
  const longestUnused = open
    .prepare<[], { id: number; bytes: number }>('SELECT id, bytes FROM tile ORDER BY used, id')
    .all()
  const drop = open.prepare('DELETE FROM tile WHERE id = ?')
  for (const { id, bytes } of longestUnused) {
    if (size <= capBytes * EVICT_TO) return
    drop.run(id)
    size -= bytes
  }
}

/** Answered from the index alone, without touching the bodies. */
function total(open: Database.Database): number {
  return open.prepare<[], { size: number }>('SELECT coalesce(sum(bytes), 0) AS size FROM tile').get()?.size ?? 0
}

function empty(open: Database.Database): number {
  const before = diskBytes(open)
  open.exec('DELETE FROM tile; VACUUM')
  open.pragma('wal_checkpoint(TRUNCATE)')
  return Math.max(0, before - diskBytes(open))
}

function diskBytes(open: Database.Database): number {
  return Number(open.pragma('page_count', { simple: true })) * Number(open.pragma('page_size', { simple: true }))
}

/** A file that is damaged or foreign is made again; one that is only busy or out of reach is left alone. */
function openOrRemake(file: string): Database.Database {
  try {
    return openFile(file) ?? remake(file)
  } catch (error) {
    return error instanceof Database.SqliteError && isDamage(error) ? remake(file) : inMemory()
  }
}

function remake(file: string): Database.Database {
  try {
    for (const suffix of ['', '-wal', '-shm', '-journal']) rmSync(file + suffix, { force: true, recursive: true })
    return openFile(file) ?? inMemory()
  } catch {
    return inMemory()
  }
}

/** Where no file can be had, memory holds the tiles until the program ends. */
function inMemory(): Database.Database {
  const database = new Database(':memory:')
  database.exec(MAKE)
  return database
}

/** Null for a file that is none of ours or of another layout; throws when it is damaged or out of reach. */
function openFile(file: string): Database.Database | null {
  ownFolder(dirname(file))
  const database = new Database(file, { timeout: 2_000 })
  try {
    database.pragma('journal_mode = WAL')
    // Losing the last tiles to a power cut is nothing; the rest of the file stays whole under WAL.
    database.pragma('synchronous = NORMAL')
    const isNew = database.prepare('SELECT 1 FROM sqlite_schema').get() === undefined
    if (isNew) database.transaction(() => database.exec(MAKE))()
    const layout = database.pragma('user_version', { simple: true })
    const application = database.pragma('application_id', { simple: true })
    if (layout === LAYOUT && application === APPLICATION) {
      total(database)
      return database
    }
    database.close()
    return null
  } catch (error) {
    database.close()
    throw error
  }
}

function isDamage(error: { readonly code: string }): boolean {
  return /^SQLITE_(?:CORRUPT|NOTADB|SCHEMA|ERROR|IOERR_SHORT_READ)/.test(error.code)
}
