/** Saves a batch of changes whole: revisions checked, rows written, indexes and the version kept in step. */
import type { Change } from '#app/contract/library.ts'
import { Refused } from './fault.ts'
import type { WriteHandle } from './handle.ts'
import { enterPlaces, leavePlaces } from './place-index.ts'
import { raiseVersion } from './records.ts'
import { searchText } from './search-text.ts'
import { enterWords, leaveWords, textsOfShoot } from './word-index.ts'

type ShootChange = Extract<Change, { kind: 'shoot' }>
type SpotChange = Extract<Change, { kind: 'spot' }>
type ShootRecord = NonNullable<ShootChange['record']>
type SpotRecord = NonNullable<SpotChange['record']>

export interface Applied {
  /** Of the whole library: grows by one with every batch. */
  readonly version: number
  /** Of each record in the order of the changes; 0 for a deleted one. */
  readonly revisions: number[]
}

/** What a batch leaves to be done once all its rows are written. */
interface Pending {
  readonly spots: Map<number, SpotRecord>
  readonly inserted: Set<number>
  readonly moved: Set<number>
  readonly renamedShoots: Set<string>
  /** Revisions of spots that went with their shoot: deleting them once more in the same batch is no conflict. */
  readonly wentAlong: Map<string, number>
}

/** To be called inside one write transaction; throws `Refused`, on which nothing of the batch is kept. */
export function applyChanges(handle: WriteHandle, changes: readonly Change[]): Applied {
  const pending: Pending = {
    spots: new Map(),
    inserted: new Set(),
    moved: new Set(),
    renamedShoots: new Set(),
    wentAlong: new Map(),
  }
  const revisions = changes.map((change) => {
    if (change.record !== null && change.record.id !== change.id) {
      throw new Refused(
        'invalid',
        `A change of ${change.id} carries the record of ${change.record.id}. Nothing was saved.`,
      )
    }
    return change.kind === 'shoot' ? applyToShoot(handle, change, pending) : applyToSpot(handle, change, pending)
  })
  const shootNames = namesOfShoots(handle, pending)
  enterPlaces(handle, [...pending.moved])
  enterWords(handle, textsToEnter(handle, pending, shootNames), (key) => pending.inserted.has(key))
  return { version: raiseVersion(handle), revisions }
}

function applyToShoot(handle: WriteHandle, change: ShootChange, pending: Pending): number {
  const { id, before, record } = change
  if (record !== null && before === null) return insertShoot(handle, record)
  const stored = handle.row<{ key: number; revision: number; name: string }>(
    'SELECT key, revision, name FROM shoot WHERE id = ?',
    id,
  )
  if (stored === undefined || stored.revision !== before)
    throw changedElsewhere('shoot', id, record?.name ?? stored?.name)
  if (record === null) {
    deleteShoot(handle, id, pending)
    return 0
  }
  const revision = stored.revision + 1
  handle.run(
    'UPDATE shoot SET revision = ?, name = ?, made_at = ?, document = ? WHERE key = ?',
    revision,
    record.name,
    record.madeAt,
    documentOf(record, revision),
    stored.key,
  )
  if (record.name !== stored.name) pending.renamedShoots.add(id)
  return revision
}

function insertShoot(handle: WriteHandle, record: ShootRecord): number {
  const { changes } = handle.run(
    'INSERT INTO shoot (id, revision, name, made_at, document) VALUES (?, 1, ?, ?, ?) ON CONFLICT (id) DO NOTHING',
    record.id,
    record.name,
    record.madeAt,
    documentOf(record, 1),
  )
  if (changes === 0) throw changedElsewhere('shoot', record.id, record.name)
  return 1
}

function deleteShoot(handle: WriteHandle, id: string, pending: Pending): void {
  const spots = handle.rows<{ key: number; id: string; revision: number }>(
    'SELECT key, id, revision FROM spot WHERE shoot_id = ?',
    id,
  )
  for (const spot of spots) {
    pending.wentAlong.set(spot.id, spot.revision)
    forget(pending, spot.key)
  }
  const keys = spots.map((spot) => spot.key)
  leaveWords(handle, keys)
  leavePlaces(handle, keys)
  handle.run('DELETE FROM spot WHERE shoot_id = ?', id)
  handle.run('DELETE FROM shoot WHERE id = ?', id)
  pending.renamedShoots.delete(id)
}

