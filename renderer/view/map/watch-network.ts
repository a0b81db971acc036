/** Whether the outside can be reached, as browser and tile service tell it; asked only while something is missing. */
import { computed, signal } from '@preact/signals'
import { ask } from '#renderer/host/host.ts'
import { missingTiles } from './missing-tiles.ts'

const browserOffline = signal(!navigator.onLine)
const serviceOffline = signal(false)

export const offline = computed(() => browserOffline.value || serviceOffline.value)

/** Milliseconds between two looks at the tile service while tiles are missing or it was offline. */
const LOOK_EVERY = 15_000

/** Watches the network; `back` is called when it has returned. Answers with what ends the watch. */
export function watchNetwork(back: () => void): () => void {
  const onOnline = (): void => {
    browserOffline.value = false
    back()
  }
  const onOffline = (): void => {
    browserOffline.value = true
  }
  async function look(): Promise<void> {
    if (missingTiles.peek() === 0 && !serviceOffline.peek()) return
    const health = await ask('tiles.health', {})
    if (!health.ok) return
    const was = serviceOffline.peek()
    serviceOffline.value = health.value.offline
    if (was && !health.value.offline) back()
  }
  const timer = setInterval(() => void look(), LOOK_EVERY)
  // The first missing tile is reason enough to look at once, so that the note doesn't come late.
  const stopLooking = missingTiles.subscribe((count) => {
    if (count === 1) void look()
  })
  window.addEventListener('online', onOnline)
  window.addEventListener('offline', onOffline)
  return () => {
    clearInterval(timer)
    stopLooking()
    window.removeEventListener('online', onOnline)
    window.removeEventListener('offline', onOffline)
  }
}
