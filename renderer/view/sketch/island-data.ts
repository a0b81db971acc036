/** The demo island's map data, fetched once when first wanted. */
import type { FeatureCollection } from 'geojson'
import elevationUrl from '#app/demo/elevation.bin?url'
import header from '#app/demo/elevation.json'
import islandUrl from '#app/demo/island.geojson?url'
import { readRelief, type Relief } from './relief.ts'
import { SketchIndex } from './sketch-index.ts'

export interface IslandData {
  readonly index: SketchIndex
  readonly relief: Relief
}

let loading: Promise<IslandData> | null = null

async function fetched(url: string): Promise<Response> {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`the built-in map is missing: ${url} answered ${response.status}`)
  return response
}

async function load(): Promise<IslandData> {
  const [island, elevation] = await Promise.all([
    fetched(islandUrl).then((response) => response.json() as Promise<FeatureCollection>),
    fetched(elevationUrl).then((response) => response.arrayBuffer()),
  ])
  return { index: new SketchIndex(island), relief: readRelief(header, elevation) }
}

/** The island; a failed attempt is forgotten, so that the next one tries again. */
export function loadIsland(): Promise<IslandData> {
  loading ??= load().catch((cause: unknown) => {
    loading = null
    throw cause
  })
  return loading
}
