/** What is typed into the quick entry of a lens and not added yet, for each shoot: it is still there after a look at another page. */
import { signal } from '@preact/signals'
import { shootList } from '#renderer/state/library/library.ts'
import { beginUnfinished } from '#renderer/state/library/unfinished.ts'

const entries = signal<ReadonlyMap<string, string>>(new Map())
/** What forgets that there is one. */
const unfinished = new Map<string, () => void>()

export function lensEntry(shootId: string): string {
  return entries.value.get(shootId) ?? ''
}

/** Half a line is often a lens too, another one: nothing but its form adds it, and until then leaving would lose it. */
export function typeLens(shootId: string, text: string): void {
  entries.value = new Map([...entries.peek(), [shootId, text]])
  unfinished.get(shootId)?.()
  unfinished.delete(shootId)
  if (text.trim() === '') return
  const endWithShoot = (): void => {
    if (!shootList.peek().some(({ id }) => id === shootId)) typeLens(shootId, '')
  }
  unfinished.set(shootId, beginUnfinished(endWithShoot))
}
