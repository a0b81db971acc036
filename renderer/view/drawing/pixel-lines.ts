/** Lines and labels on a drawing surface: boxes, and where a label finds room. */
import type { Box, Point } from './plan-view.ts'

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
