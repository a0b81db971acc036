/** What the close plan covers of the map, which labels keep clear of, and the windows left free beside and above it. */
import { CORNER_GAP, closePlanSize } from '#renderer/state/session/close-plan-size.ts'
import type { FitWindow } from './fit.ts'
import type { Box } from './plan-view.ts'

/** In the map's own pixels. */
export function coveredBoxes(box: Box): Box[] {
  const size = closePlanSize(box.right - box.left, box.bottom - box.top)
  return [
    {
      left: box.left,
      right: box.left + CORNER_GAP + size.width + 6,
      top: box.bottom - CORNER_GAP - size.height - 6,
      bottom: box.bottom,
    },
  ]
}

const MARGIN = 48
/** Less than so many pixels show nothing: then the close plan may lie over some of it. */
const LEAST_FREE = 60

/** The ways to fit things into what is left free: beside the close plan, above it, or, in a narrow window, anywhere. */
export function freeWindows(width: number, height: number): FitWindow[] {
  const size = closePlanSize(width, height)
  const all = { width, height, left: MARGIN, right: MARGIN, top: MARGIN, bottom: MARGIN }
  const beside = { ...all, left: MARGIN + CORNER_GAP + size.width }
  const above = { ...all, bottom: MARGIN + CORNER_GAP + size.height }
  const roomy = [beside, above].filter(
    ({ left, bottom }) => width - left - MARGIN >= LEAST_FREE && height - MARGIN - bottom >= LEAST_FREE,
  )
  return roomy.length > 0 ? roomy : [all]
}
