/** Where the map looks before it has been told any place: most of the inhabited world. */
import type { LatLon } from '#core/geo/lat-lon.ts'

export const FIRST_PLACE: { readonly at: LatLon; readonly zoom: number } = { at: { lat: 30, lon: 0 }, zoom: 2 }
