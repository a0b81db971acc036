/** Which map is shown: the built-in one, one drawn from the elevations, or the tiles of a source. */
import { tileSources } from './tile-sources.ts'
import { computed } from '@preact/signals'
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { GROUND_MAP } from './ground-overlay.ts'

/** Id of the built-in map among the sources. */
export const SKETCH_MAP = 'sketch'

/** The source whose tiles are shown; null while the map is one that Standpoint draws. */
export const shownSource = computed<TileSourceBrief | null>(
  () => tileSources.value?.sources.find((source) => source.id === settings.value.mapSource) ?? null,
)

/** Whether the built-in map is what is shown, wherever it has something. */
export const sketchShown = computed(() => shownSource.value === null && settings.value.mapSource !== GROUND_MAP)

/** The sources of tiles that may be chosen, beside the two maps that Standpoint draws. */
export const tilesOnOffer = computed<readonly TileSourceBrief[]>(() =>
  (tileSources.value?.sources ?? []).filter(({ id }) => id !== SKETCH_MAP && id !== GROUND_MAP),
)

export function chooseMap(id: string): void {
  void changeSettings({ mapSource: id })
}
