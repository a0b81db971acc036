/** What each key does to the chosen instant: minutes, hours, days, weeks, sunrise and sunset. */

export type TimeStep =
  | { readonly by: 'minutes'; readonly count: number }
  | { readonly by: 'days'; readonly count: number }
  | { readonly by: 'event'; readonly event: 'sunrise' | 'sunset' }

interface Pressed {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

export function timeStep({ key, shiftKey, ctrlKey, metaKey, altKey }: Pressed): TimeStep | null {
  if (ctrlKey || metaKey || altKey) return null
  switch (key) {
    case 'ArrowRight':
      return { by: 'minutes', count: shiftKey ? 10 : 1 }
    case 'ArrowLeft':
      return { by: 'minutes', count: shiftKey ? -10 : -1 }
    case 'PageUp':
      return { by: 'minutes', count: 60 }
    case 'PageDown':
      return { by: 'minutes', count: -60 }
    case 'ArrowUp':
      return { by: 'days', count: shiftKey ? 7 : 1 }
    case 'ArrowDown':
      return { by: 'days', count: shiftKey ? -7 : -1 }
    case 'Home':
      return { by: 'event', event: 'sunrise' }
    case 'End':
      return { by: 'event', event: 'sunset' }
    default:
      return null
  }
}
