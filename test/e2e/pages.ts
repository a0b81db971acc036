/** The pages as tests go to them: by the key of the command that the table names, each there once what it is for is in sight. */
import type { Page } from 'playwright-core'
import { COMMANDS } from '#app/commands.ts'
import { PAGE_COMMANDS, type PageId } from '#renderer/state/session/navigation.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady } from './board.ts'
import { card } from './shelf.ts'

/** Those that lie over the board. */
export type PageOverBoard = Exclude<PageId, 'board'>

export const PAGES_OVER_BOARD = Object.keys(PAGE_COMMANDS).filter((id): id is PageOverBoard => id !== 'board')

/** A page that is added to the table is asked here what shows that it is there. */
const READY: Readonly<Record<PageOverBoard, (page: Page) => Promise<unknown>>> = {
  compare: (page) => page.getByRole('heading', { level: 1, name: sheetWords.compare.title }).waitFor(),
  days: (page) => page.getByRole('heading', { level: 1, name: daysWords.title }).waitFor(),
  shoot: (page) => page.getByRole('heading', { name: words.shoot.subject }).waitFor(),
  sheet: (page) => page.locator('html[data-ready=yes]').waitFor({ timeout: 60_000 }),
  settings: (page) => page.getByRole('heading', { name: words.board.settingsPage.mapSource, exact: true }).waitFor(),
  help: (page) => page.getByRole('heading', { name: words.board.helpPage.how }).waitFor(),
}

/** Presses the key of its command, without waiting for the page. */
export async function askForPage(page: Page, id: PageOverBoard): Promise<void> {
  const keys = COMMANDS.find((command) => command.id === PAGE_COMMANDS[id])?.accelerator
  if (keys === undefined || keys === null) throw new Error(`no key leads to the page ${id}`)
  await page.keyboard.press(keys.replace('CmdOrCtrl', 'Control'))
}

export async function goToPage(page: Page, id: PageId): Promise<void> {
  if (id === 'board') return boardReady(page)
  await askForPage(page, id)
  await READY[id](page)
}

/** A narrow window begins with the shelf folded. */
export async function unfoldShelf(page: Page): Promise<void> {
  const unfold = page.getByRole('button', { name: headerWords.unfoldShelf })
  if (await unfold.isVisible()) await unfold.click()
}

/** Picks spots on the shelf, as side by side needs two. */
export async function pickSpots(page: Page, ...names: readonly string[]): Promise<void> {
  await unfoldShelf(page)
  for (const name of names) {
    await card(page, name).focus()
    await page.getByRole('checkbox', { name: `${words.board.shelf.pick}: ${name}`, exact: true }).press('Space')
  }
}
