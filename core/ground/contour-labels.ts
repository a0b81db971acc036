/** Where the heights are written along contours: where a line runs straight for the length of its figure, and apart from each other. */
import { degrees } from '#core/units/angle.ts'
import type { ContourLine } from './contours.ts'

export interface ContourLabel {
  /** Metres above the sea. */
  readonly level: number
  /** Metres from the grid's centre of the label's middle. */
  readonly east: number
  readonly north: number
  /** Degrees clockwise on a map with north up by which the figure is turned, over -90 to 90: it never stands on its head. */
  readonly turn: number
}

/** Metres on the ground, as the map shows them. */
export interface LabelRoom {
  /** Length of a figure along its line. */
  readonly length: number
  /** From label to label along one line. */
  readonly spacing: number
  /** The least between any two labels. */
  readonly apart: number
}

/** Share of the way along a line that its chord must be for a figure to sit on it. */
const STRAIGHT = 0.93
/** Places tried about each wished one. */
const TRIES = 9

interface Place {
  readonly east: number
  readonly north: number
}

/** Labels for lines, longest lines first; a line too short or too bent gets none. */
export function contourLabels(lines: readonly ContourLine[], room: LabelRoom): ContourLabel[] {
  const measured = lines
    .map((line) => ({ line, runs: runsAlong(line) }))
    .filter(({ runs }) => (runs[runs.length - 1] ?? 0) >= 2 * room.length)
    .toSorted((one, other) => (other.runs[other.runs.length - 1] ?? 0) - (one.runs[one.runs.length - 1] ?? 0))
  const labels: ContourLabel[] = []
  for (const { line, runs } of measured) {
    const whole = runs[runs.length - 1] ?? 0
    const count = Math.max(1, Math.floor(whole / room.spacing))
    for (let index = 0; index < count; index++) {
      const label = straightest(line, runs, (whole * (index + 0.5)) / count, whole / count, room)
      if (label !== null && labels.every((other) => farFrom(label, other, room.apart))) labels.push(label)
    }
  }
  return labels
}

function farFrom(one: Place, other: Place, apart: number): boolean {
  return Math.hypot(one.east - other.east, one.north - other.north) >= apart
}

/** Metres along the line at each point, and for a closed one back at its first. */
function runsAlong(line: ContourLine): Float64Array {
  const count = line.points.length / 2
  const runs = new Float64Array(line.closed ? count + 1 : count)
  for (let index = 1; index < runs.length; index++) {
    const [from, to] = [pointOf(line, index - 1), pointOf(line, index)]
    runs[index] = (runs[index - 1] ?? 0) + Math.hypot(to.east - from.east, to.north - from.north)
  }
  return runs
}

function pointOf(line: ContourLine, index: number): Place {
  const at = (index * 2) % line.points.length
  return { east: line.points[at] ?? Number.NaN, north: line.points[at + 1] ?? Number.NaN }
}

/** The straightest place within half a stretch about the wished one. */
function straightest(
  line: ContourLine,
  runs: Float64Array,
  aim: number,
  stretch: number,
  room: LabelRoom,
): ContourLabel | null {
  const half = room.length / 2
  const whole = runs[runs.length - 1] ?? 0
  let [best, label]: [number, ContourLabel | null] = [STRAIGHT, null]
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const middle = aim + (attempt / (TRIES - 1) - 0.5) * 0.5 * stretch
    if (middle < half || middle > whole - half) continue
    const from = placeAlong(line, runs, middle - half)
    const to = placeAlong(line, runs, middle + half)
    const straight = Math.hypot(to.east - from.east, to.north - from.north) / room.length
    if (straight <= best) continue
    best = straight
    const turn = degrees(Math.atan2(from.north - to.north, to.east - from.east))
    const upright = turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn
    label = { level: line.level, ...placeAlong(line, runs, middle), turn: upright }
  }
  return label
}

/** The point of a line at metres along it, by halving. */
function placeAlong(line: ContourLine, runs: Float64Array, run: number): Place {
  let [low, high] = [0, runs.length - 1]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((runs[middle] ?? 0) <= run) low = middle
    else high = middle
  }
  const [from, to] = [pointOf(line, low), pointOf(line, high)]
  const length = (runs[high] ?? 0) - (runs[low] ?? 0)
  const share = length > 0 ? (run - (runs[low] ?? 0)) / length : 0
  return { east: from.east + share * (to.east - from.east), north: from.north + share * (to.north - from.north) }
}
