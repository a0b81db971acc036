/** Placing a thing with one press on the map: shown at once, kept when it was no double press, left by Escape. */
import { effect } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { planOf } from '#core/plan/plan.ts'
import { type Placing, placing } from '#renderer/state/session/navigation.ts'
import { boardPins } from '#renderer/state/plan/pin-heights.ts'
import { terrain } from '#renderer/state/plan/terrain.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { type Moved, brought } from '#core/plan/grip.ts'
import { type PressGround, followPresses } from './map-press.ts'
import type { Point } from '#renderer/view/drawing/plan-view.ts'
import { PLACE_AFTER } from './press.ts'
import { type Held, keepMoved, putBack, showMoved, takeHold } from '#renderer/state/act/live-change.ts'
import { settleSteps } from './key-steps.ts'

const LABELS: Readonly<Record<Placing['what'], string>> = {
  subject: mapWords.placeSubject,
  standpoint: mapWords.placeStandpoint,
  landmark: mapWords.placeLandmark,
  parking: mapWords.placeParking,
}

/** The arrangement with a thing placed; a spot that looks at no landmark yet looks at the one placed. */
export function placed(start: Held, wish: Placing, at: LatLon): Moved {
  if (wish.what !== 'landmark')
    return brought(planOf(start.shoot, start.spot, terrain.peek(), boardPins.peek()), { on: wish.what }, at)
  const looking = { ...start.spot, landmarkId: wish.landmarkId }
  const moved = brought(planOf(start.shoot, looking, terrain.peek(), boardPins.peek()), { on: 'landmark' }, at)
  const other = start.spot.landmarkId !== null && start.spot.landmarkId !== wish.landmarkId
  return other ? { ...moved, spot: start.spot } : moved
}

/** Places the wished thing at once, as the keyboard does. */
export function placeAt(at: LatLon): void {
  const wish = placing.peek()
  settleSteps()
  const start = takeHold()
  if (wish === null || start === null) return
  placing.value = null
  void keepMoved(LABELS[wish.what], start, placed(start, wish, at))
}

/** Listens on the map's holder while something is to be placed; answers with what takes the listeners away. */
export function followPlacing(ground: PressGround): () => void {
  let waiting: { readonly start: Held; readonly moved: Moved; readonly label: string; readonly timer: number } | null =
    null

  function takeBack(): void {
    if (waiting === null) return
    clearTimeout(waiting.timer)
    waiting = null
    putBack()
  }

  function keep(): void {
    const now = waiting
    waiting = null
    if (now === null) return
    placing.value = null
    void keepMoved(now.label, now.start, now.moved)
  }

  function placeSoon(point: Point): void {
    const wish = placing.peek()
    const at = ground.view()?.toPlace(point)
    settleSteps()
    const start = takeHold()
    if (wish === null || at === undefined || start === null) return
    const moved = placed(start, wish, at)
    waiting = { start, moved, label: LABELS[wish.what], timer: window.setTimeout(keep, PLACE_AFTER) }
    showMoved(moved)
  }

  function onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || placing.peek() === null) return
    event.stopPropagation()
    takeBack()
    placing.value = null
  }

  const stopWatching = effect(() => {
    if (placing.value === null) takeBack()
  })
  const stopPresses = followPresses(ground, {
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
