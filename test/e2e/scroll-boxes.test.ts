/** Every page scrolls within its own boxes, never out of its window: whatever takes the focus, header and way back stay in sight. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { scanWords } from '#renderer/words/en-scan.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady } from './board.ts'
import { type Opened, open } from './open.ts'
import { card } from './shelf.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

async function pickTwo(page: Page): Promise<void> {
  for (const name of ['Track below Hallow Brae', 'Quennick harbour wall']) {
    await card(page, name).focus()
    await page.getByRole('checkbox', { name: `${words.board.shelf.pick}: ${name}`, exact: true }).press('Space')
  }
}

const PAGES: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  board: async (page) => {
    const folded = page.locator('details:not([open]) > summary')
    while ((await folded.count()) > 0) await folded.first().evaluate((summary) => (summary as HTMLElement).click())
  },
  scan: (page) => page.getByRole('button', { name: scanWords.scan, exact: true }).click(),
  shoot: async (page) => {
    await page.keyboard.press('Control+e')
    await page.getByRole('heading', { name: words.shoot.subject }).waitFor()
  },
  settings: async (page) => {
    await page.keyboard.press('Control+,')
    await page
      .getByText(/^Version /u)
      .or(page.locator('.ground-add'))
      .first()
      .waitFor()
  },
  help: async (page) => {
    await page.keyboard.press('F1')
    await page.getByRole('heading', { name: words.board.helpPage.how }).waitFor()
  },
  'side by side': async (page) => {
    await page.keyboard.press('Control+i')
    await page.getByRole('img', { name: sheetWords.mapLabel('Track below Hallow Brae') }).waitFor()
  },
  days: async (page) => {
    await page.keyboard.press('Control+j')
    await page.getByText(/^Found \d+/u).waitFor()
  },
  sheet: async (page) => {
    await page.keyboard.press('Control+p')
    await page.locator('html[data-ready=yes]').waitFor()
  },
}

/** What scrolls without holding what is placed in it, and how far the window itself gave way while each thing had the focus. */
function faults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    const nameOf = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`
    const window = document.scrollingElement ?? document.documentElement
    const room = window.scrollHeight - window.clientHeight
    if (room > 0) found.push(`the window can be scrolled by ${room} px`)
    const beside = window.scrollWidth - window.clientWidth
    if (beside > 0) found.push(`the window can be scrolled sideways by ${beside} px`)
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const { overflowX, overflowY, position } = getComputedStyle(element)
      const scrolls = [overflowX, overflowY].some((overflow) => overflow === 'auto' || overflow === 'scroll')
      const form = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement
      if (scrolls && position === 'static' && !form)
        found.push(`${nameOf(element)} scrolls what is not placed within it`)
    }
    const reached = document.querySelectorAll<HTMLElement>('a, button, input, select, textarea, summary, [tabindex]')
    for (const element of reached) {
      element.focus()
      const moved = [window, ...document.querySelectorAll('body, #page')].find((box) => box.scrollTop !== 0)
      if (moved === undefined) continue
      found.push(`${nameOf(element)} scrolls ${nameOf(moved)} out by ${moved.scrollTop} px`)
      moved.scrollTop = 0
    }
    return found
  })
}

describe.each([
  [1440, 900],
  [1100, 700],
  // The smallest window, enlarged by half.
  [733, 467],
])('%i x %i', (width, height) => {
  beforeAll(async () => {
    await opened.page.setViewportSize({ width, height })
    await opened.page.reload()
    await boardReady(opened.page)
    await pickTwo(opened.page)
  })
  test.each(Object.keys(PAGES))('%s', async (name) => {
    const { page } = opened
    await PAGES[name]?.(page)
    expect(await faults(page)).toEqual([])
    const header = page.getByRole('banner')
    expect((await header.boundingBox())?.y).toBe(0)
  })
})
