/** The answers at a glance: every question with its one answer in sight, one opened in place, no line moved by a drag. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { QUESTIONS } from './questions.ts'
import { glanceWords } from '#renderer/words/en-glance.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, closePlan, dragBy, openAnswer, soon } from './board.ts'
import { type Opened, open } from './open.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser', viewport: { width: 1100, height: 700 } })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

interface Line {
  readonly title: string
  readonly figure: string
  readonly top: number
  readonly bottom: number
}

function lines(page: Page): Promise<Line[]> {
  return page.locator('.answer').evaluateAll((answers) =>
    answers.map((answer) => {
      const { top, bottom } = (answer.querySelector('h2') as HTMLElement).getBoundingClientRect()
      const text = (selector: string): string => answer.querySelector(selector)?.textContent?.trim() ?? ''
      return { title: text('.answer-title'), figure: text('.answer-figure'), top, bottom }
    }),
  )
}

/** Lower end of the column, in the window. */
function foot(page: Page): Promise<number> {
  return page.locator('.glance').evaluate((column) => column.getBoundingClientRect().bottom)
}

describe('at 1100 by 700', () => {
  test('every question stands in sight with its answer, and the open one with its first rows', async () => {
    const { page } = opened
    await page
      .locator('.answer-figure', { hasText: glanceWords.shows('90') })
      .or(page.locator('.answer-figure'))
      .first()
      .waitFor()
    const all = await lines(page)
    expect(all.map(({ title }) => title)).toEqual(QUESTIONS)
    await soon(async () => (await lines(page)).every(({ figure }) => figure !== '' && figure !== glanceWords.unknown))
    const end = await foot(page)
    for (const { bottom } of await lines(page)) expect(bottom).toBeLessThanOrEqual(end + 0.5)
    const body = await page.locator('.answer-body').boundingBox()
    expect(body?.height).toBeGreaterThan(55)
  })

  test('another question opens in place of the first, and a press or a key closes it', async () => {
    const { page } = opened
    const sharp = await openAnswer(page, words.answers.howSharp)
    expect(await page.locator('.answer-body').count()).toBe(1)
    const line = sharp.getByRole('heading').getByRole('button')
    expect(await line.getAttribute('aria-expanded')).toBe('true')
    await line.press('Enter')
    expect(await line.getAttribute('aria-expanded')).toBe('false')
    await line.press('Space')
    await sharp.locator('.answer-body').waitFor()
    await page.reload()
    await boardReady(page)
    await sharp.locator('.answer-body').waitFor()
    expect(await page.locator('.answer-body').count()).toBe(1)
  })

  test('a drag changes figures and moves no line', async () => {
    const { page } = opened
    const before = await lines(page)
    await dragBy(page, closePlan(page).getByRole('button', { name: /^Standpoint/ }), -30, 20, async () => {
      await soon(async () => (await lines(page)).some(({ figure }, at) => figure !== before[at]?.figure))
      expect((await lines(page)).map(({ top }) => top)).toEqual(before.map(({ top }) => top))
    })
    await page.keyboard.press('Control+z')
  })

  test('what is wrong has its word in the line', async () => {
    const { page } = opened
    const lens = page.getByRole('region', { name: words.answers.whichLens })
    expect(await lens.locator('.answer-wrong').count()).toBe(0)
    // So near that no lens of the bag takes all of the subject.
    await dragBy(page, closePlan(page).getByRole('button', { name: /^Standpoint/ }), 90, -45)
    await lens.locator('h2 .answer-wrong').waitFor()
    expect(((await lens.locator('h2 .answer-wrong').textContent()) ?? '').length).toBeGreaterThan(3)
    await page.keyboard.press('Control+z')
    await lens.locator('h2 .answer-wrong').waitFor({ state: 'detached' })
  })
})

test('a tall window keeps several open', async () => {
  const { page } = opened
  await page.setViewportSize({ width: 1440, height: 1500 })
  await openAnswer(page, words.answers.whichLens)
  await openAnswer(page, lightWords.question)
  await soon(async () => (await page.locator('.answer-body').count()) >= 2)
  await page.setViewportSize({ width: 1440, height: 900 })
  await soon(async () => (await page.locator('.answer-body').count()) === 1)
  // Of two the one opened last.
  await page.getByRole('region', { name: lightWords.question }).locator('.answer-body').waitFor()
})
