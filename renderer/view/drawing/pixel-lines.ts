/** Lines and labels on a drawing surface: clipping to what is seen, paths, and where a label finds room. */
import type { Box, Point } from './plan-view.ts'

/** The part of a segment inside a box; null when none of it is (Liang and Barsky's method). */
export function clipSegment(from: Point, to: Point, box: Box): readonly [Point, Point] | null {
  const dx = to.x - from.x
  const dy = to.y - from.y
  let enter = 0
  let leave = 1
  const sides: readonly (readonly [number, number])[] = [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ]
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return null
    } else if (step < 0) enter = Math.max(enter, room / step)
    else leave = Math.min(leave, room / step)
  }
  if (enter > leave) return null
  const at = (share: number): Point => ({ x: from.x + dx * share, y: from.y + dy * share })
  return [at(enter), at(leave)]
}

/** Tenths of a pixel are finer than any eye. */
export function figure(pixels: number): string {
  return String(Math.round(pixels * 10) / 10)
}

export function linePath(points: readonly Point[], closed: boolean): string {
  if (points.length === 0) return ''
  return `M${points.map((point) => `${figure(point.x)},${figure(point.y)}`).join('L')}${closed ? 'Z' : ''}`
}

export function inset(box: Box, by: number): Box {
  return { left: box.left + by, top: box.top + by, right: box.right - by, bottom: box.bottom - by }
}

export function boxAround(middle: Point, width: number, height: number): Box {
  return {
    left: middle.x - width / 2,
    right: middle.x + width / 2,
    top: middle.y - height / 2,
    bottom: middle.y + height / 2,
  }
}

export function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
}

function holds(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}

/** The first candidate at which a label stays inside and clear of what must be seen; null when none does. */
export function placeLabel(
  candidates: readonly Point[],
  size: { readonly width: number; readonly height: number },
  inside: Box,
  clear: readonly Box[],
): Point | null {
  for (const candidate of candidates) {
    const box = boxAround(candidate, size.width, size.height)
    if (holds(inside, box) && !clear.some((other) => overlap(box, other))) return candidate
  }
  return null
}

const NARROW = " \u{a0}.,·:;'|°ijlft()"

/** Width of a text in the labels' type, near enough to find room for it (widths in em read off the bundled face). */
export function textWidth(text: string, fontSize: number): number {
  let ems = 0
  for (const letter of text) ems += NARROW.includes(letter) ? 0.28 : 0.52
  return ems * fontSize
}
