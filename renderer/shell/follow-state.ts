/** What follows the state by itself: the theme, where to begin next time, the changes of other windows. */
import { tell } from '#renderer/state/library/notices.ts'
import { words } from '#renderer/words/en.ts'
import { computed, effect, untracked } from '@preact/signals'
import { page } from '#renderer/state/session/navigation.ts'
import { fitPlan } from '#renderer/state/session/map-window.ts'
import { shoot, homeSpot, libraryState } from '#renderer/state/library/library.ts'
import { trouble, showTrouble } from './app-window.tsx'
import { refreshIfChanged } from '#renderer/state/library/other-windows.ts'
import { changeSettings, dark, settings } from '#renderer/state/library/settings.ts'

/** Milliseconds between two looks for another window's changes while this one is in sight. */
const LOOK_EVERY = 5_000

export function followWindows(): void {
  const look = (): void => {
    if (document.visibilityState === 'visible' && trouble.value === 'none') void refreshIfChanged()
  }
  addEventListener('focus', look)
  setInterval(look, LOOK_EVERY)
}

/** The theme on the page, the title, and where to begin next time. */
export function followState(): void {
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

/** A backup that could not be made is told once, until another reason stands in its way. */
export function followBackups(): void {
  const amiss = computed(() => libraryState.value?.backupFault ?? null)
  effect(() => {
    const reason = amiss.value
    if (reason !== null) untracked(() => tell('fault', words.board.trouble.backupNotMade(reason)))
  })
}

/** A library that goes bad while it is open: from then on nothing can be saved, so that fills the window. */
export function followDamage(): void {
  effect(() => {
    const now = libraryState.value
    if (trouble.value === 'none' && now !== null && now.state !== 'open' && now.state !== 'read-only')
      showTrouble({ kind: 'library', state: now })
  })
}
