/** Placing a thing with one press on the map: shown at once, kept when it was no double press, left by Escape. */
import { effect } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { planOf } from '#core/plan/plan.ts'
import { type Placing, placing } from '#renderer/state/page.ts'
import { terrain } from '#renderer/state/terrain.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { type Moved, brought } from './grip.ts'
import type { PlanView, Point } from './plan-view.ts'
import { PLACE_AFTER, readPresses } from './press.ts'
import { type Held, keepMoved, putBack, showMoved, takeHold } from './settle.ts'
import { settleSteps } from './walk.ts'

const LABELS: Readonly<Record<Placing['what'], string>> = {
  subject: mapWords.placeSubject,
  standpoint: mapWords.placeStandpoint,
  landmark: mapWords.placeLandmark,
  parking: mapWords.placeParking,
}

/** The arrangement with a thing placed; a spot that looks at no landmark yet looks at the one placed. */
export function placed(start: Held, wish: Placing, at: LatLon): Moved {
  if (wish.what !== 'landmark') return brought(planOf(start.shoot, start.spot, terrain.peek()), { on: wish.what }, at)
  const looking = { ...start.spot, landmarkId: wish.landmarkId }
  const moved = brought(planOf(start.shoot, looking, terrain.peek()), { on: 'landmark' }, at)
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

export interface PlacingGround {
  readonly holder: HTMLElement
  readonly view: () => PlanView | null
  readonly pointOf: (event: PointerEvent) => Point
}

/** Listens on the map's holder while something is to be placed; answers with what takes the listeners away. */
export function followPlacing(ground: PlacingGround): () => void {
  const presses = readPresses()
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

  const idle = (event: PointerEvent): boolean => placing.peek() === null || !event.isPrimary
  const onMap = (event: Event): boolean => event.target instanceof Element && event.target.closest('.map-over') === null

  function onDown(event: PointerEvent): void {
    if (idle(event) || event.button !== 0 || !onMap(event)) return
    if (presses.down(ground.pointOf(event), event.timeStamp).kind === 'take-back') takeBack()
  }

  function onMove(event: PointerEvent): void {
    if (!idle(event)) presses.move(ground.pointOf(event))
  }

  function onUp(event: PointerEvent): void {
    if (idle(event)) return
    const answer = presses.up(ground.pointOf(event), event.timeStamp)
    if (answer.kind === 'place-soon') placeSoon(answer.at)
  }

  const onCancel = (): void => presses.cancel()

  function onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || placing.peek() === null) return
    event.stopPropagation()
    takeBack()
    placing.value = null
  }

  const { holder } = ground
  const stopWatching = effect(() => {
    holder.classList.toggle('placing', placing.value !== null)
    if (placing.value === null) takeBack()
  })
  holder.addEventListener('pointerdown', onDown, true)
  holder.addEventListener('pointermove', onMove, true)
  window.addEventListener('pointerup', onUp, true)
  holder.addEventListener('pointercancel', onCancel, true)
  document.addEventListener('keydown', onKey, true)
  return () => {
    stopWatching()
    takeBack()
    holder.removeEventListener('pointerdown', onDown, true)
    holder.removeEventListener('pointermove', onMove, true)
    window.removeEventListener('pointerup', onUp, true)
    holder.removeEventListener('pointercancel', onCancel, true)
    document.removeEventListener('keydown', onKey, true)
  }
}
