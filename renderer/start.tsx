/** Brings the page up: settings, library, the shoot that was last at work; then follows keys, files and other windows. */
import { computed, effect, untracked } from '@preact/signals'
import { render } from 'preact'
import type { CommandId } from '#app/commands.ts'
import { ask, onFileOpened } from '#renderer/host/host.ts'
import { fitPlan } from '#renderer/state/session/map-window.ts'
import { copySpot, keepSpot } from '#renderer/state/act/spot-acts.ts'
import { addShootFile, chooseShootFile, makeShoot, saveShootFile } from '#renderer/state/act/shoot-acts.ts'
import { redo, undo } from '#renderer/state/library/history.ts'
import { followHealth } from '#renderer/state/session/network.ts'
import { followCommands } from '#renderer/shell/keys.ts'
import { homeSpot, libraryState, openAny, refreshShootList } from '#renderer/state/library/library.ts'
import { savedSpot, seenVersion, shoot, tryOut } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { page } from '#renderer/state/session/navigation.ts'
import { pickedHere } from '#renderer/state/session/picked.ts'
import { refreshIfChanged } from '#renderer/state/library/other-windows.ts'
import { changeSettings, dark, loadSettings, settings } from '#renderer/state/library/settings.ts'
import { followSensitivity } from '#renderer/state/plan/sensitivity.ts'
import { followTerrain } from '#renderer/state/plan/terrain.ts'
import { keepArrangement } from '#renderer/state/act/try-out.ts'
import { followZone } from '#renderer/state/plan/zone.ts'
import { words } from '#renderer/words/en.ts'
import { WholePage, trouble } from '#renderer/shell/app-window.tsx'
import '#renderer/style/ink.css'
import '#renderer/style/type.css'
import '#renderer/style/part.css'
import '#renderer/style/board.css'
import '#renderer/view/map/map.css'
import '#renderer/panel/answers/answers.css'
import '#renderer/style/light.css'
import '#renderer/style/ground.css'
import '#renderer/panel/answers/far-off.css'
import '#renderer/style/pages.css'

/** Milliseconds between two looks for another window's changes while this one is in sight. */
const LOOK_EVERY = 5_000

async function bringUp(): Promise<void> {
  // First of all calls: where nobody answers, or not to this window, that is said once, on a page of its own.
  const answer = await ask('library.state', {})
  if (!answer.ok) {
    trouble.value = { kind: answer.fault.reason === 'no-key' ? 'no-key' : 'no-host', message: answer.fault.message }
    return
  }
  await loadSettings()
  libraryState.value = answer.value
  const { state } = answer.value
  if (state !== 'open' && state !== 'read-only') {
    trouble.value = { kind: 'library', state: answer.value }
    return
  }
  seenVersion.value = answer.value.version
  await refreshShootList()
  await openAny(settings.value.lastShootId, settings.value.lastSpotId)
  trouble.value = 'none'
}

function focusBox(id: string): void {
  page.value = 'board'
  // The board may have to be drawn first.
  requestAnimationFrame(() => document.getElementById(id)?.focus())
}

function run(id: CommandId): void {
  if (trouble.value !== 'none') return
  const spot = savedSpot.value
  const acts: Record<CommandId, () => unknown> = {
    'new-shoot': makeShoot,
    'edit-shoot': () => (page.value = 'shoot'),
    'open-file': chooseShootFile,
    'save-file': saveShootFile,
    'print-sheet': () => spot !== null && (page.value = 'sheet'),
    undo,
    redo,
    find: () => focusBox('find-box'),
    'go-to-place': () => focusBox('place-box'),
    settings: () => (page.value = 'settings'),
    'keep-spot': () => spot !== null && void (tryOut.value === null ? keepSpot(spot) : keepArrangement(spot)),
    'duplicate-spot': () => spot !== null && void (tryOut.value === null ? copySpot(spot) : keepArrangement(spot)),
    'side-by-side': openCompare,
    'best-days': () => spot !== null && (page.value = 'days'),
    theme: () => void changeSettings({ theme: dark.value ? 'light' : 'dark' }),
    help: () => (page.value = 'help'),
  }
  acts[id]()
}

function openCompare(): void {
  if (pickedHere.value.length >= 2) page.value = 'compare'
  else tell('fault', words.board.sideBySideHint)
}

function followWindows(): void {
  const look = (): void => {
    if (document.visibilityState === 'visible' && trouble.value === 'none') void refreshIfChanged()
  }
  addEventListener('focus', look)
  setInterval(look, LOOK_EVERY)
}

/** A backup that could not be made is told once, until another reason stands in its way. */
function followBackups(): void {
  const amiss = computed(() => libraryState.value?.backupFault ?? null)
  effect(() => {
    const reason = amiss.value
    if (reason !== null) untracked(() => tell('fault', words.board.trouble.backupNotMade(reason)))
  })
}

/** A library that goes bad while it is open: from then on nothing can be saved, so that fills the window. */
function followDamage(): void {
  effect(() => {
    const now = libraryState.value
    if (trouble.value === 'none' && now !== null && now.state !== 'open' && now.state !== 'read-only')
      trouble.value = { kind: 'library', state: now }
  })
}

/** The theme on the page, the title, and where to begin next time. */
function followState(): void {
  effect(() => {
    // Paper is light: the sheet's page shows, and prints, what will be on paper.
    document.documentElement.dataset['theme'] = dark.value && page.value !== 'sheet' ? 'dark' : 'light'
  })
  const shootOnBoard = computed(() => shoot.value?.id ?? null)
  // Another shoot, another place: the map goes there, however the shoot came on the board.
  effect(() => {
    if (shootOnBoard.value !== null) setTimeout(fitPlan, 0)
  })
  effect(() => {
    const place = { lastShootId: shoot.value?.id ?? null, lastSpotId: homeSpot.value?.id ?? null }
    const { lastShootId, lastSpotId } = settings.peek()
    if (trouble.value !== 'none' || (place.lastShootId === lastShootId && place.lastSpotId === lastSpotId))
      return undefined
    const keep = (): void => void changeSettings(place)
    // A wish of the moment, not of every press of a key through the shelf; and none is lost by leaving within it.
    const timer = setTimeout(keep, 500)
    addEventListener('pagehide', keep)
    return () => {
      clearTimeout(timer)
      removeEventListener('pagehide', keep)
    }
  })
}

await bringUp()
followState()
followBackups()
followDamage()
followZone()
followTerrain()
followSensitivity()
const root = document.getElementById('page')
if (root !== null) render(<WholePage onAgain={bringUp} />, root)
followCommands(run)
onFileOpened((file) => void addShootFile(file.text))
followWindows()
followHealth()
