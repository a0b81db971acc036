/** Placing a thing with one press on the map: shown at once, kept when it was no double press, left by Escape. */
import { effect } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { planOf } from '#core/plan/plan.ts'
import { type Placing, placing, stopPlacing } from '#renderer/state/session/navigation.ts'
import { type Arrangement, type LiveChange, begin } from '#renderer/state/act/live-change.ts'
import { boardPins } from '#renderer/state/plan/pin-heights.ts'
import { terrain } from '#renderer/state/plan/terrain.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { type Moved, gripBroughtTo } from '#core/plan/grip.ts'
import { type PressSurface, followPresses } from './map-press.ts'
import type { Point } from '#renderer/view/drawing/plan-view.ts'
import { PLACE_AFTER } from './press.ts'
import { placeAlone, placeStandsAlone } from '#renderer/state/act/place-alone.ts'
import { refuseGround } from '#renderer/state/act/held.ts'

/** Placed within the arrangement of the spot on the board. */
type PlacingInSpot = Exclude<Placing, { readonly what: 'new-landmark' }>

const LABELS: Readonly<Record<PlacingInSpot['what'], string>> = {
  subject: mapWords.placeSubject,
  standpoint: mapWords.placeStandpoint,
  landmark: mapWords.placeLandmark,
  parking: mapWords.placeParking,
}

/** The arrangement with a thing placed; a spot that looks at no landmark yet looks at the one placed. */
export function arrangementWith(start: Arrangement, wish: PlacingInSpot, at: LatLon): Moved {
  if (wish.what !== 'landmark')
    return gripBroughtTo(planOf(start.shoot, start.spot, terrain.peek(), boardPins.peek()), { on: wish.what }, at)
  const looking = { ...start.spot, landmarkId: wish.landmarkId }
  const moved = gripBroughtTo(planOf(start.shoot, looking, terrain.peek(), boardPins.peek()), { on: 'landmark' }, at)
  const other = start.spot.landmarkId !== null && start.spot.landmarkId !== wish.landmarkId
  return other ? { ...moved, spot: start.spot } : moved
}

/** Places the wished thing at once, as the keyboard does. */
export function placeAt(at: LatLon): void {
  const wish = placing.peek()
  if (wish === null) return
  if (wish.what === 'new-landmark' || placeStandsAlone(wish)) return placeAlone(wish, at)
  const change = begin(LABELS[wish.what], { refuse: refuseGround })
  if (change === null) return
  stopPlacing()
  change.show(arrangementWith(change.start, wish, at))
  void change.keep()
}

/** Listens on the map's holder while something is to be placed. Returns a function that removes the listeners. */
export function followPlacing(surface: PressSurface): () => void {
  let waiting: { readonly change: LiveChange; readonly timer: number } | null = null

  let alone: number | undefined

  function takeBack(): void {
    clearTimeout(alone)
    waiting?.change.giveUp()
  }

  function keep(): void {
    void waiting?.change.keep()
  }

  /** Kept, also by whatever else acts before the time is up, or taken back. */
  function ended(kept: boolean): void {
    if (waiting === null) return
    clearTimeout(waiting.timer)
    waiting = null
    if (kept) stopPlacing()
  }

  function placeSoon(point: Point): void {
    const wish = placing.peek()
    const at = surface.view()?.toPlace(point)
    if (wish === null || at === undefined) return
    if (wish.what === 'new-landmark' || placeStandsAlone(wish)) {
      alone = window.setTimeout(() => placeAt(at), PLACE_AFTER)
      return
    }
    const change = begin(LABELS[wish.what], { refuse: refuseGround, onEnd: ended })
    if (change === null) return
    change.show(arrangementWith(change.start, wish, at))
    waiting = { change, timer: window.setTimeout(keep, PLACE_AFTER) }
  }

  function onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || placing.peek() === null) return
    event.stopPropagation()
    takeBack()
    stopPlacing()
  }

  const stopWatching = effect(() => {
    if (placing.value === null) takeBack()
  })
  const stopPresses = followPresses(surface, {
    waits: () => placing.peek() !== null,
    press: placeSoon,
    double: takeBack,
  })
  document.addEventListener('keydown', onKey, true)
  return () => {
    stopWatching()
    takeBack()
    stopPresses()
    document.removeEventListener('keydown', onKey, true)
  }
}
