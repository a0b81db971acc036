/** The coasts of the world as outlines of land: whether a place lies on land, and the sides of the outlines near a window. */
import { unwrapNear } from './bounds.ts'
import type { LatLon } from './lat-lon.ts'

/** Degrees to a unit in which outlines are kept. */
const UNIT = 1e-6

/** South of this the outlines aren't told: the ice's edge is no coast to go by. Degrees. */
export const SOUTHERNMOST_COAST = -60

/** Degrees; the longitudes run on beyond 180 where the box crosses the antimeridian, so that west is never greater than east. */
export interface UnwrappedBox {
  readonly south: number
  readonly north: number
  readonly west: number
  readonly east: number
}

export interface LandOutline extends UnwrappedBox {
  /** Longitude, latitude, longitude, latitude in units, not closed. */
  readonly corners: Int32Array
}

/** Outlines that never lie within one another. Waters that the land closes in, whatever their level, count as land. */
export type Coast = readonly LandOutline[]

/** Longitude and latitude by turns, in degrees. */
type Pairs = readonly (readonly number[])[]

/** Whole across the antimeridian: where a ring crosses it, it runs on. */
function outlineOf(ring: Pairs): LandOutline {
  const closed = ring.length > 1 && ring[0]?.[0] === ring.at(-1)?.[0] && ring[0]?.[1] === ring.at(-1)?.[1]
  const corners = closed ? ring.slice(0, -1) : ring
  const units = new Int32Array(corners.length * 2)
  let before = corners[0]?.[0] ?? 0
  corners.forEach(([lon = 0, lat = 0], at) => {
    before = unwrapNear(lon, before)
    units[2 * at] = Math.round(before / UNIT)
    units[2 * at + 1] = Math.round(lat / UNIT)
  })
  return boxed(units)
}

function boxed(corners: Int32Array): LandOutline {
  let [south, north, west, east] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let at = 0; at < corners.length; at += 2) {
    const [lon, lat] = [(corners[at] as number) * UNIT, (corners[at + 1] as number) * UNIT]
    south = Math.min(south, lat)
    north = Math.max(north, lat)
    west = Math.min(west, lon)
    east = Math.max(east, lon)
  }
  return { south, north, west, east, corners }
}

/** Of rings around land; those of islands in waters that land closes in are left out, and all south of the southernmost coast. */
export function coastOf(rings: readonly Pairs[]): Coast {
  const outlines = rings.map(outlineOf).filter(({ north, corners }) => north > SOUTHERNMOST_COAST && corners.length > 4)
  return outlines.filter((outline) => {
    const [lon = 0, lat = 0] = outline.corners
    const at = { lat: lat * UNIT, lon: lon * UNIT }
    return !outlines.some((other) => other !== outline && holds(other, at))
  })
}

/** Even-odd along the parallel; a place on an outline counts as on either side. */
function holds({ south, north, west, east, corners }: LandOutline, { lat, lon }: LatLon): boolean {
  if (lat < south || lat > north) return false
  const x = unwrapNear(lon, (west + east) / 2)
  if (x < west || x > east) return false
  const [atX, atY] = [x / UNIT, lat / UNIT]
  let inside = false
  let [fromX, fromY] = [corners.at(-2) ?? 0, corners.at(-1) ?? 0]
  for (let at = 0; at < corners.length; at += 2) {
    const [toX, toY] = [corners[at] as number, corners[at + 1] as number]
    if (fromY > atY !== toY > atY && atX < fromX + ((toX - fromX) * (atY - fromY)) / (toY - fromY)) inside = !inside
    fromX = toX
    fromY = toY
  }
  return inside
}

/** South of the southernmost coast everything counts as land. */
export function onLand(coast: Coast, at: LatLon): boolean {
  return at.lat < SOUTHERNMOST_COAST || coast.some((outline) => holds(outline, at))
}

export interface CoastSide {
  readonly from: LatLon
  readonly to: LatLon
}

/** Every side that may run through a box of latitudes and of longitudes, the latter in any turn. */
export function sidesWithin(coast: Coast, box: UnwrappedBox): CoastSide[] {
  const middle = (box.west + box.east) / 2
  const sides: CoastSide[] = []
  for (const outline of coast) {
    if (outline.north < box.south || outline.south > box.north) continue
    const turn = unwrapNear((outline.west + outline.east) / 2, middle) - (outline.west + outline.east) / 2
    for (const shift of [turn - 360, turn, turn + 360]) {
      if (outline.east + shift < box.west || outline.west + shift > box.east) continue
      addSides(sides, outline.corners, shift, box)
    }
  }
  return sides
}

function addSides(sides: CoastSide[], corners: Int32Array, shift: number, box: UnwrappedBox): void {
  const place = (at: number): LatLon => ({
    lat: (corners[at + 1] as number) * UNIT,
    lon: (corners[at] as number) * UNIT + shift,
  })
  let from = place(corners.length - 2)
  for (let at = 0; at < corners.length; at += 2) {
    const to = place(at)
    const beside =
      Math.max(from.lat, to.lat) < box.south ||
      Math.min(from.lat, to.lat) > box.north ||
      Math.max(from.lon, to.lon) < box.west ||
      Math.min(from.lon, to.lon) > box.east
    if (!beside) sides.push({ from, to })
    from = to
  }
}

/** As whole numbers for a file: how many outlines, how many corners each has, and all corners. */
export function writeCoast(coast: Coast): Int32Array<ArrayBuffer> {
  const corners = coast.reduce((sum, outline) => sum + outline.corners.length, 0)
  const numbers = new Int32Array(1 + coast.length + corners)
  numbers[0] = coast.length
  let next = 1 + coast.length
  coast.forEach((outline, at) => {
    numbers[1 + at] = outline.corners.length / 2
    numbers.set(outline.corners, next)
    next += outline.corners.length
  })
  return numbers
}

/** Null when the numbers are no coast. */
export function readCoast(numbers: Int32Array): Coast | null {
  const count = numbers[0] ?? -1
  if (count < 0 || count >= numbers.length) return null
  const coast: LandOutline[] = []
  let next = 1 + count
  for (let at = 0; at < count; at++) {
    const length = 2 * (numbers[1 + at] ?? -1)
    if (length < 0 || next + length > numbers.length) return null
    coast.push(boxed(numbers.subarray(next, next + length)))
    next += length
  }
  return next === numbers.length ? coast : null
}
