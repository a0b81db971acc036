/** What the map does about the network: looks at it with the first tile that is missing, and asks for the missing ones when it is back. */
import { effect } from '@preact/signals'
import { lookAtHealth, offline } from '#renderer/state/session/network.ts'
import { missingTiles } from './missing-tiles.ts'

/** Watches the network; `back` is called when it has returned. Returns a function that ends the watch. */
export function watchNetwork(back: () => void): () => void {
  let was = offline.peek()
  const stopBack = effect(() => {
    const now = offline.value
    if (was && !now) back()
    was = now
  })
  const stopLooking = missingTiles.subscribe((count) => {
    if (count === 1) void lookAtHealth()
  })
  // The browser may know first, while the services still wait for their next try.
  window.addEventListener('online', back)
  return () => {
    stopBack()
    stopLooking()
    window.removeEventListener('online', back)
  }
}
