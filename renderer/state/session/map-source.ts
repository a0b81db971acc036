/** Which map is shown: the sources as the services tell them, read once and again when the user's own change. */
import { type ReadonlySignal, computed, effect, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import type { TileSourceBrief } from '#app/contract/tiles.ts'
import { ask } from '#renderer/host/host.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { GROUND_MAP } from './ground-shown.ts'

/** Id of the built-in map among the sources. */
export const SKETCH_MAP = 'sketch'

const mapSourcesSignal = signal<Output<'tiles.sources'> | null>(null)
/** Every source with its terms, and the path before its id; null until they were read. */
export const mapSources: ReadonlySignal<Output<'tiles.sources'> | null> = mapSourcesSignal

/** The source whose tiles are shown; null while the map is one that Standpoint draws. */
export const shownSource = computed<TileSourceBrief | null>(
  () => mapSources.value?.sources.find((source) => source.id === settings.value.mapSource) ?? null,
)

/** Whether the built-in map is what is shown, wherever it has something. */
export const sketchShown = computed(() => shownSource.value === null && settings.value.mapSource !== GROUND_MAP)

let reading: Promise<void> | null = null

async function read(): Promise<void> {
  const answer = await ask('tiles.sources', {})
  if (answer.ok) mapSourcesSignal.value = answer.value
  else {
    // Without a list there is the built-in map: whoever waits for one need not wait on.
    mapSourcesSignal.value ??= { sources: [], prefix: '' }
    tell('fault', answer.fault.message)
  }
}

/** Reads the sources now; two who ask at once are answered by one call. */
export function readMapSources(): Promise<void> {
  reading ??= read().finally(() => {
    reading = null
  })
  return reading
}

/** Reads them at the start and whenever what they hang on changes. Returns a function that ends this. */
export function followMapSources(): () => void {
  const hangsOn = computed(() => JSON.stringify([settings.value.ownSources, settings.value.templates]))
  return effect(() => {
    void hangsOn.value
    void readMapSources()
  })
}
