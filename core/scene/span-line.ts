/** The line of a span as one measures it on a map: from its first point to its last, how long and toward where, and the same line longer or turned. */
import { type GeodesicLine, destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'

/** Straight from the first point to the last; no bearing where they are one place, as of a wall that closes. */
export function endToEnd(line: readonly LatLon[]): GeodesicLine {
  const [first, last] = [line[0], line.at(-1)]
  return first === undefined || last === undefined ? { distance: 0, bearing: null } : geodesicLine(first, last)
}

/** Every point carried by one turn and one scale about the first, which stays; the last is carried exactly. */
function carried(line: readonly LatLon[], turn: number, scale: number): readonly LatLon[] {
  const [first, ...others] = line
  if (first === undefined) return line
  const carry = (at: LatLon): LatLon => {
    const { bearing, distance } = geodesicLine(first, at)
    return bearing === null ? at : destination(first, bearing + turn, distance * scale)
  }
  return [first, ...others.map(carry)]
}

/** The line as long as this from end to end, its points in the same proportions. A line without a length keeps none. */
export function withLength(line: readonly LatLon[], metres: number): readonly LatLon[] {
  const { distance, bearing } = endToEnd(line)
  return bearing === null ? line : carried(line, 0, metres / distance)
}

/** The line turned about its first point until its last lies toward this bearing. */
export function turnedToward(line: readonly LatLon[], toward: number): readonly LatLon[] {
  const { bearing } = endToEnd(line)
  return bearing === null ? line : carried(line, toward - bearing, 1)
}
