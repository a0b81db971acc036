/** How the map's servers answer, asked now and then while one of them is in use. */
import { effect, signal } from '@preact/signals'
import { ask } from '#renderer/host/host.ts'
import { GROUND_MAP } from './ground-shown.ts'
import { settings } from '#renderer/state/library/settings.ts'

export const offline = signal(false)

/** Milliseconds between two looks. */
const GENTLY = 15_000
/** The first look comes when the first tiles have had time to arrive or fail. */
const FIRST = 4_000

async function look(): Promise<void> {
  if (document.visibilityState !== 'visible') return
  const answer = await ask('tiles.health', {})
  if (answer.ok) offline.value = answer.value.offline
}

/** Follows the health while a tile source is in use; returns the way to stop. */
export function followHealth(): () => void {
  return effect(() => {
    const { mapSource } = settings.value
    if (mapSource === 'sketch' || mapSource === GROUND_MAP) {
      offline.value = false
      return undefined
    }
    const first = setTimeout(() => void look(), FIRST)
    const timer = setInterval(() => void look(), GENTLY)
    return () => {
      clearTimeout(first)
      clearInterval(timer)
    }
  })
}
