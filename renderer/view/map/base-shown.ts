/** What the base really shows: whether the ground is drawn, what of it is in the map's window, and who is to be named for it. */
import { computed } from '@preact/signals'
import { settings } from '#renderer/state/library/settings.ts'
import { terrainSource } from '#renderer/state/plan/terrain.ts'
import { GROUND_MAP } from '#renderer/state/session/ground-overlay.ts'
import { shownSource, sketchShown } from '#renderer/state/session/map-source.ts'
import { mapLook, shownPixels, shownWindow } from '#renderer/view/drawing/map-look.ts'
import { showsGround } from '#renderer/view/ground/relief-region.ts'
import { drawnGrid } from '#renderer/view/ground/shown-relief.ts'
import { GROUND_FROM, showsIsland } from '#renderer/view/sketch/island-box.ts'
import { DEMO_ELEVATIONS, paintedCredits } from '#renderer/view/sketch/painted-credits.ts'

/** Whether the ground is drawn from its elevations: where that is chosen, and under the sketch map wherever it has nothing of its own. */
export const groundDrawn = computed(() => {
  if (drawnGrid.value === null || shownSource.value !== null) return false
  return (
    settings.value.mapSource === GROUND_MAP ||
    !(terrainSource.value?.sources ?? []).some(({ id }) => id === DEMO_ELEVATIONS)
  )
})

/** Of the map's window, so that only what is seen has its makers named. */
export const islandSeen = computed(() => {
  const look = mapLook.value
  if (look === null || !sketchShown.value) return false
  return showsIsland(shownPixels(look))
})
export const groundSeen = computed(() => {
  const [grid, window] = [drawnGrid.value, shownWindow()]
  if (grid === null || window === null || !groundDrawn.value || window.zoom < GROUND_FROM) return false
  return showsGround(grid, window)
})

/** Who made what is shown, with a link where there is one. */
export const attribution = computed<readonly { readonly text: string; readonly link: string | null }[]>(() => {
  const source = shownSource.value
  if (source === null) {
    const elevations = groundSeen.value ? (terrainSource.value?.sources ?? []) : []
    return paintedCredits({ island: islandSeen.value, elevations }).map((text) => ({ text, link: null }))
  }
  return [{ text: source.attribution, link: source.attributionLink === '' ? null : source.attributionLink }]
})
