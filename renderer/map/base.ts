/** What lies under the plan: coasts always, and over them the sketch map or the tiles of the chosen source. */
import { computed, effect, signal } from '@preact/signals'
import type L from 'leaflet'
import type { Output } from '#app/contract/index.ts'
import { ask } from '#renderer/host.ts'
import { tell } from '#renderer/state/notices.ts'
import { dark, settings } from '#renderer/state/settings.ts'
import { COAST_ATTRIBUTION } from '#renderer/map/sketch/coast-data.ts'
import { createCoastLayer } from '#renderer/map/sketch/coast-layer.ts'
import { SKETCH_ATTRIBUTION, createSketchLayer } from '#renderer/map/sketch/sketch-layer.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/map/sketch/sketch-palette.ts'
import { type TileBase, makeTileBase } from './tile-base.ts'

const SKETCH = 'sketch'

/** The sources as the services tell them; read again when the user's own change. */
const known = signal<Output<'tiles.sources'> | null>(null)

/** The source whose tiles are shown; null for the sketch map. */
export const shownSource = computed(
  () => known.value?.sources.find((source) => source.id === settings.value.mapSource) ?? null,
)

/** Who made what is shown, with a link where there is one. */
export const attribution = computed<readonly { readonly text: string; readonly link: string | null }[]>(() => {
  const source = shownSource.value
  if (source === null) return [SKETCH_ATTRIBUTION, COAST_ATTRIBUTION].map((text) => ({ text, link: null }))
  return [{ text: source.attribution, link: source.attributionLink === '' ? null : source.attributionLink }]
})

async function readSources(): Promise<void> {
  const answer = await ask('tiles.sources', {})
  if (answer.ok) known.value = answer.value
  else tell('fault', answer.fault.message)
}

export interface Base {
  /** Asks again for the tiles that are missing. */
  readonly retry: () => void
  readonly stop: () => void
}

/** Puts the base under a map and keeps it as the settings want it. */
export function layBase(map: L.Map): Base {
  const coast = createCoastLayer(dark.peek() ? DARK_PALETTE : LIGHT_PALETTE, { pane: 'tilePane', zIndex: 1 })
  const sketch = createSketchLayer(dark.peek() ? DARK_PALETTE : LIGHT_PALETTE, { pane: 'tilePane', zIndex: 2 })
  coast.addTo(map)
  let tiles: TileBase | null = null
  let painted = dark.peek()
  const own = computed(() => JSON.stringify([settings.value.ownSources, settings.value.templates]))
  const source = computed(() => JSON.stringify([shownSource.value, known.value?.prefix]))

  const stopReading = effect(() => {
    if (own.value !== '' && (settings.value.mapSource !== SKETCH || known.peek() === null)) void readSources()
  })
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
    const prefix = known.peek()?.prefix
    tiles?.layer.remove()
    tiles = chosen === null || prefix === undefined ? null : makeTileBase(chosen, prefix)
    if (tiles === null) sketch.addTo(map)
    else {
      sketch.remove()
      tiles.layer.setZIndex(3).addTo(map)
    }
  })
  return {
    retry: () => tiles?.retry.now(),
    stop() {
      stopReading()
      stopPainting()
      stopChoosing()
      tiles?.layer.remove()
    },
  }
}
