/** The level ground in the frame: where its horizon lies, and faint lines on it that tell distance. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import { type Sheet, toSheet } from './pen.ts'
import type { CameraPoint, View } from '#core/frame/projection.ts'
import { clipStretch } from './clip.ts'

/**
 * Height in the drawing of the level horizon: where a level line ahead vanishes. The dip of the sea's horizon below it
 * (0.03 degrees times the root of the lens's height in metres) is left out: at eye height it is a thirtieth of a degree.
 */
export function horizonLine(view: View, sheet: Sheet): number {
  return sheet.middleY + (sheet.scale * view.sinPitch) / view.cosPitch
}

/** A point on level ground `below` metres under the lens, `ahead` and `right` of it by the aim's bearing. */
export function groundPoint(view: View, below: number, ahead: number, right: number): CameraPoint {
  return {
    right,
    up: -view.cosPitch * below - view.sinPitch * ahead,
    depth: view.cosPitch * ahead - view.sinPitch * below,
  }
}

/** Distances at which a line crosses the ground: 1, 2, 5, 10 ... metres. */
const CROSSINGS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]
const FAR = 20_000
const MOST_LINES = 9

function line(sheet: Sheet, from: CameraPoint, to: CameraPoint): string {
  const kept = clipStretch(from, to)
  if (kept === null) return ''
  const drawn = clipSegment(toSheet(sheet, kept[0]), toSheet(sheet, kept[1]), sheet.bounds)
  if (drawn === null) return ''
  const [a, b] = drawn
  return `M${a.x.toFixed(1)} ${a.y.toFixed(1)}L${b.x.toFixed(1)} ${b.y.toFixed(1)}`
}

/** One path of hairlines: across the aim at round distances, and along it at a round spacing about `distance` metres out. */
export function groundLines(view: View, sheet: Sheet, below: number, distance: number): string {
  if (below <= 0 || view.cosPitch < 0.05) return ''
  const spacing = roundLength(distance / 3)
  const { left, right, top, bottom } = sheet.bounds
  let path = ''
  for (const ahead of CROSSINGS) {
    const at = groundPoint(view, below, ahead, 0)
    if (at.depth < 0.05) continue
    const { y } = toSheet(sheet, at)
    if (y > top && y < bottom) path += `M${left} ${y.toFixed(1)}H${right}`
  }
  // From just before the lens's plane outward.
  const start = (view.sinPitch * below + 0.06) / view.cosPitch
  for (let index = -MOST_LINES; index <= MOST_LINES; index++) {
    const aside = (index + 0.5) * spacing
    path += line(sheet, groundPoint(view, below, Math.max(start, 0.2), aside), groundPoint(view, below, FAR, aside))
  }
  return path
}

/** The nearest of 1, 2, 5, 10 ... below a length. */
export function roundLength(length: number): number {
  const ten = 10 ** Math.floor(Math.log10(Math.max(length, 0.01)))
  const lead = length / ten
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * ten
}
