/** How far the close plan is opened, and the pixels that it then takes in the map's corner. */
import { type ReadonlySignal, signal } from '@preact/signals'

const closePlanStateSignal = signal<'folded' | 'open' | 'large'>('open')
/** How far the close plan is opened. */
export const closePlanState: ReadonlySignal<'folded' | 'open' | 'large'> = closePlanStateSignal

export function openClosePlan(how: 'folded' | 'open' | 'large'): void {
  closePlanStateSignal.value = how
}

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
