/** A box of latitudes and longitudes that may cross the antimeridian: then its west is greater than its east. */
import { type LatLon, wrapLongitude } from './lat-lon.ts'

export interface Bounds {
  readonly south: number
  readonly north: number
  /** [-180, 180); greater than east when the box crosses the antimeridian (RFC 7946, section 5.2). */
  readonly west: number
  /** [-180, 180], 180 only for a box that ends there. */
  readonly east: number
}

/** The longitude plus or minus whole turns, so that it lies within half a turn of a reference: for drawing side by side. */
export function unwrapNear(lon: number, reference: number): number {
  const offset = wrapLongitude(lon - reference)
  // Exact where no turn is needed: adding and subtracting the reference would cost the last digits.
  return Math.abs(lon - reference) <= 180 ? lon : reference + offset
}

/** The narrowest box around all places; null for none. One place gives a box without width. */
export function boundsOf(places: readonly LatLon[]): Bounds | null {
  if (places.length === 0) return null
  const lats = places.map((place) => place.lat)
  const lons = places.map((place) => wrapLongitude(place.lon)).toSorted((one, other) => one - other)
  const [west, east] = outsideWidestGap(lons)
  return {
    south: lats.reduce((one, other) => Math.min(one, other)),
    north: lats.reduce((one, other) => Math.max(one, other)),
    west,
    east,
  }
}

/** The box spans what is left of the circle when the widest gap between neighbours is cut out. */
function outsideWidestGap(sorted: readonly number[]): readonly [number, number] {
  const first = sorted[0] ?? 0
  const last = sorted.at(-1) ?? first
  let widest = first + 360 - last
  let box: readonly [number, number] = [first, last]
  for (const [at, lon] of sorted.entries()) {
    const next = sorted[at + 1]
    if (next !== undefined && next - lon > widest) {
      widest = next - lon
      box = [next, lon]
    }
  }
  return box
}

/** Degrees from west to east, 0..360. */
export function boundsWidth(bounds: Bounds): number {
  return bounds.west <= bounds.east ? bounds.east - bounds.west : bounds.east + 360 - bounds.west
}

export function boundsCentre(bounds: Bounds): LatLon {
  return {
    lat: (bounds.south + bounds.north) / 2,
    lon: wrapLongitude(bounds.west + boundsWidth(bounds) / 2),
  }
}

/** Places around a box: its corners and between them, closely enough to tell how far it reaches from a place near by. */
export function edgePlaces(bounds: Bounds, parts = 8): LatLon[] {
  const [height, width] = [bounds.north - bounds.south, boundsWidth(bounds)]
  const at = (north: number, east: number): LatLon => ({
    lat: bounds.south + height * north,
    lon: wrapLongitude(bounds.west + width * east),
  })
  return Array.from({ length: parts }, (_, part) => part / parts).flatMap((share) => [
    at(0, share),
    at(share, 1),
    at(1, 1 - share),
    at(1 - share, 0),
  ])
}

export function boundsHold(bounds: Bounds, at: LatLon): boolean {
  if (at.lat < bounds.south || at.lat > bounds.north) return false
  const lon = wrapLongitude(at.lon)
  if (bounds.west <= bounds.east) return (lon >= bounds.west && lon <= bounds.east) || lon + 360 === bounds.east
  return lon >= bounds.west || lon <= bounds.east
}
