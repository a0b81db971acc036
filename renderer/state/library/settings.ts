/** The settings as the page sees them, saved when changed. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { DEFAULT_SETTINGS } from '#app/contract/default-settings.ts'
import type { Settings } from '#app/contract/settings.ts'
import { ask } from '#renderer/host/host.ts'
import { words } from '#renderer/words/en.ts'
import { tell } from './notices.ts'
import { holdRefusal } from './refusals.ts'
import { textSource } from './taken-from.ts'

const settingsSignal = signal<Settings>(DEFAULT_SETTINGS)
export const settings: ReadonlySignal<Settings> = settingsSignal

/** For this page alone, kept nowhere: as the one that is only printed. */
export function takeSettings(part: Partial<Settings>): void {
  settingsSignal.value = { ...settings.peek(), ...part }
}

const systemDark = matchMedia('(prefers-color-scheme: dark)')
const systemIsDark = signal(systemDark.matches)
systemDark.addEventListener('change', () => {
  systemIsDark.value = systemDark.matches
})

export const dark = computed(() =>
  settings.value.theme === 'system' ? systemIsDark.value : settings.value.theme === 'dark',
)

export async function loadSettings(): Promise<void> {
  const answer = await ask('settings.get', {})
  if (answer.ok) settingsSignal.value = answer.value
  else tell('fault', answer.fault.message)
}

export async function changeSettings(part: Partial<Settings>): Promise<void> {
  const before = settings.value
  const source = textSource()
  settingsSignal.value = { ...before, ...part }
  const answer = await ask('settings.set', part)
  if (answer.ok) {
    settingsSignal.value = answer.value
    return
  }
  // What was refused is not shown as if it were kept; what else changed meanwhile stays.
  const named = Object.keys(part).map((name) => [name, before[name as keyof Settings]])
  settingsSignal.value = { ...settings.value, ...(Object.fromEntries(named) as Partial<Settings>) }
  const { fault } = answer
  if (source === null) tell('fault', fault.message)
  else source.refused(holdRefusal({ what: words.board.settings, fault, again: () => changeSettings(part) }))
}
