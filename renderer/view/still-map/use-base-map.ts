/** The base of still maps as the settings have it: the chosen source, or the sketch, with its attribution. */
import { readMapSources, mapSources } from '#renderer/state/session/map-source.ts'
import { useEffect } from 'preact/hooks'
import type { Settings } from '#app/contract/settings.ts'
import { type BaseMap, SKETCH_CREDIT, baseMap } from './base-map.ts'

export interface StillBase {
  readonly base: BaseMap
  readonly attribution: string
}

/** Null until the sources are known. Paper is always light. */
export function useBaseMap(settings: Settings, dark: boolean): StillBase | null {
  const sources = mapSources.value
  useEffect(() => {
    if (mapSources.peek() === null) void readMapSources()
  }, [])
  if (sources === null) return null
  const source = sources.sources.find((candidate) => candidate.id === settings.mapSource) ?? null
  return {
    base: baseMap(source, sources.prefix, dark),
    attribution: source === null ? SKETCH_CREDIT : source.attribution,
  }
}
