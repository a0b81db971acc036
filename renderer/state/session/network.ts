/** Whether the map's servers can be reached, as browser and services tell it: one clock asks, while one of the servers is in use. */
import { computed, effect, signal } from '@preact/signals'
import { ask } from '#renderer/host/host.ts'
import { GROUND_MAP } from './ground-overlay.ts'
import { settings } from '#renderer/state/library/settings.ts'

const browserOffline = signal(!navigator.onLine)
const serviceOffline = signal(false)

/** Tiles of a server are what is wished under the map. */
const inUse = computed(() => settings.value.mapSource !== 'sketch' && settings.value.mapSource !== GROUND_MAP)

export const offline = computed(() => inUse.value && (browserOffline.value || serviceOffline.value))

/** Milliseconds between two looks. */
const GENTLY = 15_000
/** The first look comes when the first tiles have had time to arrive or fail. */
const FIRST = 4_000

/** Asks at once: the first missing tile is reason enough, so that the note doesn't come late. */
export async function lookAtHealth(): Promise<void> {
  if (!inUse.peek() || document.visibilityState !== 'visible') return
  const answer = await ask('tiles.health', {})
  if (answer.ok) serviceOffline.value = answer.value.offline
}

/** Follows the health while a tile source is in use; returns the way to stop. */
export function followHealth(): () => void {
  const onChange = (): void => {
    browserOffline.value = !navigator.onLine
  }
  addEventListener('online', onChange)
  addEventListener('offline', onChange)
  const stop = effect(() => {
    if (!inUse.value) {
      serviceOffline.value = false
      return undefined
    }
    const first = setTimeout(() => void lookAtHealth(), FIRST)
    const timer = setInterval(() => void lookAtHealth(), GENTLY)
    return () => {
      clearTimeout(first)
      clearInterval(timer)
    }
  })
  return () => {
    stop()
    removeEventListener('online', onChange)
    removeEventListener('offline', onChange)
  }
}
