/** Every page by the rules of axe-core, light and dark, and in the smallest window without a sideways scroll. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { words } from '#renderer/words/en.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { stoppingWords } from '#renderer/words/en-stopping.ts'
import { temporaryData } from '#test/help/host.ts'
import { axeFindings } from './axe.ts'
import { boardReady, soon, openAnswer } from './board.ts'
import { type Opened, open } from './open.ts'
import { type PageOverBoard, PAGES_OVER_BOARD, goToPage, pickSpots } from './pages.ts'
import { QUESTIONS } from './questions.ts'

const TWO = ['Track below Hallow Brae', 'Quennick harbour wall'] as const
const SMALL = { width: 1100, height: 700 }
const BOTH = [
  ['light', 'dark'],
  ['dark', 'light'],
] as const

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser', viewport: SMALL })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

interface Stop {
  readonly name: string
  /** From the board there; the page is told ready by what it waits for. */
  readonly go: (page: Page) => Promise<void>
  readonly paper?: boolean
  /** Of the window, where not the small one. */
  readonly size?: typeof SMALL
}

const PAGES: readonly Stop[] = [
  { name: 'board', go: boardReady },
  // So tall that every answer has room to be open.
  { name: 'board with everything unfolded', go: unfolded, size: { width: SMALL.width, height: 4_000 } },
  { name: 'scan with ground drawn, one chosen', go: drawnGround },
  {
    name: 'scan while an outline is drawn and refused',
    go: async (page) => {
      await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
      await page.getByRole('button', { name: stoppingWords.draw['keep-out'].area, exact: true }).click()
      await page.keyboard.press('Space')
      await page.keyboard.press('Enter')
      await page.getByText(stoppingWords.faults['too-few'].area).waitFor()
    },
  },
  ...PAGES_OVER_BOARD.map((id): Stop => ({ name: id, paper: id === 'sheet', go: (page) => pageFilled(page, id) })),
]

/** With what comes after its heading, so that all of it is judged. */
async function pageFilled(page: Page, id: PageOverBoard): Promise<void> {
  if (id === 'compare') await pickSpots(page, ...TWO)
  await goToPage(page, id)
  if (id === 'compare') await page.getByRole('img', { name: sheetWords.mapLabel(TWO[0]) }).waitFor()
  if (id === 'days') await page.getByText(/^\d+ found from /u).waitFor()
}

async function unfolded(page: Page): Promise<void> {
  await boardReady(page)
  for (const question of QUESTIONS) await openAnswer(page, question)
  expect(await page.locator('.answer-body').count()).toBe(QUESTIONS.length)
  const folded = page.locator('details:not([open]) > summary')
  while ((await folded.count()) > 0) await folded.first().click()
  await page.getByRole('textbox', { name: words.spot.walk }).fill('as long as it takes')
  await page.keyboard.press('Tab')
  await page.getByRole('searchbox').or(page.getByRole('search').getByRole('textbox')).fill('wall')
  await page.getByText(words.board.shelf.found(1, 1)).waitFor()
}

async function drawnGround(page: Page): Promise<void> {
  await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
  for (const sort of ['stopping', 'keep-out'] as const) {
    for (const form of ['line', 'area'] as const) {
      await page.getByRole('button', { name: stoppingWords.draw[sort][form], exact: true }).click()
      for (const key of ['Shift+ArrowRight', 'Shift+ArrowDown', 'Shift+ArrowLeft']) {
        await page.keyboard.press('Space')
        await page.keyboard.press(key)
      }
      await page.keyboard.press('Enter')
      await page.locator('.drawn-row.chosen').waitFor()
    }
  }
  await page.locator('.grab-drawn-point').first().focus()
  await page.getByRole('button', { name: stoppingWords.draw.stopping.line, exact: true }).scrollIntoViewIfNeeded()
}

/** Lets the page take its other colours, without a load, until all of them have come. */
async function turn(page: Page, colorScheme: 'light' | 'dark', paper = false): Promise<void> {
  await page.emulateMedia({ colorScheme })
  await expect
    .poll(() => page.evaluate(() => document.documentElement.dataset['theme']), { timeout: 30_000 })
    // Paper is light whatever the theme.
    .toBe(paper ? 'light' : colorScheme)
  await soon(() => page.evaluate(() => document.getAnimations().every((one) => one.playState !== 'running')))
}

// Every other page comes up dark and is turned light, so that both ways of coming by a theme are seen. What stands on the board, and
// the first page over it, are loaded; the others are gone to from there.
const LOADED = PAGES.length - PAGES_OVER_BOARD.length + 1
describe.each(PAGES.map((stop, index) => ({ ...stop, schemes: BOTH[index % 2] ?? [], isLoaded: index < LOADED })))(
  '$name: axe finds nothing, nothing lies beyond the window’s side',
  ({ go, paper, size, schemes, isLoaded }) => {
    beforeAll(async () => {
      const { page } = opened
      await page.emulateMedia({ colorScheme: schemes[0] ?? null })
      await page.setViewportSize(size ?? SMALL)
      if (isLoaded) {
        await page.reload()
        await boardReady(page)
      }
      await go(page)
    })

    test.each(schemes)('%s', async (colorScheme) => {
      const { page } = opened
      await turn(page, colorScheme, paper)
      expect(await axeFindings(page)).toEqual([])
      const beyond = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(beyond).toBeLessThanOrEqual(0)
    })
  },
)

describe('the page of a damaged library', () => {
  let data: Awaited<ReturnType<typeof temporaryData>>
  let trouble: Opened
  beforeAll(async () => {
    data = await temporaryData()
    mkdirSync(join(data.folder, 'library'))
    writeFileSync(join(data.folder, 'library', 'library.sqlite'), 'This is a letter, not a library. '.repeat(40))
    trouble = await open({ host: 'browser', data: data.folder, viewport: SMALL })
    await trouble.page.getByRole('heading', { name: words.board.trouble.damaged }).waitFor()
  })
  afterAll(async () => {
    await trouble.close()
    await data.remove()
  })

  test.each(['light', 'dark'] as const)('%s', async (colorScheme) => {
    await turn(trouble.page, colorScheme)
    expect(await axeFindings(trouble.page)).toEqual([])
  })
})