interface StoredSpot {
  readonly key: number
  readonly revision: number
  readonly name: string
  readonly lat: number
  readonly lon: number
}

function applyToSpot(handle: WriteHandle, change: SpotChange, pending: Pending): number {
  const { id, before, record } = change
  if (record !== null && before === null) return insertSpot(handle, record, pending)
  const stored = handle.row<StoredSpot>('SELECT key, revision, name, lat, lon FROM spot WHERE id = ?', id)
  if (record === null && stored === undefined && pending.wentAlong.get(id) === before) return 0
  if (stored === undefined || stored.revision !== before)
    throw changedElsewhere('spot', id, record?.name ?? stored?.name)
  if (record === null) {
    deleteSpot(handle, stored.key, pending)
    return 0
  }
  return updateSpot(handle, stored, record, pending)
}

function insertSpot(handle: WriteHandle, record: SpotRecord, pending: Pending): number {
  const { changes, key } = handle.run(
    `INSERT INTO spot (id, shoot_id, revision, rank, name, status, stars, lat, lon, document)
       VALUES (?, ?, 1, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO NOTHING`,
    record.id,
    record.shootId,
    record.rank,
    record.name,
    record.status,
    record.stars,
    record.stop.at.lat,
    record.stop.at.lon,
    documentOf(record, 1),
  )
  if (changes === 0) throw changedElsewhere('spot', record.id, record.name)
  pending.spots.set(key, record)
  pending.inserted.add(key)
  pending.moved.add(key)
  return 1
}

function updateSpot(handle: WriteHandle, stored: StoredSpot, record: SpotRecord, pending: Pending): number {
  const revision = stored.revision + 1
  const { lat, lon } = record.stop.at
  handle.run(
    `UPDATE spot SET shoot_id = ?, revision = ?, rank = ?, name = ?, status = ?, stars = ?, lat = ?, lon = ?, document = ?
       WHERE key = ?`,
    record.shootId,
    revision,
    record.rank,
    record.name,
    record.status,
    record.stars,
    lat,
    lon,
    documentOf(record, revision),
    stored.key,
  )
  pending.spots.set(stored.key, record)
  if (lat !== stored.lat || lon !== stored.lon) pending.moved.add(stored.key)
  return revision
}

function deleteSpot(handle: WriteHandle, key: number, pending: Pending): void {
  leaveWords(handle, [key])
  leavePlaces(handle, [key])
  handle.run('DELETE FROM spot WHERE key = ?', key)
  forget(pending, key)
}

function forget(pending: Pending, key: number): void {
  pending.spots.delete(key)
  pending.inserted.delete(key)
  pending.moved.delete(key)
}

/** Names of the shoots of all written spots; refuses a spot whose shoot is not there. */
function namesOfShoots(handle: WriteHandle, pending: Pending): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  for (const spot of pending.spots.values()) {
    if (names.has(spot.shootId)) continue
    const shoot = handle.row<{ name: string }>('SELECT name FROM shoot WHERE id = ?', spot.shootId)
    if (shoot === undefined) {
      throw new Refused('gone', `The shoot of the spot “${short(spot.name)}” is no longer there. Nothing was saved.`)
    }
    names.set(spot.shootId, shoot.name)
  }
  return names
}

function textsToEnter(
  handle: WriteHandle,
  pending: Pending,
  shootNames: ReadonlyMap<string, string>,
): ReadonlyMap<number, string> {
  const texts = new Map<number, string>()
  for (const shootId of pending.renamedShoots) {
    for (const [key, text] of textsOfShoot(handle, shootId)) texts.set(key, text)
  }
  for (const [key, spot] of pending.spots) texts.set(key, searchText(spot, shootNames.get(spot.shootId) ?? ''))
  return texts
}

function documentOf(record: ShootRecord | SpotRecord, revision: number): string {
  return JSON.stringify(record.revision === revision ? record : { ...record, revision })
}

function changedElsewhere(kind: Change['kind'], id: string, name: string | undefined): Refused {
  const called = name === undefined || name.trim() === '' ? `with the id ${id}` : `“${short(name)}” (${id})`
  return new Refused(
    'changed-elsewhere',
    `The ${kind} ${called} was changed or deleted in another window. Nothing was saved; look at it again, then decide.`,
  )
}

function short(name: string): string {
  const characters = Array.from(name)
  return characters.length > 60 ? `${characters.slice(0, 60).join('')}…` : name
}
