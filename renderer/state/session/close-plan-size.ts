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

/** The part of the map that it may cover; the large one is asked for, and covers more. */
const MOST_COVERED = { open: 1 / 3, large: 0.6 } as const

/** Its size in a window of so many pixels, of which it leaves the map the better part. */
export function closePlanSize(width: number, height: number): { readonly width: number; readonly height: number } {
  const state = closePlanState.value
  const wanted = SIZES[state]
  if (state === 'folded') return wanted
  const room = width * height * MOST_COVERED[state]
  const scale = Math.min(1, Math.sqrt(room / (wanted.width * wanted.height)))
  const fits = {
    width: Math.min(wanted.width * scale, width * 0.7),
    height: Math.min(wanted.height * scale, height * 0.7),
  }
  return { width: Math.floor(fits.width), height: Math.floor(fits.height) }
}
