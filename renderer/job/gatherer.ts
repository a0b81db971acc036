/** Acts on things that come one after another as seldom as can be: on all at once when the last is there, or when the first has waited long enough. */
import { batch } from '@preact/signals'

/** For so many things, with the milliseconds that the first that comes waits for the others. */
export function gatherer(count: number, patience: number): (taking: () => void) => void {
  let missing = count
  let waiting: (() => void)[] = []
  let timer: ReturnType<typeof setTimeout> | null = null
  const takeAll = (): void => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    const now = waiting
    waiting = []
    batch(() => {
      for (const taking of now) taking()
    })
  }
  return (taking) => {
    missing -= 1
    waiting.push(taking)
    if (missing === 0) takeAll()
    else timer ??= setTimeout(takeAll, patience)
  }
}
