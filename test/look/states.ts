/** The thirty states of the program that are looked at: every page and the board's own, in a large window light and dark, and in the smallest one enlarged by half. */
import type { Page } from 'playwright-core'
import { COMMANDS } from '#app/commands.ts'
import { PAGE_COMMANDS, type PageId } from '#renderer/state/session/navigation.ts'
import { pickSpots, unfoldShelf } from '#test/e2e/pages.ts'
import { scanWords } from '#renderer/words/en-scan.ts'

interface View {
  readonly name: string
  readonly width: number
  readonly height: number
  readonly scale: number
  readonly theme: 'light' | 'dark'
}

export interface LookState extends View {
  /** From the board there. */
  readonly go: (page: Page) => Promise<unknown>
}

const VIEWS: readonly View[] = [
  { name: 'light', width: 1440, height: 900, scale: 1, theme: 'light' },
  { name: 'dark', width: 1440, height: 900, scale: 1, theme: 'dark' },
  { name: 'small', width: 733, height: 467, scale: 1.5, theme: 'light' },
]

/** Of the demo, those that are set side by side. */
export const SPOTS = ['Track below Hallow Brae', 'Quennick harbour wall'] as const

function cardOf(page: Page, name: string) {
  return page.getByRole('button', { name: new RegExp(`^${name}`, 'u') }).first()
}

const ON_BOARD: Readonly<Record<string, LookState['go']>> = {
  board: () => Promise.resolve(),
  'another spot': async (page) => {
    await unfoldShelf(page)
    await cardOf(page, SPOTS[1]).press('Enter')
  },
  scan: (page) => page.getByRole('button', { name: scanWords.scan, exact: true }).click(),
  unfolded: async (page) => {
    const folded = page.locator('details:not([open]) > summary')
    while ((await folded.count()) > 0) await folded.first().evaluate((summary) => (summary as HTMLElement).click())
  },
}

function pageOver(id: PageId): LookState['go'] {
  return async (page) => {
    if (id === 'compare') await pickSpots(page, ...SPOTS)
    const keys = COMMANDS.find((command) => command.id === PAGE_COMMANDS[id])?.accelerator
    if (keys === undefined || keys === null) throw new Error(`no key leads to the page ${id}`)
    await page.keyboard.press(keys.replace('CmdOrCtrl', 'Control'))
  }
}

const PLACES: Readonly<Record<string, LookState['go']>> = {
  ...ON_BOARD,
  ...Object.fromEntries(
    (Object.keys(PAGE_COMMANDS) as PageId[]).filter((id) => id !== 'board').map((id) => [id, pageOver(id)]),
  ),
}

export const STATES: readonly LookState[] = VIEWS.flatMap((view) =>
  Object.entries(PLACES).map(([name, go]) => ({ ...view, name: `${name} ${view.name}`, go })),
)
