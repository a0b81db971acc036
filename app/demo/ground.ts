/** The demo island's finished ground: the carved grid read as one smooth surface, with what people levelled on it. */
import { drain, type HeightGrid, weather } from './erosion.ts'
import { type IslandPoint, islandDistance } from './island-frame.ts'
import {
  BRIDGE,
  BRIDGE_PLAN,
  HARBOUR_PLAN,
  LAKE_PLAN,
  LIGHTHOUSE,
  LIGHTHOUSE_PLAN,
  QUAY_LEVEL,
} from './island-places.ts'
import { softStep } from './noise.ts'
import { cliff, fromShore, lift, REACH_EAST, REACH_NORTH } from './terrain.ts'

const COARSE = 40
const FINE = 20

export function cellPoint(grid: HeightGrid, cell: number): IslandPoint {
  const column = cell % grid.columns
  return {
    east: column * grid.spacing - REACH_EAST,
    north: ((cell - column) / grid.columns) * grid.spacing - REACH_NORTH,
  }
}

function emptyGrid(spacing: number): HeightGrid {
  const columns = (REACH_EAST * 2) / spacing + 1
  const rows = (REACH_NORTH * 2) / spacing + 1
  const heights = new Float64Array(columns * rows)
  const sea = new Uint8Array(columns * rows)
  const grid = { columns, rows, spacing, heights, sea }
  for (let cell = 0; cell < heights.length; cell++) {
    const edge =
      cell % columns === 0 || cell % columns === columns - 1 || cell < columns || cell >= heights.length - columns
    sea[cell] = edge || fromShore(cellPoint(grid, cell)) <= 0 ? 1 : 0
  }
  return grid
}

/** Cubic B-spline through the grid: smooth to the second derivative, so that contours have no corners. */
export function smoothHeight(grid: HeightGrid, point: IslandPoint): number {
  const column = (point.east + REACH_EAST) / grid.spacing
  const row = (point.north + REACH_NORTH) / grid.spacing
  const west = Math.min(grid.columns - 3, Math.max(1, Math.floor(column)))
  const south = Math.min(grid.rows - 3, Math.max(1, Math.floor(row)))
  const across = splineShares(column - west)
  const up = splineShares(row - south)
  let sum = 0
  for (let down = 0; down < 4; down++) {
    const start = (south - 1 + down) * grid.columns + west - 1
    let line = 0
    for (let along = 0; along < 4; along++) line += (across[along] ?? 0) * (grid.heights[start + along] ?? 0)
    sum += (up[down] ?? 0) * line
  }
  return sum
}

function splineShares(share: number): readonly [number, number, number, number] {
  const rest = 1 - share
  const first = (rest * rest * rest) / 6
  const last = (share * share * share) / 6
  const second = (4 - 6 * share * share + 3 * share * share * share) / 6
  return [first, second, 1 - first - second - last, last]
}

/** The land as the weather left it: coarse valleys first, then the fine ones. */
export function carve(): HeightGrid {
  const coarse = emptyGrid(COARSE)
  const coarseLift = coarse.heights.map((_, cell) => (coarse.sea[cell] === 1 ? 0 : lift(cellPoint(coarse, cell))))
  coarse.heights.set(coarseLift.map((height) => height * 0.5))
  weather(coarse, coarseLift, { rounds: 70, cut: 0.035, creep: 0.1, uplift: 0.025 })
  const fine = emptyGrid(FINE)
  const fineLift = fine.heights.map((_, cell) => (fine.sea[cell] === 1 ? 0 : lift(cellPoint(fine, cell))))
  for (let cell = 0; cell < fine.heights.length; cell++) {
    if (fine.sea[cell] !== 1) fine.heights[cell] = smoothHeight(coarse, cellPoint(fine, cell))
  }
  weather(fine, fineLift, { rounds: 8, cut: 0.035, creep: 0.25, uplift: 0.025 })
  incise(fine)
  let highest = 0
  for (const height of fine.heights) highest = Math.max(highest, height)
  for (let cell = 0; cell < fine.heights.length; cell++)
    fine.heights[cell] = ((fine.heights[cell] ?? 0) * 286) / highest
  return fine
}

/** Cuts the beds of streams deeper than the mean of the land around, so that contours bend upstream over them. */
function incise(grid: HeightGrid): void {
  const { area } = drain(grid)
  for (let cell = 0; cell < area.length; cell++) {
    const doublings = Math.log2((area[cell] ?? 0) / 24_000)
    const height = grid.heights[cell] ?? 0
    if (doublings > 0 && grid.sea[cell] !== 1) grid.heights[cell] = height - Math.min(height * 0.4, doublings * 2.6)
  }
}

