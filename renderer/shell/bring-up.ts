/** Brings the page up: settings, library, the shoot that was last at work. */
import { showTrouble } from './app-window.tsx'
import { loadSettings, settings } from '#renderer/state/library/settings.ts'
import { askGroundRoutes } from '#renderer/host/ground-windows.ts'
import { ask } from '#renderer/host/host.ts'
import { openAny, refreshShootList, tellLibraryState, noteVersion } from '#renderer/state/library/library.ts'

export async function bringUp(): Promise<void> {
  // First of all calls: where nobody answers, or not to this window, that is said once, on a page of its own.
  const answer = await ask('library.state', {})
  if (!answer.ok) {
    showTrouble({ kind: answer.fault.reason === 'no-key' ? 'no-key' : 'no-host', message: answer.fault.message })
    return
  }
  askGroundRoutes()
  await loadSettings()
  tellLibraryState(answer.value)
  const { state } = answer.value
  if (state !== 'open' && state !== 'read-only') {
    showTrouble({ kind: 'library', state: answer.value })
    return
  }
  noteVersion(answer.value.version)
  await refreshShootList()
  await openAny(settings.value.lastShootId, settings.value.lastSpotId)
  showTrouble('none')
}
