/** What is done with landmarks: add one behind the subject, place it on the map, change and remove it. */
import { startPlacing, backToBoard } from '#renderer/state/session/navigation.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { newLandmark } from '#core/record/new-records.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { type Landmark, type LandmarkKind, landmarkPoints, withLandmarkPoints } from '#core/scene/landmark.ts'
import { stepPassed } from '#renderer/state/session/first-steps.ts'
import { mapMiddle, fitPlan } from '#renderer/state/session/map-window.ts'
import type { RecordEdit } from '#renderer/state/library/edit.ts'
import { changeShoot, commit, undoOffer } from '#renderer/state/library/history.ts'
import { boardSpot, spots } from '#renderer/state/library/library.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { words } from '#renderer/words/en.ts'

/** Metres behind the subject at which a new landmark starts. */
const BEHIND = 400

/** Straight behind the subject as the camera sees it; without a spot, north of the middle of the map, where one will come. */
function startingPlace(): LatLon {
  const spot = boardSpot.value
  if (spot === null) return destination(mapMiddle() ?? { lat: 0, lon: 0 }, 0, BEHIND)
  const { bearing } = geodesicLine(spot.standpoint.at, spot.stop.at)
  return destination(spot.stop.at, bearing ?? 0, BEHIND)
}

/** Adds a landmark somewhere, to be moved; spots that look at none yet look at it. */
export function addLandmark(shoot: Shoot, kind: LandmarkKind): Promise<void> {
  return keepNew(shoot, newLandmark(crypto.randomUUID(), kind, startingPlace()))
}

/** Adds a landmark where it is: a span by its two ends, all else around one place. */
export async function addLandmarkAt(shoot: Shoot, kind: LandmarkKind, [at, end]: readonly LatLon[]): Promise<void> {
  if (at === undefined) return
  const around = newLandmark(crypto.randomUUID(), kind, at)
  const saved = keepNew(shoot, kind === 'span' && end !== undefined ? withLandmarkPoints(around, [at, end]) : around)
  stepPassed('landmark')
  if (boardSpot.peek() === null) fitPlan()
  await saved
}

async function keepNew(shoot: Shoot, landmark: Landmark): Promise<void> {
  const records: RecordEdit[] = [
    { kind: 'shoot', before: shoot, after: { ...shoot, landmarks: [...shoot.landmarks, landmark] } },
  ]
  for (const before of spots.value) {
    if (shoot.landmarks.some((other) => other.id === before.landmarkId)) continue
    records.push({ kind: 'spot', before, after: { ...before, landmarkId: landmark.id } })
  }
  await commit({ label: words.shoot.edit.addLandmark, records })
}

function placesText(landmark: Landmark): string {
  return landmarkPoints(landmark)
    .map(({ lat, lon }) => `${lat} ${lon}`)
    .join()
}

export function changeLandmark(shoot: Shoot, after: Landmark): void {
  const landmarks = shoot.landmarks.map((landmark) => (landmark.id === after.id ? after : landmark))
  void changeShoot(words.shoot.edit.landmark, { ...shoot, landmarks })
  const before = shoot.landmarks.find(({ id }) => id === after.id)
  const moved = before !== undefined && placesText(before) !== placesText(after)
  // While it is all there is of the shoot, the map goes where it is put.
  if (moved && boardSpot.peek() === null) fitPlan()
}

/** Removes a landmark; spots that looked at it look at the first of those left. */
export async function removeLandmark(shoot: Shoot, gone: Landmark): Promise<void> {
  const landmarks = shoot.landmarks.filter((landmark) => landmark.id !== gone.id)
  const records: RecordEdit[] = [{ kind: 'shoot', before: shoot, after: { ...shoot, landmarks } }]
  for (const before of spots.value) {
    if (before.landmarkId !== gone.id) continue
    records.push({ kind: 'spot', before, after: { ...before, landmarkId: landmarks[0]?.id ?? null } })
  }
  const saved = commit({ label: words.shoot.edit.removeLandmark, records })
  tell('done', words.shoot.removedLandmark(landmarkName(gone)), undoOffer())
  await saved
}

/** Goes to the board, where the next press on the map places the landmark, wherever the map looks. */
export function placeLandmark(landmark: Landmark): void {
  backToBoard()
  startPlacing({ what: 'landmark', landmarkId: landmark.id })
}

/** Goes to the board, where the next press on the map makes a landmark, of a span the next two. Until then there is none. */
export function placeNewLandmark(kind: LandmarkKind): void {
  backToBoard()
  startPlacing({ what: 'new-landmark', kind, from: null })
}
