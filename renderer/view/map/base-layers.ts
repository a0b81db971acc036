/** What lies under the plan: coasts always, and over them the sketch map, the ground by its elevations, or the tiles of the chosen source. */
import { computed, effect } from '@preact/signals'
import type L from 'leaflet'
import { GROUND_MAP } from '#renderer/state/session/ground-shown.ts'
import { dark, settings } from '#renderer/state/library/settings.ts'
import { terrainSource } from '#renderer/state/plan/terrain.ts'
import { readTileSources, tileSources } from '#renderer/state/session/tile-sources.ts'
import type { MapWindow } from '#renderer/view/ground/relief-region.ts'
import { drawnGrid, followRelief } from '#renderer/view/ground/shown-relief.ts'
import { laidGrid } from '#renderer/view/ground/map-raster.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { COAST_ATTRIBUTION } from '#renderer/view/sketch/coast-data.ts'
import { createCoastLayer } from './coast-layer.ts'
import { SKETCH_ATTRIBUTION, createSketchLayer } from './sketch-layer.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { coarseSeas } from './coarse-seas.ts'
import { createGroundLayer } from './ground-layer.ts'
import { mapLook } from '#renderer/view/drawing/map-look.ts'
import { TILE_SIZE } from '#renderer/view/drawing/plan-view.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { type TileBase, makeTileBase } from './tile-base.ts'

/** Id of the demo island's elevations, which the sketch map has a finer drawing of. */
const DEMO = 'demo'

/** The source whose tiles are shown; null for the sketch map. */
export const shownSource = computed(
  () => tileSources.value?.sources.find((source) => source.id === settings.value.mapSource) ?? null,
)

/** Whether the sketch map is what is shown, wherever it has something. */
export const sketchShown = computed(() => shownSource.value === null && settings.value.mapSource !== GROUND_MAP)

/** Whether the ground is drawn from its elevations: where that is chosen, and under the sketch map wherever it has nothing of its own. */
export const groundDrawn = computed(() => {
  if (drawnGrid.value === null || shownSource.value !== null) return false
  return settings.value.mapSource === GROUND_MAP || !(terrainSource.value?.sources ?? []).some(({ id }) => id === DEMO)
})

/** Who made what is shown, with a link where there is one. */
export const attribution = computed<readonly { readonly text: string; readonly link: string | null }[]>(() => {
  const source = shownSource.value
  if (source === null) {
    const parts = groundDrawn.value ? (terrainSource.value?.sources ?? []) : []
    const elevations = parts.map(({ id, name, attribution: owed }) => owedFor(id, name, owed))
    const sketch = groundDrawn.value || settings.value.mapSource === GROUND_MAP ? [] : [SKETCH_ATTRIBUTION]
    const texts = [...new Set([...elevations, ...sketch, COAST_ATTRIBUTION])].filter((text) => text !== '')
    return texts.map((text) => ({ text, link: null }))
  }
  return [{ text: source.attribution, link: source.attributionLink === '' ? null : source.attributionLink }]
})

/** A file of the user's own has no maker we know of: its name stands for it. */
function owedFor(id: string, name: string, owed: string): string {
  if (id === DEMO) return SKETCH_ATTRIBUTION
  return owed === '' ? groundMapWords.elevationsFrom(name) : owed
}

/** What the map shows, in world coordinates. */
export function shownWindow(): MapWindow | null {
  const look = mapLook.value
  if (look === null) return null
  const { zoom, originX, originY, box } = look
  const size = TILE_SIZE * 2 ** zoom
  return {
    zoom,
    west: (originX + box.left) / size,
    east: (originX + box.right) / size,
    north: (originY + box.top) / size,
    south: (originY + box.bottom) / size,
  }
}

export interface Base {
  /** Asks again for the tiles that are missing. */
  readonly retry: () => void
  readonly stop: () => void
}

/** Puts the base under a map and keeps it as the settings want it. */
export function layBase(map: L.Map): Base {
  const coast = createCoastLayer(dark.peek() ? DARK_PALETTE : LIGHT_PALETTE, { pane: 'tilePane', zIndex: 1 })
  const sketch = createSketchLayer(dark.peek() ? DARK_PALETTE : LIGHT_PALETTE, { pane: 'tilePane', zIndex: 3 })
  const ground = createGroundLayer({ pane: 'tilePane', zIndex: 2 })
  coast.addTo(map)
  let tiles: TileBase | null = null
  let painted = dark.peek()
  const onGround = computed(() => settings.value.mapSource === GROUND_MAP)
  const source = computed(() => JSON.stringify([shownSource.value, tileSources.value?.prefix]))

  const stopReading = effect(() => void readTileSources())
  const stopPainting = effect(() => {
    if (dark.value === painted) return
    painted = dark.value
    const palette = painted ? DARK_PALETTE : LIGHT_PALETTE
    coast.setPalette(palette)
    sketch.setPalette(palette)
  })
  const stopChoosing = effect(() => {
    void source.value
    const chosen = shownSource.peek()
    const prefix = tileSources.peek()?.prefix
    tiles?.layer.remove()
    tiles = chosen === null || prefix === undefined ? null : makeTileBase(chosen, prefix)
    if (tiles === null && !onGround.value) sketch.addTo(map)
    else sketch.remove()
    tiles?.layer.setZIndex(4).addTo(map)
  })
  const stopGround = calmly(() => {
    if (groundDrawn.value) ground.layer.addTo(map)
    else ground.layer.remove()
  })
  const stopRelief = followRelief({
    on: () => groundDrawn.value,
    window: shownWindow,
    seas: (grid) => coarseSeas(laidGrid(grid).raster),
  })
  return {
    retry: () => tiles?.retry.now(),
    stop() {
      stopReading()
      stopPainting()
      stopChoosing()
      stopGround()
      stopRelief()
      ground.stop()
      tiles?.layer.remove()
    },
  }
}
