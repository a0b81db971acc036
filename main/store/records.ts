/** Reads shoots and spots back: the list, one shoot with its shelf, and how much there is. */
import type { Output } from '#app/contract/index.ts'
import { mendFigures } from '#app/contract/mended.ts'
import { shootShape, spotShape } from '#app/contract/records.ts'
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

export function openShoot(handle: ReadHandle, shootId: string): Output<'library.open'> {
  type Opened = Output<'library.open'>
  const shoot = handle.row<{ document: string }>('SELECT document FROM shoot WHERE id = ?', shootId)
  if (shoot === undefined) throw new Refused('gone', 'This shoot is no longer in the library. Choose another one.')
  const spots = handle.rows<{ document: string }>(
    'SELECT document FROM spot WHERE shoot_id = ? ORDER BY rank, key',
    shootId,
  )
  // A figure that was let in once must not shut the whole shoot away now, nor keep it from being saved.
  const mendedShoot = mendFigures(shootShape, parsed(shoot.document))
  const mendedSpots = spots.map((spot) => mendFigures(spotShape, parsed(spot.document)))
  const mended = [mendedShoot, ...mendedSpots].flatMap((record) => record.mended)
  return {
    shoot: mendedShoot.value as Opened['shoot'],
    spots: mendedSpots.map((spot) => spot.value as Opened['spots'][number]),
    version: versionOf(handle),
    ...(mended.length > 0 ? { mended } : {}),
  }
}

function parsed(document: string): unknown {
  try {
    return JSON.parse(document)
  } catch {
    throw new Refused(
      'damaged',
      'A record in the library cannot be read: the file is damaged. Put a backup in its place.',
    )
  }
}
