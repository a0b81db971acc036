/** What lies under the plan: coasts always, and over them the sketch map, the ground by its elevations, or the tiles of the chosen source. */
import { BaseSurface } from './base-surface.ts'
import type { BaseLook } from '#renderer/view/base/base-request.ts'
import { steady } from '#renderer/job/steady.ts'
import { shownWindow } from '#renderer/view/drawing/map-look.ts'
import { shownSource, sketchShown } from '#renderer/state/session/map-source.ts'
import { computed, effect } from '@preact/signals'
import type L from 'leaflet'
import { dark } from '#renderer/state/library/settings.ts'
import { followRelief, reliefShown, contoursShown } from '#renderer/view/ground/shown-relief.ts'
import { readTileSources, tileSources } from '#renderer/state/session/tile-sources.ts'
import { laidGrid } from '#renderer/view/ground/map-raster.ts'
import { groundDrawn } from './base-shown.ts'
import { coarseSeas } from './coarse-seas.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { type TileBase, makeTileBase } from './tile-base.ts'

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
