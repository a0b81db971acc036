/** The tile sources as the services tell them: asked once for the settings they hang on, and the same for every map of the page. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Output } from '#app/contract/index.ts'
import { ask } from '#renderer/host/host.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { settings } from '#renderer/state/library/settings.ts'

const tileSourcesSignal = signal<Output<'tiles.sources'> | null>(null)
/** Null until they have been told. */
export const tileSources: ReadonlySignal<Output<'tiles.sources'> | null> = tileSourcesSignal

/** The settings for which they were asked last. */
let askedFor: string | null = null
let turn = 0

/** Asks for them unless they have been asked for these very settings; `again` asks all the same. Reads the settings, also within an effect. */
export async function readTileSources(again = false): Promise<void> {
  const wanted = JSON.stringify([settings.value.ownSources, settings.value.templates])
  if (askedFor === wanted && !again) return
  askedFor = wanted
  turn += 1
  const mine = turn
  const answer = await ask('tiles.sources', {})
  if (mine !== turn) return
  if (answer.ok) {
    tileSourcesSignal.value = answer.value
    return
  }
  askedFor = null
  // What waits for them goes on with what needs none.
  tileSourcesSignal.value ??= { sources: [], prefix: '' }
  tell('fault', answer.fault.message)
}
