/** The base of still maps as the settings have it: the chosen source, or the sketch, with its attribution. */
import { useEffect, useState } from 'preact/hooks'
import type { Output } from '#app/contract/index.ts'
import type { Settings } from '#app/contract/settings.ts'
import { ask } from '#renderer/host/host.ts'
import { type BaseMap, SKETCH_CREDIT, baseMap } from './base-map.ts'

export interface StillBase {
  readonly base: BaseMap
  readonly attribution: string
}

/** Null until the sources are known. Paper is always light. */
export function useBaseMap(settings: Settings, dark: boolean): StillBase | null {
  const [sources, setSources] = useState<Output<'tiles.sources'> | null>(null)
  useEffect(() => {
    void ask('tiles.sources', {}).then((answer) => setSources(answer.ok ? answer.value : { sources: [], prefix: '' }))
  }, [])
  if (sources === null) return null
  const source = sources.sources.find((candidate) => candidate.id === settings.mapSource) ?? null
  return {
    base: baseMap(source, sources.prefix, dark),
    attribution: source === null ? SKETCH_CREDIT : source.attribution,
  }
}
