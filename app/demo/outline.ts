/** What is done with lines and rings of the plane: area, holes, thinning, smoothing. */
import type { IslandRing } from './isolines.ts'
import type { IslandPoint } from './island-frame.ts'

/** Square metres, positive when the ring runs anticlockwise. */
export function islandRingArea(ring: IslandRing): number {
  let sum = 0
  for (let place = 0; place < ring.length; place++) {
    const here = ring[place]
    const next = ring[(place + 1) % ring.length]
    if (here !== undefined && next !== undefined) sum += here.east * next.north - next.east * here.north
  }
  return sum / 2
}

export function isInside(point: IslandPoint, ring: IslandRing): boolean {
  let inside = false
  for (let place = 0, before = ring.length - 1; place < ring.length; before = place++) {
    const here = ring[place]
    const last = ring[before]
    if (here === undefined || last === undefined) continue
    if (here.north > point.north === last.north > point.north) continue
    const crossing = last.east + ((point.north - last.north) / (here.north - last.north)) * (here.east - last.east)
    if (point.east < crossing) inside = !inside
  }
  return inside
}

/** Rings gathered into polygons: anticlockwise outer rings, each with the clockwise holes that lie in it. */
export function polygons(rings: readonly IslandRing[], leastArea: number): IslandRing[][] {
  const outers = rings.filter((ring) => islandRingArea(ring) >= leastArea).map((ring) => [ring])
  for (const hole of rings) {
    if (islandRingArea(hole) > -leastArea || hole[0] === undefined) continue
    const first = hole[0]
    const holders = outers.filter((outer) => outer[0] !== undefined && isInside(first, outer[0]))
    holders.sort((left, right) => islandRingArea(left[0] ?? []) - islandRingArea(right[0] ?? []))
    holders[0]?.push(hole)
  }
  return outers
}

/** Drops points that lie within `tolerance` metres of the line kept (Douglas and Peucker 1973); the ends stay. */
export function simplify(line: IslandRing, tolerance: number): IslandPoint[] {
  if (line.length < 3) return [...line]
  const keep = new Uint8Array(line.length)
  keep[0] = 1
  keep[line.length - 1] = 1
  const open: [number, number][] = [[0, line.length - 1]]
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span
    const farthest = farthestFrom(line, from, to)
    if (farthest.off <= tolerance) continue
    keep[farthest.place] = 1
    open.push([from, farthest.place], [farthest.place, to])
  }
  return line.filter((_, place) => keep[place] === 1)
}

function farthestFrom(line: IslandRing, from: number, to: number): { readonly place: number; readonly off: number } {
  const start = line[from] ?? { east: 0, north: 0 }
  const end = line[to] ?? start
  const east = end.east - start.east
  const north = end.north - start.north
  const length = Math.hypot(east, north)
  let place = from
  let off = -1
  for (let at = from + 1; at < to; at++) {
    const point = line[at] ?? start
    const away =
      length === 0
        ? Math.hypot(point.east - start.east, point.north - start.north)
        : Math.abs((point.east - start.east) * north - (point.north - start.north) * east) / length
    if (away > off) {
      off = away
      place = at
    }
  }
  return { place, off }
}

/** A ring thinned from two opposite points on, so that it keeps its shape; not closed. */
export function thinRing(ring: IslandRing, tolerance: number): IslandPoint[] {
  const half = ring.length >> 1
  const first = ring[0]
  if (first === undefined) return []
  return [
    ...simplify(ring.slice(0, half + 1), tolerance).slice(0, -1),
    ...simplify([...ring.slice(half), first], tolerance).slice(0, -1),
  ]
}

/** Pulls each inner point toward its neighbours' mean, `rounds` times; the ends stay. */
export function relax(line: IslandRing, rounds: number): IslandPoint[] {
  let points = [...line]
  for (let round = 0; round < rounds; round++) {
    points = points.map((point, place) => {
      const before = points[place - 1]
      const after = points[place + 1]
      if (before === undefined || after === undefined) return point
      return {
        east: point.east / 2 + (before.east + after.east) / 4,
        north: point.north / 2 + (before.north + after.north) / 4,
      }
    })
  }
  return points
}

/** The line cut again into steps of about `spacing` metres. */
export function evenlySpaced(line: IslandRing, spacing: number): IslandPoint[] {
  const points: IslandPoint[] = []
  for (let place = 0; place + 1 < line.length; place++) {
    const here = line[place]
    const next = line[place + 1]
    if (here === undefined || next === undefined) continue
    const steps = Math.max(1, Math.round(Math.hypot(next.east - here.east, next.north - here.north) / spacing))
    for (let part = 0; part < steps; part++) {
      const share = part / steps
      points.push({
        east: here.east + (next.east - here.east) * share,
        north: here.north + (next.north - here.north) * share,
      })
    }
  }
  const last = line.at(-1)
  if (last !== undefined) points.push(last)
  return points
}
