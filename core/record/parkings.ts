/** The places where one may park for a shoot: the parking points noted at its spots. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Spot } from './spot.ts'

export function parkingsOf(spots: readonly Spot[]): LatLon[] {
  return spots.flatMap(({ access: { parking } }) => (parking === null ? [] : [parking]))
}
