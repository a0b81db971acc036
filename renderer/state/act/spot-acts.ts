/** What is done with spots on the shelf: add, copy, order, delete, pick; each an edit that can be undone. */
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { duplicateSpot, newSpot } from '#core/record/new-records.ts'
import { movedTo, rankBetween } from '#core/record/shelf-rank.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { mapMiddle } from '#renderer/state/session/map-window.ts'
import { commit, undoOffer } from '#renderer/state/library/history.ts'
import { savedSpot, shoot, spotId, spots, workOnSpot } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { MOST_COMPARED } from '#core/plan/compare.ts'
import { pickedIds, pickedOnShelf, pickSpots, unpickSpot } from '#renderer/state/session/picked.ts'
import { words } from '#renderer/words/en.ts'

/** Metres from the middle of a landmark that a new spot keeps: nobody photographs a thing from its foot. */
const CLEAR = 100
/** Metres south of a landmark at which a new spot begins that would otherwise stand in it. */
const BEFORE = 400

/** Where a further spot begins: the middle of the map, else by the spot on the board; clear of the landmark it will look at. */
function beginning({ landmarks: [landmark] }: Shoot): LatLon {
  const at = mapMiddle() ?? savedSpot.value?.stop.at ?? null
  const foot = landmark === undefined ? null : landmarkMiddle(landmarkPoints(landmark))
  if (foot === null) return at ?? { lat: 0, lon: 0 }
  return at === null || geodesicDistance(at, foot) < CLEAR ? destination(foot, 180, BEFORE) : at
}

/** The first of a shoot suits its landmark, a further one comes where the map looks. */
export async function addSpot(): Promise<void> {
  const home = shoot.value
  if (home === null) return
  // Most shoots have one: how it is laid is fetched by those that have none.
  if (spots.value.length === 0) return (await import('./first-spot-acts.ts')).addFirstSpot(home)
  const rank = rankBetween(spots.value.at(-1)?.rank ?? null, null)
  // The day and hour one is at: those of the spot on the board, else of the one above.
  const when = savedSpot.value?.when ?? spots.value.at(-1)?.when ?? Date.now()
  const after = newSpot(crypto.randomUUID(), home, beginning(home), rank, when)
  await commit({ label: words.board.edit.addSpot, records: [{ kind: 'spot', before: null, after }] })
}

function copyOf(spot: Spot, name: string): Spot {
  const place = spots.value.findIndex((candidate) => candidate.id === spot.id)
  const next = spots.value[place + 1]?.rank ?? null
  return duplicateSpot(spot, crypto.randomUUID(), name.slice(0, 10_000), rankBetween(spot.rank, next))
}

/** A copy below the spot, and on the board. */
export async function copySpot(spot: Spot): Promise<void> {
  const after = copyOf(spot, words.board.shelf.copyName(spotName(spot)))
  await commit({ label: words.board.edit.duplicateSpot, records: [{ kind: 'spot', before: null, after }] })
}

/** A copy on the shelf as the arrangement is now; the board goes on with the spot itself. */
export async function keepSpot(spot: Spot): Promise<void> {
  const after = copyOf(spot, words.board.shelf.keptName(spotName(spot)))
  const saved = commit({ label: words.board.edit.keepSpot, records: [{ kind: 'spot', before: null, after }] })
  workOnSpot(spot.id)
  const offer = undoOffer()
  await saved
  tell('done', words.board.shelf.kept(spotName(after)), offer)
}

export async function deleteSpot(spot: Spot): Promise<void> {
  const place = spots.value.findIndex((candidate) => candidate.id === spot.id)
  const neighbour = spots.value[place + 1] ?? spots.value[place - 1]
  if (spotId.value === spot.id) workOnSpot(neighbour?.id ?? null)
  unpickSpot(spot.id)
  const saved = commit({ label: words.board.edit.deleteSpot, records: [{ kind: 'spot', before: spot, after: null }] })
  tell('done', words.board.shelf.deleted(spotName(spot)), undoOffer())
  await saved
}

/** Puts a spot at a place on the shelf, 0 first. */
export async function placeSpot(id: string, place: number): Promise<void> {
  const records = movedTo(spots.value, id, place).map((after) => ({
    kind: 'spot' as const,
    before: spots.value.find((spot) => spot.id === after.id) ?? null,
    after,
  }))
  if (records.length > 0) await commit({ label: words.board.edit.orderSpots, records })
}

export function moveBy(id: string, step: number): Promise<void> {
  return placeSpot(id, spots.value.findIndex((spot) => spot.id === id) + step)
}

export function togglePick(id: string): void {
  if (pickedIds.value.includes(id)) unpickSpot(id)
  else if (pickedOnShelf.value.length < MOST_COMPARED) pickSpots([...pickedOnShelf.value, id])
  else tell('fault', words.board.shelf.pickFull)
}
