/** What lies over the map in its window: the close plan's corner, which fits and labels keep clear of. */
import { signal } from '@preact/signals'
import type { FitWindow } from '#renderer/view/drawing/fit.ts'
import type { Box } from '#renderer/view/drawing/plan-view.ts'

/** How far the close plan is opened. */
export const closePlanState = signal<'folded' | 'open' | 'large'>('open')

/** Pixels between the corner and the close plan. */
export const CORNER_GAP = 14

const SIZES = {
  folded: { width: 178, height: 34 },
  open: { width: 286, height: 236 },
  large: { width: 520, height: 430 },
} as const

/** Its size in a window; a small window gets no more of it than leaves the map its use. */
export function closePlanSize(width: number, height: number): { readonly width: number; readonly height: number } {
  const state = closePlanState.value
  const wanted = SIZES[state]
  if (state === 'folded') return wanted
  return {
    width: Math.max(200, Math.min(wanted.width, width * 0.7)),
    height: Math.max(150, Math.min(wanted.height, height * 0.7)),
  }
}

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
