/** Placing a landmark of a shoot that has no spot yet: saved as it is put, since there is no arrangement to show it in. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { savedSpot, shoot } from '#renderer/state/library/library.ts'
import type { Placing } from '#renderer/state/session/navigation.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { landmarkAt } from '#core/plan/grip.ts'

/** Whether what is to be placed is placed without a spot. */
export function placeStandsAlone(wish: Placing): boolean {
  return wish.what === 'landmark' && savedSpot.peek() === null
}

export function placeAlone(wish: Placing, at: LatLon): void {
  const open = shoot.peek()
  if (open === null || wish.what !== 'landmark') return
  const landmarks = open.landmarks.map((one) => (one.id === wish.landmarkId ? landmarkAt(one, at) : one))
  void changeShoot(mapWords.placeLandmark, { ...open, landmarks })
}
