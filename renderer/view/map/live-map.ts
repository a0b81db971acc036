/** The Leaflet map on the board from its making to its end: base, the plan's pane, its size, and the wishes where to look. */
import { FIRST_PLACE } from './first-place.ts'
import { effect } from '@preact/signals'
import { batch, signal } from '@preact/signals'
import type L from 'leaflet'
import { followArea } from '#renderer/view/ground/shown-area.ts'
import { layBase } from './base-layers.ts'
import { ask } from '#renderer/host/host.ts'
import { drawing, takingAs } from '#renderer/state/session/drawn-ground.ts'
import { placing } from '#renderer/state/session/navigation.ts'
import { freeWindows } from '#renderer/view/drawing/covered.ts'
import { followDrawing } from '#renderer/view/hand/draw-shape.ts'
import { endStalePlacing } from '#renderer/state/act/end-placing.ts'
import { bestFit } from '#renderer/view/drawing/fit.ts'
import {
  NEAREST_ZOOM,
  followZoom,
  fromLeaflet,
  goTo,
  layerPoint,
  makeLeafletMap,
  readBounds,
  readLook,
  standStill,
} from './leaflet-seam.ts'
import { mapLook, mapView, tellMapLook } from '#renderer/view/drawing/map-look.ts'
import {
  type LookRequest,
  wantedLook,
  tellMapBounds,
  takeWantedLook,
  setOutFor,
  forgetMapBounds,
} from '#renderer/state/session/map-window.ts'
import { watchNetwork } from './watch-network.ts'
import { followPlacing, placeAt } from '#renderer/view/hand/placing.ts'
import { followTaking } from '#renderer/view/hand/take-way.ts'
import type { Point } from '#renderer/view/drawing/plan-view.ts'
import { followPointer } from './pointer-height.tsx'
import { layVeil } from './veil-layer.ts'

/** Where the map looks when it starts: on the whole world at first, later where it looked when another page took its place. */
let start = FIRST_PLACE
/** A place asked for by name or coordinates is shown at least this near. */
const STREET_ZOOM = 14

export interface LiveMap {
  /** The pane in which the plan is drawn, in the layers' pixels. */
  readonly pane: HTMLElement
  readonly pointOf: (event: { readonly clientX: number; readonly clientY: number }) => Point
  readonly zoomBy: (steps: number) => void
  readonly placeInMiddle: () => void
  readonly retryTiles: () => void
  readonly stop: () => void
}

function hasSize(map: L.Map): boolean {
  const size = map.getSize()
  return size.x > 0 && size.y > 0
}

function meet(map: L.Map, look: LookRequest, smoothly: boolean): void {
  if (look.kind === 'fly') {
    const zoom = look.zoom ?? Math.max(STREET_ZOOM, map.getZoom())
    setOutFor(look.at)
    goTo(map, look.at, Math.min(NEAREST_ZOOM, zoom), smoothly)
    return
  }
  const size = map.getSize()
  const fitted = bestFit(look.places, freeWindows(size.x, size.y), look.closest)
  if (fitted !== null) goTo(map, fitted.centre, fitted.zoom, false)
}

export function startMap(holder: HTMLElement): LiveMap {
  const map = makeLeafletMap(holder, start.at, start.zoom)
  const pane = map.createPane('plan')
  const sized = signal(hasSize(map))
  let seen = false

  function read(): void {
    if (hasSize(map)) tellMapLook(readLook(map))
  }

  function redraw(): void {
    standStill(pane)
    read()
  }

  function readWindow(): void {
    if (hasSize(map)) tellMapBounds(readBounds(map), fromLeaflet(map.getCenter()))
  }

  // The container's size changes without the window's: a panel opens, a page hides and shows it.
  const watcher = new ResizeObserver(() => {
    map.invalidateSize({ animate: false, pan: false })
    batch(() => {
      sized.value = hasSize(map)
      read()
      readWindow()
    })
  })
  watcher.observe(holder)
  map.on('move', redraw)
  map.on('moveend', readWindow)
  followZoom(map, pane, () => mapLook.peek() ?? readLook(map))
  // Before the base: else the first that it paints, a second's work, would be the world that nobody asked to see.
  const stopLooking = effect(() => {
    const look = wantedLook.value
    if (look === null || !sized.value) return
    takeWantedLook()
    meet(map, look, seen)
    seen = true
  })
  const base = layBase(map)
  const stopVeil = layVeil(map)
  const stopArea = followArea()
  const stopPointer = followPointer(holder)
  const stopNetwork = watchNetwork(base.retry)
  const pointOf = (event: { readonly clientX: number; readonly clientY: number }): Point => layerPoint(map, event)
  const pressed = {
    holder,
    view: () => mapView.peek(),
    pointOf,
    panBy: (x: number, y: number) => void map.panBy([x, y], { animate: false }),
  }
  const stopPlacing = followPlacing(pressed)
  const stopStale = endStalePlacing()
  const stopDrawing = followDrawing(pressed)
  const stopTaking = followTaking(pressed)
  const stopWaiting = effect(() => {
    const waits = placing.value !== null || drawing.value !== null || takingAs.value !== null
    holder.classList.toggle('placing', waits)
  })
  redraw()
  readWindow()
  return {
    pane,
    pointOf,
    zoomBy: (steps) => map.setZoom(map.getZoom() + steps),
    placeInMiddle: () => placeAt(fromLeaflet(map.getCenter())),
    // Pauses that servers were given end first: the user does not want to wait for them.
    retryTiles: () => void ask('tiles.again', {}).then(base.retry),
    stop() {
      watcher.disconnect()
      stopLooking()
      stopWaiting()
      stopStale()
      stopPlacing()
      stopTaking()
      stopDrawing()
      stopNetwork()
      stopVeil()
      stopArea()
      stopPointer()
      base.stop()
      start = { at: fromLeaflet(map.getCenter()), zoom: map.getZoom() }
      map.remove()
      tellMapLook(null)
      forgetMapBounds()
    },
  }
}
