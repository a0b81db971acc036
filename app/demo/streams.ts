/** Streams: where enough land drains through one line, traced down to the sea or the lake. */
import { drain, type HeightGrid } from './erosion.ts'
import { type Ground, cellPoint, lakeOval } from './ground.ts'
import type { IslandPoint } from './island-frame.ts'
import { layeredNoise } from './noise.ts'
import { evenlySpaced, relax, simplify } from './outline.ts'
import { fromShore, REACH_EAST, REACH_NORTH } from './terrain.ts'

const SPACING = 20
/** Square metres of land that feed a stream worth drawing, and one worth a name. */
const HEAD_AREA = 160_000

function surface(ground: Ground): HeightGrid {
  const columns = (REACH_EAST * 2) / SPACING + 1
  const rows = (REACH_NORTH * 2) / SPACING + 1
  const grid = {
    columns,
    rows,
    spacing: SPACING,
    heights: new Float64Array(columns * rows),
    sea: new Uint8Array(columns * rows),
  }
  for (let cell = 0; cell < grid.heights.length; cell++) {
    const height = ground.heightAt(cellPoint(grid, cell))
    grid.heights[cell] = height
    grid.sea[cell] = height <= 0 ? 1 : 0
  }
  return grid
}

/** Lines from head to mouth; a side stream ends where it meets the greater one. */
export function traceStreams(ground: Ground): IslandPoint[][] {
  const grid = surface(ground)
  const { receiver, area } = drain(grid)
  const feeders = new Map<number, number[]>()
  for (let cell = 0; cell < area.length; cell++) {
    if ((area[cell] ?? 0) < HEAD_AREA || grid.sea[cell] === 1) continue
    const next = receiver[cell] ?? cell
    feeders.set(next, [...(feeders.get(next) ?? []), cell])
  }
  const mouths = [...feeders.keys()].filter((cell) => grid.sea[cell] === 1)
  const lines: IslandPoint[][] = []
  const open = mouths.flatMap((mouth) => (feeders.get(mouth) ?? []).map((cell) => [mouth, cell]))
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const cells = [...pair]
    for (let cell = pair[1]; cell !== undefined;) {
      const above = (feeders.get(cell) ?? []).toSorted((left, right) => (area[right] ?? 0) - (area[left] ?? 0))
      for (const side of above.slice(1)) open.push([cell, side])
      if (above[0] !== undefined) cells.push(above[0])
      cell = above[0]
    }
    lines.push(cells.toReversed().map((cell) => cellPoint(grid, cell)))
  }
  return lines.flatMap(dryParts).filter((line) => line.length > 6)
}

/** Small bends, so that a stream over level ground does not run like a ditch; its ends stay. */
function meander(line: readonly IslandPoint[]): IslandPoint[] {
  return line.map((point, place) => {
    const reach = Math.min(1, place / 6, (line.length - 1 - place) / 6)
    return {
      east: point.east + layeredNoise(point.east, point.north, 110, 2, 173) * 20 * reach,
      north: point.north + layeredNoise(point.east, point.north, 110, 2, 179) * 20 * reach,
    }
  })
}

/** The parts of a line outside lake and sea, smoothed. */
function dryParts(line: readonly IslandPoint[]): IslandPoint[][] {
  const smooth = evenlySpaced(relax(meander(evenlySpaced(relax(evenlySpaced(line, 10), 30), 9)), 3), 8)
  const parts: IslandPoint[][] = [[]]
  for (const point of smooth) {
    if (lakeOval(point) > 0.97 && fromShore(point) > -6) parts.at(-1)?.push(point)
    else if ((parts.at(-1)?.length ?? 0) > 0) parts.push([])
  }
  return parts.filter((part) => part.length > 8).map((part) => simplify(part, 0.8))
}
