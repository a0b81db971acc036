/** Whether the shelf is folded away: as the user left it, else where the window is too narrow for shelf, map and answers. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'

const narrow = matchMedia('(max-width: 860px)')
const isNarrow = signal(narrow.matches)
narrow.addEventListener('change', () => {
  isNarrow.value = narrow.matches
})

export const shelfFolded: ReadonlySignal<boolean> = computed(() => settings.value.shelfFolded ?? isNarrow.value)

export function foldShelf(fold: boolean): void {
  void changeSettings({ shelfFolded: fold })
}
