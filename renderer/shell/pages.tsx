/** The table of pages: what each is called, when it can be shown and what it shows. Header, window and commands are read off it. */
import type { ComponentType } from 'preact'
import { SettingsPage } from '#renderer/page/settings/settings-page.tsx'
import { ShootPage } from '#renderer/page/shoot/shoot-page.tsx'
import { LazyPage } from '#renderer/part/lazy-page.tsx'
import { hasBoardSpot } from '#renderer/state/library/library.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { type PageId, backToBoard } from '#renderer/state/session/navigation.ts'
import { pickedOnShelf } from '#renderer/state/session/picked.ts'
import { words } from '#renderer/words/en.ts'
import { Board } from './board.tsx'
import { HelpPage } from './help-page.tsx'

export interface PageButton {
  readonly text: string
  /** What it needs, or what it is for. */
  readonly hint?: string
}

export interface PageRow {
  readonly id: PageId
  /** Its button in the header, read while the header is drawn; null for a page that is opened from elsewhere. */
  readonly button: (() => PageButton) | null
  /** Whether it may be opened now. */
  readonly ready: () => boolean
  /** What to say to a command that asks for it while it isn't ready; null when nothing is said. */
  readonly notReady: string | null
  readonly Page: ComponentType
}

/** A page whose code is fetched when it is first opened. */
function later(id: PageId, load: () => Promise<ComponentType>): ComponentType {
  return () => <LazyPage key={id} load={load} parts={{}} />
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

/** Buttons stand in this order. */
export const PAGES: readonly PageRow[] = [
  { id: 'board', button: null, ready: always, notReady: null, Page: Board },
  {
    id: 'compare',
    button: () => {
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
    button: () => ({ text: words.board.whichDays }),
    ready: hasSpot,
    notReady: null,
    Page: later('days', async () => (await import('#renderer/page/days/days-page.tsx')).DaysPage),
  },
  {
    id: 'shoot',
    button: () => ({ text: words.board.subjectAndBag }),
    ready: always,
    notReady: null,
    Page: ShootPage,
  },
  {
    id: 'sheet',
    button: () => ({ text: words.board.sheet }),
    ready: hasSpot,
    notReady: null,
    Page: SheetOfPlan,
  },
  {
    id: 'settings',
    button: () => ({ text: words.board.settings }),
    ready: always,
    notReady: null,
    Page: SettingsPage,
  },
  {
    id: 'help',
    button: () => ({ text: words.board.help }),
    ready: always,
    notReady: null,
    Page: HelpPage,
  },
]

export function pageRow(id: PageId): PageRow {
  const row = PAGES.find((candidate) => candidate.id === id)
  if (row === undefined) throw new Error(`no page is called ${id}`)
  return row
}
