/** Where letters go: a name set on a point or along a line, the boxes it takes up, and who yields when two meet. */
import { type WorldBox, boxesMeet } from './world.ts'

/** A letter at its place, world pixels; `turn` in radians clockwise from upright. */
export interface Letter {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly turn: number
}

export interface LabelSetting {
  readonly letters: readonly Letter[]
  readonly boxes: readonly WorldBox[]
}

export type TextMeasure = (text: string) => number

const PADDING = 3

/** Sides of a point on which its name may stand, best first. */
export const SIDES = ['above', 'right', 'left', 'below', 'middle'] as const
export type Side = (typeof SIDES)[number]

/** The name level at one side of a point, `away` pixels from it. */
export function setLevel(
  text: string,
  at: readonly [number, number],
  side: Side,
  away: number,
  size: number,
  measure: TextMeasure,
): LabelSetting {
  const width = measure(text)
  const [x, y] = at
  const left = side === 'right' ? x + away : side === 'left' ? x - away - width : x - width / 2
  const base = side === 'above' ? y - away : side === 'below' ? y + away + size * 0.75 : y + size * 0.3
  const box = {
    west: left - PADDING,
    east: left + width + PADDING,
    north: base - size * 0.85 - PADDING,
    south: base + size * 0.3 + PADDING,
  }
  return { letters: [{ text, x: left, y: base, turn: 0 }], boxes: [box] }
}

/** The letters along a line of x, y, x, y, centred on it and spread over up to two thirds of it; null when it is too short. */
export function setAlong(
  text: string,
  line: Float64Array,
  size: number,
  spacing: number,
  measure: TextMeasure,
): LabelSetting | null {
  const signs = Array.from(text)
  const widths = signs.map(measure)
  const natural = widths.reduce((sum, width) => sum + width, 0)
  const forward = (line.at(-2) ?? 0) >= (line[0] ?? 0) ? line : reversed(line)
  const length = lengthOf(forward)
  const gaps = Math.max(1, widths.length - 1)
  if (natural + spacing * gaps > length * 1.02) return null
  const spread = Math.min(size * 0.9, Math.max(spacing, (length * 0.66 - natural) / gaps))
  let along = (length - natural - spread * gaps) / 2
  const letters: Letter[] = []
  const boxes: WorldBox[] = []
  for (const [place, letter] of signs.entries()) {
    const width = widths[place] ?? 0
    const { x, y, turn } = labelPointAlong(forward, along + width / 2)
    letters.push({
      text: letter,
      x: x - (Math.cos(turn) * width) / 2 - Math.sin(turn) * size * 0.3,
      y: y - (Math.sin(turn) * width) / 2 + Math.cos(turn) * size * 0.3,
      turn,
    })
    const reach = size * 0.55 + PADDING
    boxes.push({ west: x - reach, east: x + reach, north: y - reach, south: y + reach })
    along += width + spread
  }
  return { letters, boxes }
}

/** A number level with a contour at its `along`, turned to read upright. */
export function setTurned(
  text: string,
  at: { readonly x: number; readonly y: number; readonly turn: number },
  size: number,
  measure: TextMeasure,
): LabelSetting {
  const width = measure(text)
  const upright = Math.cos(at.turn) < 0 ? at.turn + Math.PI : at.turn
  const [east, south] = [Math.cos(upright), Math.sin(upright)]
  const x = at.x - (east * width) / 2 - south * size * 0.34
  const y = at.y - (south * width) / 2 + east * size * 0.34
  const [wide, high] = [
    (Math.abs(east) * width + Math.abs(south) * size) / 2 + 2,
    (Math.abs(south) * width + Math.abs(east) * size) / 2 + 2,
  ]
  return {
    letters: [{ text, x, y, turn: upright }],
    boxes: [{ west: at.x - wide, east: at.x + wide, north: at.y - high, south: at.y + high }],
  }
}

export function lengthOf(line: Float64Array): number {
  let length = 0
  for (let place = 0; place + 3 < line.length; place += 2) {
    length += Math.hypot((line[place + 2] ?? 0) - (line[place] ?? 0), (line[place + 3] ?? 0) - (line[place + 1] ?? 0))
  }
  return length
}

/** The point `distance` along the line, and the line's direction there. */
export function labelPointAlong(
  line: Float64Array,
  distance: number,
): { readonly x: number; readonly y: number; readonly turn: number } {
  let left = distance
  for (let place = 0; place + 3 < line.length; place += 2) {
    const [x, y] = [line[place] ?? 0, line[place + 1] ?? 0]
    const [runX, runY] = [(line[place + 2] ?? 0) - x, (line[place + 3] ?? 0) - y]
    const step = Math.hypot(runX, runY)
    if (left <= step || place + 5 >= line.length) {
      const share = step === 0 ? 0 : left / step
      return { x: x + runX * share, y: y + runY * share, turn: Math.atan2(runY, runX) }
    }
    left -= step
  }
  return { x: line[0] ?? 0, y: line[1] ?? 0, turn: 0 }
}

function reversed(line: Float64Array): Float64Array {
  const back = new Float64Array(line.length)
  for (let place = 0; place < line.length; place += 2) {
    back[line.length - 2 - place] = line[place] ?? 0
    back[line.length - 1 - place] = line[place + 1] ?? 0
  }
  return back
}

const CELL = 64

/** Remembers which boxes are taken; first come, first served. */
export class TakenSpace {
  readonly #cells = new Map<string, WorldBox[]>()

  isFree(boxes: readonly WorldBox[]): boolean {
    return boxes.every((box) =>
      this.#keys(box).every((key) => (this.#cells.get(key) ?? []).every((other) => !boxesMeet(box, other))),
    )
  }

  take(boxes: readonly WorldBox[]): void {
    for (const box of boxes) {
      for (const key of this.#keys(box)) {
        const cell = this.#cells.get(key)
        if (cell === undefined) this.#cells.set(key, [box])
        else cell.push(box)
      }
    }
  }

  #keys(box: WorldBox): string[] {
    const keys: string[] = []
    for (let column = Math.floor(box.west / CELL); column <= Math.floor(box.east / CELL); column++) {
      for (let row = Math.floor(box.north / CELL); row <= Math.floor(box.south / CELL); row++)
        keys.push(`${column} ${row}`)
    }
    return keys
  }
}