/** Draws a height toward `level` near a point: wholly within `inner` metres, not at all beyond `outer`. */
function levelled(height: number, level: number, away: number, inner: number, outer: number): number {
  return level + (height - level) * softStep(inner, outer, away)
}

/** Where a point lies on the lake's own oval: below 1 on the water. */
export function lakeOval(point: IslandPoint): number {
  const turn = (LAKE_PLAN.bearing * Math.PI) / 180
  const east = point.east - LAKE_PLAN.middle.east
  const north = point.north - LAKE_PLAN.middle.north
  const along = (east * Math.sin(turn) + north * Math.cos(turn)) / LAKE_PLAN.long
  const across = (east * Math.cos(turn) - north * Math.sin(turn)) / LAKE_PLAN.short
  const angle = Math.atan2(across, along)
  return (
    Math.hypot(along, across) /
    (1 + 0.1 * Math.sin(angle * 3 + 1) + 0.06 * Math.sin(angle * 5 + 2.2) + 0.1 * Math.cos(angle * 2))
  )
}

/** The sandy shores: middle and reach, metres. */
export const BEACHES = [
  { name: 'Correl Sands', at: { east: -2180, north: -1830 }, reach: 520 },
  { name: 'Whitten Strand', at: { east: 2960, north: -960 }, reach: 380 },
] as const

/** Metres above the sea anywhere; below the sea it falls off with the distance from the shore. */
export class Ground {
  readonly #carved: HeightGrid
  /** Metres above the sea of the lake's water. */
  readonly lakeLevel: number

  constructor(carved: HeightGrid) {
    this.#carved = carved
    this.lakeLevel = this.#lowestShore()
  }

  #lowestShore(): number {
    let lowest = 1e9
    for (let angle = 0; angle < 360; angle += 3) {
      for (let reach = LAKE_PLAN.short * 0.6; reach < LAKE_PLAN.long * 1.5; reach += 5) {
        const point = {
          east: LAKE_PLAN.middle.east + Math.sin((angle * Math.PI) / 180) * reach,
          north: LAKE_PLAN.middle.north + Math.cos((angle * Math.PI) / 180) * reach,
        }
        if (lakeOval(point) < 1.04) continue
        lowest = Math.min(lowest, smoothHeight(this.#carved, point))
        break
      }
    }
    return Math.round(lowest * 10) / 10
  }

  heightAt(point: IslandPoint): number {
    const inside = fromShore(point)
    if (inside <= 0) return Math.max(-25, inside * 0.12)
    let height = smoothHeight(this.#carved, point) * softStep(-20, 110, inside)
    let rise = cliff(point) * (1 - Math.exp(-inside / 16)) + Math.min(inside, 60) * 0.06
    for (const beach of BEACHES) {
      const near = 1 - softStep(beach.reach * 0.6, beach.reach * 1.15, islandDistance(point, beach.at))
      rise += (inside * 0.055 - rise) * near
      height *= 1 - near * (1 - softStep(60, 300, inside))
    }
    height += rise
    height = this.#peopled(point, height, inside)
    const oval = lakeOval(point)
    return oval < 1.7 ? levelled(height, this.lakeLevel + Math.max(0, oval - 1) * 9, oval, 0.99, 1.7) : height
  }

  /** The bridge's abutments, the harbour's shelf and the lighthouse's rock. */
  #peopled(point: IslandPoint, wild: number, inside: number): number {
    let height = wild
    const shelf = QUAY_LEVEL + Math.max(0, inside - 45) * 0.1
    const harbour = islandDistance(point, HARBOUR_PLAN)
    if (harbour < 520) height = levelled(height, Math.min(shelf, 1 + inside * 0.4), harbour, 230, 520)
    for (const abutment of [BRIDGE_PLAN[0], BRIDGE_PLAN[3]]) {
      if (abutment === undefined) continue
      const bench = BRIDGE.deckHeight * (1 - Math.exp(-inside / 17)) - 0.4
      height = levelled(height, bench, islandDistance(point, abutment), 45, 210)
    }
    const light = islandDistance(point, LIGHTHOUSE_PLAN)
    const rock = LIGHTHOUSE.baseElevation * (1 - Math.exp(-inside / 9))
    return levelled(height, rock, light, 60, 430)
  }
}
