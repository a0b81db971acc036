/** Taking a way or an area of the sketch map over with a press: what lies under the pointer is shown before it is taken. */
import { type ReadonlySignal, computed, effect, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { addDrawn } from '#renderer/state/act/drawn-acts.ts'
import { drawnShown, stopDrawing, takingAs } from '#renderer/state/session/drawn-ground.ts'
import { settleSteps } from '#renderer/state/act/live-change.ts'
import { stoppingWords } from '#renderer/words/en-stopping.ts'
import type { SketchIndex } from '#renderer/view/sketch/sketch-index.ts'
import { loadIsland } from '#renderer/view/sketch/island-data.ts'
import { type WayUnder, wayUnder } from '#renderer/view/sketch/way-under.ts'
import { boxesMeet } from '#renderer/view/sketch/world.ts'
import { sketchShown } from '#renderer/state/session/map-source.ts'
import { shownWindow } from '#renderer/view/drawing/map-look.ts'
import { type CrossHairSurface, followCrossHair } from './cross-hair.ts'
import { type PressSurface, followPresses } from './map-press.ts'
import { mapLook } from '#renderer/view/drawing/map-look.ts'
import { TILE_SIZE, type Point } from '#renderer/view/drawing/plan-view.ts'

/** Pixels from a way within which a press takes it. */
const REACH = 14

const island = signal<SketchIndex | null>(null)

/** Whether there is anything on the map to take over. */
export const canTake = computed(() => {
  const window = mapLook.value === null ? null : shownWindow()
  return sketchShown.value && island.value !== null && window !== null && boxesMeet(window, island.value.box)
})

const pointed = signal<LatLon | null>(null)
const tookNothingSignal = signal(false)
/** True once a press has met nothing, until the next. */
export const tookNothing: ReadonlySignal<boolean> = tookNothingSignal

function under(place: LatLon): WayUnder | null {
  const sort = takingAs.value
  const window = shownWindow()
  if (sort === null || window === null || island.value === null) return null
  return wayUnder(island.value, sort, place, REACH / (TILE_SIZE * 2 ** window.zoom), window)
}

/** What a press would take just now. */
export const wayPointed = computed(() => (pointed.value === null ? null : under(pointed.value)))

/** Shows what would be taken at a place; the cross-hair's, or the pointer's. */
export function pointAtWay(place: LatLon | null): void {
  pointed.value = place
}

function take(place: LatLon): void {
  const sort = takingAs.value
  const way = under(place)
  tookNothingSignal.value = way === null
  if (sort === null || way === null) return
  settleSteps()
  const name = way.name === '' ? (stoppingWords.taken[way.feature] ?? '') : way.name
  addDrawn(sort, [{ name, shape: way.shape }], way.kind)
}

/** Listens while a way is to be taken. Returns a function that removes the listeners. */
export function followTaking(surface: PressSurface & CrossHairSurface): () => void {
  const press = (point: Point): void => {
    const place = surface.view()?.toPlace(point)
    if (place !== undefined) take(place)
  }
  const stopLoading = effect(() => {
    if (drawnShown.value && sketchShown.value && island.peek() === null) void load()
  })
  const stopClearing = effect(() => {
    if (takingAs.value !== null) return
    pointed.value = null
    tookNothingSignal.value = false
  })
  const stopPresses = followPresses(surface, {
    waits: () => takingAs.peek() !== null,
    press,
    double: () => undefined,
    keepsDouble: true,
    point: (point) => pointAtWay(point === null ? null : (surface.view()?.toPlace(point) ?? null)),
  })
  const stopKeys = followCrossHair(surface, {
    waits: () => takingAs.value !== null,
    press,
    end: stopDrawing,
    takeBack: () => undefined,
    giveUp: stopDrawing,
  })
  return () => {
    stopLoading()
    stopClearing()
    stopPresses()
    stopKeys()
  }
}

/** The map itself says so when its data can't be had; without it there is nothing to take. */
async function load(): Promise<void> {
  try {
    island.value = (await loadIsland()).index
  } catch {
    island.value = null
  }
}
