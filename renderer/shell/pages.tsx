/** The table of pages: what each is called, when it can be shown and what it shows. Header, window and commands are read off it. */
import type { ComponentType } from 'preact'
import type { IconName } from '#renderer/part/icon.tsx'
import { LazyPage } from '#renderer/part/lazy-page.tsx'
import { hasBoardSpot } from '#renderer/state/library/library.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { type PageId, backToBoard } from '#renderer/state/session/navigation.ts'
import { pickedOnShelf } from '#renderer/state/session/picked.ts'
import { headerWords as say } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { Board } from './board.tsx'

/** How the window's first row leads to a page. */
export interface WayIn {
  readonly text: string
  /** What it needs, or what it is for. */
  readonly hint?: string
  /** Shown as this drawing at the row's end; without one it is a tab. */
  readonly icon?: IconName
}

export interface PageRow {
  readonly id: PageId
  /** Its tab or button in the window's first row, read while that is drawn; null for a page that is opened from elsewhere. */
  readonly wayIn: (() => WayIn) | null
  /** Whether it may be opened now. */
  readonly ready: () => boolean
  /** What to say to a command that asks for it while it isn't ready; null when nothing is said. */
  readonly notReady: string | null
  readonly Page: ComponentType
}

/** A page whose code is fetched when it is first opened; from then on it is there at once. */
function later(id: PageId, load: () => Promise<ComponentType>): ComponentType {
  let known: ComponentType | null = null
  const loadOnce = async (): Promise<ComponentType> => {
    known = await load()
    return known
  }
  return () => <LazyPage key={id} load={loadOnce} known={known} parts={{}} />
}

/** Without a spot there is nothing to print: the board shows then. */
function SheetOfPlan() {
  const now = plan.value
  if (now === null) return <Board />
  const load = async () => (await import('#renderer/page/sheet/sheet-page.tsx')).SheetPage
  return <LazyPage key="sheet" load={load} parts={{ plan: now, onBack: backToBoard }} />
}

const always = (): boolean => true
const hasSpot = (): boolean => hasBoardSpot.value

/** Tabs stand in this order, which is that of the job. */
export const PAGES: readonly PageRow[] = [
  { id: 'board', wayIn: () => ({ text: say.board }), ready: always, notReady: null, Page: Board },
  {
    id: 'compare',
    wayIn: () => {
      const count = pickedOnShelf.value.length
      const { board } = words
      return { text: count > 0 ? board.sideBySideCount(count) : board.sideBySide, hint: board.sideBySideHint }
    },
    ready: () => pickedOnShelf.value.length >= 2,
    notReady: words.board.sideBySideHint,
    Page: later('compare', async () => (await import('#renderer/page/compare/compare-page.tsx')).ComparePage),
  },
  {
    id: 'days',
    wayIn: () => ({ text: say.days, hint: say.daysHint }),
    ready: hasSpot,
    notReady: say.needsSpot,
    Page: later('days', async () => (await import('#renderer/page/days/days-page.tsx')).DaysPage),
  },
  {
    id: 'shoot',
    wayIn: null,
    ready: always,
    notReady: null,
    Page: later('shoot', async () => (await import('#renderer/page/shoot/shoot-page.tsx')).ShootPage),
  },
  {
    id: 'sheet',
    wayIn: () => ({ text: say.sheet }),
    ready: hasSpot,
    notReady: say.needsSpot,
    Page: SheetOfPlan,
  },
  {
    id: 'settings',
    wayIn: () => ({ text: words.board.settings, icon: 'settings' }),
    ready: always,
    notReady: null,
    Page: later('settings', async () => (await import('#renderer/page/settings/settings-page.tsx')).SettingsPage),
  },
  {
    id: 'help',
    wayIn: () => ({ text: words.board.help, icon: 'help' }),
    ready: always,
    notReady: null,
    Page: later('help', async () => (await import('./help-page.tsx')).HelpPage),
  },
]

export function pageRow(id: PageId): PageRow {
  const row = PAGES.find((candidate) => candidate.id === id)
  if (row === undefined) throw new Error(`no page is called ${id}`)
  return row
}
