/** The strokes of drawn ground in pixels: rungs that show the way one stands, ticks inward, pairs of bars across, and tips. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import type { Turn } from '#core/record/stopping-ground.ts'
import { type Box, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { linePath } from '#renderer/text/path-text.ts'

/** A place on a line, with the direction of the line there as a step of one pixel. */
export interface Station {
  readonly at: Point
  readonly along: Point
}

/**
 * Stations evenly along a line, `every` pixels apart, the first half of that from its beginning. Only those in the box, and
 * always the same ones however the map is moved. A closed line goes on to its first point.
 */
export function stations(points: readonly Point[], closed: boolean, every: number, box: Box): Station[] {
  const found: Station[] = []
  let gone = 0
  const ends = closed && points.length > 0 ? [...points.slice(1), points[0] as Point] : points.slice(1)
  for (const [index, to] of ends.entries()) {
    const from = points[index] ?? to
    const length = distanceBetween(from, to)
    const seen = length === 0 ? null : clipSegment(from, to, box)
    if (seen !== null) {
      const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
      const last = gone + distanceBetween(from, seen[1])
      const first = Math.ceil((gone + distanceBetween(from, seen[0])) / every - 0.5)
      for (let number = first; (number + 0.5) * every <= last; number++) {
        const far = (number + 0.5) * every - gone
        if (far >= 0) found.push({ at: { x: from.x + along.x * far, y: from.y + along.y * far }, along })
      }
    }
    gone += length
  }
  return found
}

/** From a station so many pixels on along the line, and to the right of it. */
export function besides({ at, along }: Station, ahead: number, right: number): Point {
  return { x: at.x + along.x * ahead - along.y * right, y: at.y + along.y * ahead + along.x * right }
}

/** Half a rung's length, and how far its middle goes ahead of its ends where it is bent. */
const RUNG = 3.6
const BEND = 1.9

/**
 * The rungs of a line: bent toward its end where one stands as it was drawn, in pairs bent toward both ends where one
 * stands either way, straight where any heading will do.
 */
export function rungs(at: readonly Station[], turn: Turn): string {
  return at.map((station) => stationRungs(station, turn)).join('')
}

function stationRungs(station: Station, turn: Turn): string {
  const rung = (place: number, bend: number): string =>
    linePath(
      [besides(station, place - bend, -RUNG), besides(station, place + bend, 0), besides(station, place - bend, RUNG)],
      false,
    )
  if (turn === 'along') return rung(0, BEND)
  return turn === 'either-way' ? rung(-3, -BEND) + rung(3, BEND) : rung(0, 0)
}

/** Short strokes from the edge of an area inward. */
export function inwardTicks(at: readonly Station[], clockwise: boolean, length: number): string {
  return at.map((station) => linePath([station.at, besides(station, 0, clockwise ? length : -length)], false)).join('')
}

/** Whether an outline runs clockwise on the screen, y being down. */
export function runsClockwise(points: readonly Point[]): boolean {
  let twice = 0
  for (const [index, at] of points.entries()) {
    const next = points[(index + 1) % points.length] ?? at
    twice += at.x * next.y - next.x * at.y
  }
  return twice > 0
}

/** Two bars close together across a line at each station, so many pixels to both sides: it can't be stepped across. */
export function barPairs(at: readonly Station[], half: number): string {
  return at
    .flatMap((station) => [-1.8, 1.8].map((place) => [besides(station, place, -half), besides(station, place, half)]))
    .map((bar) => linePath(bar, false))
    .join('')
}

/** The end of a line as a station; null for a line without length. */
function endOf(points: readonly Point[]): Station | null {
  const end = points.at(-1)
  const before = points.findLast((point) => end !== undefined && distanceBetween(point, end) > 0.5)
  if (end === undefined || before === undefined) return null
  const length = distanceBetween(before, end)
  return { at: end, along: { x: (end.x - before.x) / length, y: (end.y - before.y) / length } }
}

/** A tip at the end of a line, pointing out of it. */
export function tip(points: readonly Point[]): string {
  const end = endOf(points)
  return end === null ? '' : linePath([besides(end, 11, 0), besides(end, -1, -8), besides(end, -1, 8)], true)
}

/** A bar that closes a line's end without pointing anywhere. */
export function endBar(points: readonly Point[]): string {
  const end = endOf(points)
  return end === null ? '' : linePath([besides(end, 0, -8), besides(end, 0, 8)], false)
}

/** Indexes of the points that can be told apart on the screen: the ends, and those so many pixels from the one before. */
export function apart(points: readonly Point[], least: number): number[] {
  const shown: number[] = []
  let last: Point | null = null
  const end = points.at(-1)
  for (const [index, at] of points.entries()) {
    const isEnd = index === 0 || index === points.length - 1
    const clear = last === null || distanceBetween(last, at) >= least
    if (!isEnd && (!clear || (end !== undefined && distanceBetween(end, at) < least))) continue
    shown.push(index)
    last = at
  }
  return shown
}
