/** What is typed into the quick entry of a lens and not added yet, for each shoot: it is still there after a look at another page. */
import { signal } from '@preact/signals'

const entries = signal<ReadonlyMap<string, string>>(new Map())

export function lensEntry(shootId: string): string {
  return entries.value.get(shootId) ?? ''
}

export function typeLens(shootId: string, text: string): void {
  entries.value = new Map([...entries.peek(), [shootId, text]])
}
