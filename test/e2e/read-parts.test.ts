/** Answers that are read: in sight they follow a moving hand, out of sight they rest, and once it lets go all are exact. */
import type { Locator } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { groundWords } from '#renderer/words/en-ground.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, closePlan, dragBy, openAnswer, soon } from './board.ts'
import { type Opened, open } from './open.ts'

let opened: Opened

beforeAll(async () => {
  // So low that the column scrolls and an open answer lies below the fold.
  opened = await open({ viewport: { width: 1100, height: 440 } })
  await boardReady(opened.page)
})
afterAll(async () => opened.close())

/** What stands in an answer's fields: without the words about the ground, which is read in its own time. */
function fields(part: Locator): Promise<string> {
  return part.evaluate((section) => [...section.querySelectorAll('input')].map((input) => input.value).join(' '))
}

test('the line of an answer follows the hand, an open one below the fold waits for its release', async () => {
  const { page } = opened
  const column = page.locator('.board-right')
  const toTop = (): Promise<void> => column.evaluate((element) => element.scrollTo(0, 0))
  // Whether a part is in sight is looked at once a frame.
  const twoFrames = (): Promise<unknown> =>
    page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  const line = page.getByRole('region', { name: words.answers.where.title }).getByRole('heading')
  const where = await openAnswer(page, words.answers.where.title)
  await toTop()
  await twoFrames()
  const [lineBefore, whereBefore] = [await line.textContent(), await fields(where)]
  const standpoint = closePlan(page).getByRole('button', { name: /^Standpoint/ })
  await dragBy(page, standpoint, 12, 25, async () => {
    await soon(async () => (await line.textContent()) !== lineBefore)
    expect(await fields(where)).toBe(whereBefore)
    // Scrolled to, it is read, and so it follows.
    await where.locator('.answer-body').evaluate((body) => body.scrollIntoView())
    await soon(async () => (await fields(where)) !== whereBefore)
    await toTop()
  })
  await where.scrollIntoViewIfNeeded()
  const after = await fields(where)
  await page.reload()
  await boardReady(page)
  // What was open is open again, and what was shown on release is what is saved.
  await soon(async () => (await fields(where)) === after)
})

test('so does the drawing of the ground on the way', async () => {
  const { page } = opened
  const ground = (await openAnswer(page, groundWords.question)).locator('svg.profile')
  await ground.waitFor({ state: 'attached' })
  await page.locator('.board-right').evaluate((element) => element.scrollTo(0, 0))
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  const drawing = (): Promise<string> => ground.evaluate((profile) => profile.innerHTML)
  const before = await drawing()
  const line = page.getByRole('region', { name: words.answers.where.title }).getByRole('heading')
  const lineBefore = await line.textContent()
  await dragBy(page, closePlan(page).getByRole('button', { name: /^Standpoint/ }), -12, -25, async () => {
    await soon(async () => (await line.textContent()) !== lineBefore)
    expect(await drawing()).toBe(before)
  })
  await soon(async () => (await drawing()) !== before)
})
