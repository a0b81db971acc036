/** Fetches the world's coast once, when it is first wanted. */
import type { Topology } from 'topojson-specification'
import atlasUrl from 'world-atlas/countries-50m.json?url'
import { type CoastData, readCoastShapes } from './coast-shapes.ts'

let loading: Promise<CoastData> | null = null

async function load(): Promise<CoastData> {
  const response = await fetch(atlasUrl)
  if (!response.ok) throw new Error(`the coast map is missing: ${atlasUrl} answered ${response.status}`)
  return readCoastShapes((await response.json()) as Topology)
}

/** The coast; a failed attempt is forgotten, so that the next one tries again. */
export function loadCoast(): Promise<CoastData> {
  loading ??= load().catch((cause: unknown) => {
    loading = null
    throw cause
  })
  return loading
}
