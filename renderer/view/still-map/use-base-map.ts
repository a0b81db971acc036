/** The base of still maps as the settings have it: the chosen source, or the sketch. */
import { useEffect, useMemo } from 'preact/hooks'
import { type Settings } from '#app/contract/settings.ts'
import { readTileSources, tileSources } from '#renderer/state/session/tile-sources.ts'
import { type BaseMap, baseMap } from './base-map.ts'

/** Null until the sources are known. Paper is always light. */
export function useBaseMap({ mapSource }: Settings, dark: boolean): BaseMap | null {
  useEffect(() => void readTileSources(), [])
  const sources = tileSources.value
  // Drawn again with the page only when it is another one.
  return useMemo(() => {
    if (sources === null) return null
    const source = sources.sources.find((candidate) => candidate.id === mapSource) ?? null
    return baseMap(source, sources.prefix, dark)
  }, [sources, mapSource, dark])
}
