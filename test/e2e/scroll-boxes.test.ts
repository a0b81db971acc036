/** Every page scrolls within its own boxes, never out of its window: whatever takes the focus, header and way back stay in sight. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { scanWords } from '#renderer/words/en-scan.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { boardReady } from './board.ts'
import { type Opened, open } from './open.ts'
import { type PageOverBoard, PAGES_OVER_BOARD, goToPage, pickSpots } from './pages.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

const TWO = ['Track below Hallow Brae', 'Quennick harbour wall'] as const

/** What stands on the board by turns, and every page over it. */
const PLACES: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  board: async (page) => {
    const folded = page.locator('details:not([open]) > summary')
    while ((await folded.count()) > 0) await folded.first().evaluate((summary) => (summary as HTMLElement).click())
  },
  scan: (page) => page.getByRole('button', { name: scanWords.scan, exact: true }).click(),
  ...Object.fromEntries(PAGES_OVER_BOARD.map((id) => [id, (page: Page) => pageFilled(page, id)])),
}

/** With what comes after its heading, so that all of it is measured. */
async function pageFilled(page: Page, id: PageOverBoard): Promise<void> {
  await goToPage(page, id)
  if (id === 'settings') await page.locator('.ground-add').first().waitFor()
  if (id === 'compare') await page.getByRole('img', { name: sheetWords.mapLabel(TWO[0]) }).waitFor()
  if (id === 'days') await page.getByText(/^\d+ found from /u).waitFor()
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

/** Things to press or fill that lie over one another on a page, by their texts. */
function overlaps(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    /** What is seen of a thing within all that it scrolls in. */
    const seenOf = (thing: Element): { left: number; top: number; right: number; bottom: number } => {
      let { left, top, right, bottom } = thing.getBoundingClientRect()
      for (let around = thing.parentElement; around !== null; around = around.parentElement) {
        if (getComputedStyle(around).overflow === 'visible') continue
        const edge = around.getBoundingClientRect()
        left = Math.max(left, edge.left)
        top = Math.max(top, edge.top)
        right = Math.min(right, edge.right)
        bottom = Math.min(bottom, edge.bottom)
      }
      return { left, top, right, bottom }
    }
    /** A head that stays while the page scrolls beneath it. */
    const stays = (thing: Element): boolean => {
      for (let around: Element | null = thing; around !== null; around = around.parentElement)
        if (getComputedStyle(around).position === 'sticky') return true
      return false
    }
    const things = [
      ...document.querySelectorAll<HTMLElement>('main.page :is(a, button, input, select, label, h1, h2, h3)'),
    ]
      .filter(
        (thing) => thing.checkVisibility() && thing.closest('svg, [role=grid], .unseen') === null && !stays(thing),
      )
      .map((thing) => ({ thing, box: seenOf(thing) }))
    return things.flatMap(({ thing, box }, at) =>
      things.slice(at + 1).flatMap(({ thing: other, box: its }) => {
        const wide = Math.min(box.right, its.right) - Math.max(box.left, its.left)
        const high = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top)
        const together =
          thing.contains(other) || other.contains(thing) || other.closest('label')?.contains(thing) === true
        return wide > 3 && high > 3 && !together ? [`${thing.textContent} | ${other.textContent}`] : []
      }),
    )
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
    await pickSpots(opened.page, ...TWO)
  })
  test.each(Object.keys(PLACES))('%s', async (name) => {
    const { page } = opened
    await PLACES[name]?.(page)
    expect(await faults(page)).toEqual([])
    expect(await overlaps(page)).toEqual([])
    const header = page.getByRole('banner')
    expect((await header.boundingBox())?.y).toBe(0)
  })
})
