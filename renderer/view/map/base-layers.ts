/** What lies under the plan: coasts always, and over them the sketch map, the ground by its elevations, or the tiles of the chosen source. */
import { BaseSurface } from './base-surface.ts'
import type { BaseLook } from '#renderer/view/base/base-request.ts'
import { steady } from '#renderer/job/steady.ts'
import { shownWindow } from '#renderer/view/drawing/map-look.ts'
import { shownSource, sketchShown } from '#renderer/state/session/map-source.ts'
import { computed, effect } from '@preact/signals'
import type L from 'leaflet'
import { GROUND_MAP } from '#renderer/state/session/ground-overlay.ts'
import { dark, settings } from '#renderer/state/library/settings.ts'
import { terrainSource } from '#renderer/state/plan/terrain.ts'
import { drawnGrid, followRelief, reliefShown, contoursShown } from '#renderer/view/ground/shown-relief.ts'
import { readTileSources, tileSources } from '#renderer/state/session/tile-sources.ts'
import { laidGrid } from '#renderer/view/ground/map-raster.ts'
import { groundMapWords } from '#renderer/words/en-ground-map.ts'
import { COAST_ATTRIBUTION } from '#renderer/view/sketch/coast-data.ts'
import { SKETCH_ATTRIBUTION } from '#renderer/view/sketch/island-data.ts'
import { coarseSeas } from './coarse-seas.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { type TileBase, makeTileBase } from './tile-base.ts'

/** Id of the demo island's elevations, which the sketch map has a finer drawing of. */
const DEMO = 'demo'

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

export interface Base {
  /** Asks again for the tiles that are missing. */
  readonly retry: () => void
  readonly stop: () => void
}

/** Puts the base under a map and keeps it as the settings want it. */
export function layBase(map: L.Map): Base {
  const look = steady<BaseLook>(() => ({ palette: dark.value ? 'dark' : 'light', sketch: sketchShown.value }))
  const surface = new BaseSurface(look.peek())
  surface.addTo(map)
  let tiles: TileBase | null = null
  const source = computed(() => JSON.stringify([shownSource.value, tileSources.value?.prefix]))

  const stopReading = effect(() => void readTileSources())
  const stopLooking = effect(() => surface.show(look.value))
  const stopChoosing = effect(() => {
    void source.value
    const chosen = shownSource.peek()
    const prefix = tileSources.peek()?.prefix
    tiles?.layer.remove()
    tiles = chosen === null || prefix === undefined ? null : makeTileBase(chosen, prefix)
    tiles?.layer.setZIndex(4).addTo(map)
  })
  const stopRelief = calmly(() => surface.showRelief(groundDrawn.value ? reliefShown.value : null))
  const stopContours = calmly(() => surface.showContours(groundDrawn.value ? contoursShown.value : null))
  const stopFollowing = followRelief({
    on: () => groundDrawn.value,
    window: shownWindow,
    seas: (grid) => coarseSeas(laidGrid(grid).raster),
  })
  return {
    retry: () => tiles?.retry.now(),
    stop() {
      stopReading()
      stopLooking()
      stopChoosing()
      stopRelief()
      stopContours()
      stopFollowing()
      surface.remove()
      tiles?.layer.remove()
    },
  }
}
