/** Drawing a line or an outline on the map: each press sets a point, a double press or Enter ends, Escape gives up. */
import { type ReadonlySignal, effect, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { FEWEST_POINTS } from '#core/record/drawn-ground.ts'
import { addDrawn } from '#renderer/state/act/drawn-acts.ts'
import { endDrawing, withPointSet, withPointTakenBack } from '#renderer/state/session/drawing.ts'
import { drawing, drawnShown, stopDrawing, goOnDrawing } from '#renderer/state/session/drawn-ground.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { settleSteps } from '#renderer/state/act/live-change.ts'
import { placing } from '#renderer/state/session/navigation.ts'
import { type CrossHairSurface, followCrossHair } from './cross-hair.ts'
import { type PressSurface, followPresses } from './map-press.ts'
import { type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'

/** Pixels from the first corner within which a press closes an outline. */
const CLOSES_WITHIN = 10

const pointedPlaceSignal = signal<LatLon | null>(null)
/** Where the next point would be set by the pointer; null while it is not over the map. */
export const pointedPlace: ReadonlySignal<LatLon | null> = pointedPlaceSignal

export function takeBackPoint(): void {
  if (drawing.value !== null) goOnDrawing(withPointTakenBack(drawing.value))
}

/** Ends what is being drawn and keeps it; what can't be kept stays, and says why. */
export function finishDrawing(): void {
  const now = drawing.value
  if (now === null) return
  const end = endDrawing(now)
  if (!end.ended) {
    goOnDrawing(end.drawing)
    return
  }
  settleSteps()
  stopDrawing()
  addDrawn(now.sort, [{ name: '', shape: end.shape }])
}

/** Listens while something is being drawn. Returns a function that removes the listeners. */
export function followDrawing(surface: PressSurface & CrossHairSurface): () => void {
  function set(point: Point): void {
    const now = drawing.value
    const view = surface.view()
    if (now === null || view === null) return
    const [first] = now.points
    const closes = now.form === 'area' && now.points.length >= FEWEST_POINTS.area && first !== undefined
    if (closes && distanceBetween(view.toPoint(first), point) <= CLOSES_WITHIN) finishDrawing()
    else goOnDrawing(withPointSet(now, view.toPlace(point)))
  }
  const stopPresses = followPresses(surface, {
    waits: () => drawing.peek() !== null,
    press: set,
    double: finishDrawing,
    keepsDouble: true,
    point: (point) => {
      pointedPlaceSignal.value = point === null ? null : (surface.view()?.toPlace(point) ?? null)
    },
  })
  const stopKeys = followCrossHair(surface, {
    waits: () => drawing.value !== null,
    press: set,
    end: finishDrawing,
    takeBack: takeBackPoint,
    giveUp: stopDrawing,
  })
  // What is drawn belongs to the shoot on the board and to the panel that shows it; placing a thing takes the presses over.
  let drawnFor = shoot.peek()?.id
  const stopWatching = effect(() => {
    const now = shoot.value?.id
    if (now !== drawnFor || !drawnShown.value || placing.value !== null) stopDrawing()
    drawnFor = now
    if (drawing.value === null) pointedPlaceSignal.value = null
  })
  return () => {
    stopWatching()
    stopPresses()
    stopKeys()
    stopDrawing()
  }
}
