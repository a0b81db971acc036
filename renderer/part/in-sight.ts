/** Whether a part of the page is within what the window, and what it scrolls in, shows. */
import { type ReadonlySignal, useSignal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'

interface Holder {
  readonly current: Element | null
}

/** How far outside it counts as seen, as a CSS margin. */
type Margin = `${number}px`

function watch(element: Element, margin: Margin, tell: (seen: boolean) => void): () => void {
  const watcher = new IntersectionObserver((entries) => tell(entries.at(-1)?.isIntersecting === true), {
    rootMargin: margin,
  })
  watcher.observe(element)
  return () => watcher.disconnect()
}

/** True once the element has come near the window: hundreds of small frames are drawn only as they are scrolled to. */
export function useSeenOnce(holder: Holder): boolean {
  const [seen, setSeen] = useState(false)
  useEffect(() => {
    const element = holder.current
    return seen || element === null ? undefined : watch(element, '300px', setSeen)
  }, [holder, seen])
  return seen
}

/** Whether the element is in sight now; taken to be until the browser has looked. */
export function useInSight(holder: Holder): ReadonlySignal<boolean> {
  const seen = useSignal(true)
  useEffect(() => {
    const element = holder.current
    return element === null
      ? undefined
      : watch(element, '0px', (now) => {
          seen.value = now
        })
  }, [holder, seen])
  return seen
}
