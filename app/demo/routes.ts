/** Ways over the land that a road builder would take: the cheapest line between places, where steepness is dear. */
import { type Ground, lakeOval } from './ground.ts'
import { type IslandPoint, step } from './island-frame.ts'
import { MinHeap } from './min-heap.ts'
import { evenlySpaced, relax, simplify } from './outline.ts'
import { fromShore, REACH_EAST, REACH_NORTH } from './terrain.ts'

const SPACING = 20
const COLUMNS = (REACH_EAST * 2) / SPACING + 1
const ROWS = (REACH_NORTH * 2) / SPACING + 1

/** Steps to sixteen neighbours, so that lines need not run in eighths of a turn. */
const STEPS = [-2, -1, 0, 1, 2].flatMap((north) =>
  [-2, -1, 0, 1, 2]
    .filter(
      (east) => Math.abs(east) + Math.abs(north) === 1 || Math.abs(east * north) === 1 || Math.abs(east * north) === 2,
    )
    .map((east) => ({ east, north, length: Math.hypot(east, north) * SPACING })),
)

function cellOf(point: IslandPoint): number {
  const column = Math.round((point.east + REACH_EAST) / SPACING)
  return Math.round((point.north + REACH_NORTH) / SPACING) * COLUMNS + column
}

function pointOf(cell: number): IslandPoint {
  const column = cell % COLUMNS
  return { east: column * SPACING - REACH_EAST, north: ((cell - column) / COLUMNS) * SPACING - REACH_NORTH }
}

export class RoutePlanner {
  readonly #heights = new Float64Array(COLUMNS * ROWS)
  readonly #closed = new Uint8Array(COLUMNS * ROWS)
  /** Points of the ways laid so far, by cell. */
  readonly #laid = new Map<number, IslandPoint>()

  constructor(ground: Ground) {
    for (let cell = 0; cell < this.#heights.length; cell++) {
      const point = pointOf(cell)
      this.#heights[cell] = ground.heightAt(point)
      const wet = fromShore(point) < 24 || lakeOval(point) < 1.22
      this.#closed[cell] = wet ? 1 : 0
    }
  }

  #isOpen(point: IslandPoint): boolean {
    return this.#closed[cellOf(point)] === 0
  }

  /** The cell of a point, or the nearest one that is dry enough to build on. */
  #openCell(point: IslandPoint): number {
    for (let reach = 0; reach < 30; reach++) {
      for (let turn = 0; turn < 360; turn += 15) {
        const cell = cellOf(step(point, turn, reach * SPACING))
        if (this.#closed[cell] === 0) return cell
      }
    }
    throw new Error(`no dry ground near ${JSON.stringify(point)}`)
  }

  /** The way through all the places in turn; `comfort` is the slope (rise over run) that doubles the cost; `lead` goes before. */
  through(places: readonly IslandPoint[], comfort: number, lead: readonly IslandPoint[] = []): IslandPoint[] {
    const line: IslandPoint[] = []
    for (let place = 0; place + 1 < places.length; place++) {
      const from = places[place]
      const to = places[place + 1]
      if (from === undefined || to === undefined) continue
      const target = this.#openCell(to)
      const cells = this.#search(this.#openCell(from), (cell) => cell === target, comfort)
      line.push(...cells.map(pointOf).slice(place === 0 ? 0 : 1))
    }
    const first = places[0]
    const last = places.at(-1)
    if (first !== undefined && this.#isOpen(first)) line[0] = first
    if (last !== undefined && this.#isOpen(last)) line[line.length - 1] = last
    return this.#settle([...lead, ...line])
  }

  /** The way from a place through others to the nearest point of any way already laid. */
  join(places: readonly IslandPoint[], comfort: number): IslandPoint[] {
    const last = places.at(-1)
    if (last === undefined) return []
    const before: IslandPoint[] = []
    for (let place = 0; place + 1 < places.length; place++) {
      const from = places[place]
      const to = places[place + 1]
      if (from === undefined || to === undefined) continue
      const target = this.#openCell(to)
      before.push(
        ...this.#search(this.#openCell(from), (cell) => cell === target, comfort)
          .map(pointOf)
          .slice(0, -1),
      )
    }
    const cells = this.#search(this.#openCell(last), (cell) => this.#laid.has(cell), comfort)
    const end = this.#laid.get(cells.at(-1) ?? -1)
    const line = [...before, ...cells.slice(0, -1).map(pointOf)]
    const first = places[0]
    if (first !== undefined && this.#isOpen(first)) line[0] = first
    if (end !== undefined) line.push(end)
    return this.#settle(line)
  }

  /** Adds a line to what later ways may join, for lines drawn by hand. */
  lay(line: readonly IslandPoint[]): void {
    for (const point of line) if (!this.#laid.has(cellOf(point))) this.#laid.set(cellOf(point), point)
  }

  #settle(line: readonly IslandPoint[]): IslandPoint[] {
    const smooth = simplify(relax(evenlySpaced(relax(line, 3), 12), 24), 0.25)
    this.lay(smooth)
    return smooth
  }

  #search(start: number, isGoal: (cell: number) => boolean, comfort: number): number[] {
    const cost = new Float64Array(COLUMNS * ROWS).fill(Infinity)
    const from = new Int32Array(COLUMNS * ROWS).fill(-1)
    const heap = new MinHeap(COLUMNS * ROWS * 8)
    cost[start] = 0
    heap.push(start, 0)
    for (let cell = heap.pop(); cell >= 0; cell = heap.pop()) {
      if (heap.lastPriority > (cost[cell] ?? 0)) continue
      if (isGoal(cell)) return trail(from, cell)
      for (const { east, north, length } of STEPS) {
        const next = cell + east + north * COLUMNS
        if (next < 0 || next >= cost.length || this.#closed[next] === 1) continue
        const slope = ((this.#heights[next] ?? 0) - (this.#heights[cell] ?? 0)) / length / comfort
        const price = heap.lastPriority + length * (1 + slope * slope)
        if (price >= (cost[next] ?? 0)) continue
        cost[next] = price
        from[next] = cell
        heap.push(next, price)
      }
    }
    throw new Error(`no way over land from ${JSON.stringify(pointOf(start))}`)
  }
}

function trail(from: Int32Array, goal: number): number[] {
  const cells: number[] = []
  for (let cell = goal; cell >= 0; cell = from[cell] ?? -1) cells.push(cell)
  return cells.toReversed()
}
