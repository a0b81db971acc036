/** When a prompt to place something is over by itself: it belongs to the arrangement it was asked for, and goes with it. */
import { effect } from '@preact/signals'
import { savedSpot, shoot } from '#renderer/state/library/library.ts'
import { type Placing, placing, stopPlacing } from '#renderer/state/session/navigation.ts'

/** Ends the prompt once an edit, its undoing, another spot or another shoot has changed what it was asked for. Returns a function that ends the watch. */
export function endStalePlacing(): () => void {
  let asked: { readonly wish: Placing; readonly of: readonly unknown[] } | null = null
  const stop = effect(() => {
    const wish = placing.value
    const of = [shoot.value, savedSpot.value]
    if (wish === null) asked = null
    else if (asked?.wish !== wish) asked = { wish, of }
    else if (of.some((record, index) => record !== asked?.of[index])) stopPlacing()
  })
  return () => {
    stop()
    stopPlacing()
  }
}
