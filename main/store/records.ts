/** Reads shoots and spots back: the list, one shoot with its shelf, and how much there is. */
import type { Output } from '#app/contract/index.ts'
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
  return {
    shoot: parsed(shoot.document) as Opened['shoot'],
    spots: spots.map((spot) => parsed(spot.document) as Opened['spots'][number]),
    version: versionOf(handle),
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
