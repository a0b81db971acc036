/** Placing a landmark without an arrangement to show it in: one of a shoot that has no spot yet, or a new one, which is made by its place. */
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { changeShoot } from '#renderer/state/library/history.ts'
import { savedSpot, shoot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { type Placing, startPlacing, stopPlacing } from '#renderer/state/session/navigation.ts'
import { firstStepsWords } from '#renderer/words/en-first-steps.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { landmarkAt } from '#core/plan/grip.ts'
import { addLandmarkAt } from './landmark-acts.ts'

type LandmarkPlacing = Extract<Placing, { readonly what: 'landmark' | 'new-landmark' }>

/** Whether what is to be placed is placed without a spot. */
export function placeStandsAlone(wish: Placing): wish is LandmarkPlacing {
  return wish.what === 'new-landmark' || (wish.what === 'landmark' && savedSpot.peek() === null)
}

/** Metres between a span's ends below which a second press means the first end once more. */
const SHORTEST_SPAN = 1

/** Ends the prompt, or goes on to a span's other end. */
export function placeAlone(wish: LandmarkPlacing, at: LatLon): void {
  const open = shoot.peek()
  if (wish.what === 'new-landmark' && wish.kind === 'span') {
    if (wish.from === null) return startPlacing({ ...wish, from: at })
    if (geodesicDistance(wish.from, at) < SHORTEST_SPAN) return tell('fault', firstStepsWords.endsTogether)
  }
  stopPlacing()
  if (open === null) return
  if (wish.what === 'new-landmark')
    return void addLandmarkAt(open, wish.kind, wish.from === null ? [at] : [wish.from, at])
  const landmarks = open.landmarks.map((one) => (one.id === wish.landmarkId ? landmarkAt(one, at) : one))
  void changeShoot(mapWords.placeLandmark, { ...open, landmarks })
}
