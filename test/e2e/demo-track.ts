/** The demo island's own track on which its first spot stops, as ground for a scan. */
import { readFileSync } from 'node:fs'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import type { RunningHost } from '#test/help/host.ts'
import { savedShoot } from './board.ts'

interface IslandWay {
  readonly properties: { readonly kind?: string }
  readonly geometry: { readonly type: string; readonly coordinates: readonly (readonly [number, number])[] }
}

export async function demoTrack(host: RunningHost | null): Promise<StoppingGround> {
  const { spots } = await savedShoot(host, 'demo')
  const stop = spots[0]?.stop.at
  if (stop === undefined) throw new Error('the demo has no spot')
  const island = JSON.parse(readFileSync('app/demo/island.geojson', 'utf8')) as { features: IslandWay[] }
  const tracks = island.features
    .filter(({ properties, geometry }) => properties.kind === 'track' && geometry.type === 'LineString')
    .map(({ geometry }) => geometry.coordinates.map(([lon, lat]) => ({ lat, lon })))
  const away = (points: readonly LatLon[]): number => Math.min(...points.map((at) => geodesicDistance(at, stop)))
  const [points = []] = tracks.toSorted((one, other) => away(one) - away(other))
  return { id: 'track', name: 'Sound track', form: 'line', points, turn: 'either-way' }
}
