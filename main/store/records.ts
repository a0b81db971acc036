/** Reads shoots and spots back: the list, one shoot with its shelf, and how much there is. */
import type { Output } from '#app/contract/index.ts'
import { mendFigures } from '#app/contract/mended.ts'
import { shootShape, spotShape } from '#app/contract/records.ts'
import { parsedJson } from '#core/parsed-json.ts'
import { Refused } from './fault.ts'
import type { ReadHandle, WriteHandle } from './handle.ts'

export interface Counts {
  readonly version: number
  readonly shootCount: number
  readonly spotCount: number
}

export function countRecords(handle: ReadHandle): Counts {
  const count = (table: 'shoot' | 'spot'): number =>
    handle.row<{ count: number }>(`SELECT count(*) AS count FROM ${table}`)?.count ?? 0
  return { version: versionOf(handle), shootCount: count('shoot'), spotCount: count('spot') }
}

export function versionOf(handle: ReadHandle): number {
  return handle.row<{ value: number }>("SELECT value FROM counter WHERE name = 'version'")?.value ?? 0
}

/** Grows by one, from the given count when that is the higher. */
export function raiseVersion(handle: WriteHandle, least = 0): number {
  const sql = "UPDATE counter SET value = max(value, ?) + 1 WHERE name = 'version' RETURNING value"
  return handle.row<{ value: number }>(sql, least)?.value ?? 0
}

/** Newest first. */
export function listShoots(handle: ReadHandle): Output<'library.shoots'> {
  const shoots = handle.rows<Output<'library.shoots'>['shoots'][number]>(
    `SELECT id, name, made_at AS madeAt, (SELECT count(*) FROM spot WHERE shoot_id = shoot.id) AS spots
       FROM shoot ORDER BY made_at DESC, key DESC`,
  )
  return { shoots }
}

interface StoredShoot {
  readonly name: string
  readonly document: string
}

interface StoredSpot extends StoredShoot {
  readonly id: string
  readonly lat: number
  readonly lon: number
}

/** A spot whose record is broken costs that spot alone, which is named; a shoot whose own record is broken cannot be opened. */
export function storedShoot(handle: ReadHandle, shootId: string): Output<'library.open'> {
  type Opened = Output<'library.open'>
  const stored = handle.row<StoredShoot>('SELECT name, document FROM shoot WHERE id = ?', shootId)
  if (stored === undefined) throw new Refused('gone', 'This shoot is no longer in the library. Choose another one.')
  const shoot = recordIn(stored.document, shootId)
  if (shoot === null) {
    throw new Refused(
      'damaged',
      `The record of the shoot “${stored.name}” is broken within the library file, so it cannot be opened. The other shoots can.`,
    )
  }
  const rows = handle.rows<StoredSpot>(
    'SELECT id, name, lat, lon, document FROM spot WHERE shoot_id = ? ORDER BY rank, key',
    shootId,
  )
  const sound = rows.map((row) => spotIn(row))
  const broken = rows.filter((_, at) => sound[at] === null).map(({ name }) => name)
  // A figure that was let in once must not shut the whole shoot away now, nor keep it from being saved.
  const mendedShoot = mendFigures(shootShape, shoot)
  const mendedSpots = sound.filter((spot) => spot !== null).map((spot) => mendFigures(spotShape, spot))
  const mended = [mendedShoot, ...mendedSpots].flatMap((record) => record.mended)
  return {
    shoot: mendedShoot.value as Opened['shoot'],
    spots: mendedSpots.map((spot) => spot.value as Opened['spots'][number]),
    version: versionOf(handle),
    ...(broken.length === 0 ? {} : { broken }),
    ...(mended.length > 0 ? { mended } : {}),
  }
}

type Fields = Readonly<Record<string, unknown>>

/** Null for what is no record of that id: SQLite's own check sees only that the file is sound, not what stands in it. */
function recordIn(document: string, id: string): Fields | null {
  const record = parsedJson(document)
  return isFields(record) && record['id'] === id ? record : null
}

/** What stands in columns of its own as well has to agree. */
function spotIn({ id, name, lat, lon, document }: StoredSpot): Fields | null {
  const record = recordIn(document, id)
  const stop = record?.['stop']
  const at = isFields(stop) ? stop['at'] : null
  const agrees = isFields(at) && at['lat'] === lat && at['lon'] === lon && record?.['name'] === name
  return agrees ? record : null
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null
}
