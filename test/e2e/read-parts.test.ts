/** Answers that are read: in sight they follow a moving hand, out of sight they rest, and once it lets go all are exact. */
import type { Locator } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { groundWords } from '#renderer/words/en-ground.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, closePlan, dragBy, soon } from './board.ts'
import { type Opened, open } from './open.ts'

let opened: Opened

beforeAll(async () => {
  opened = await open()
  await boardReady(opened.page)
})
afterAll(async () => opened.close())

function answer(question: string): Locator {
  return opened.page.getByRole('region', { name: question, exact: true })
}

/** What an answer shows, whether or not it is laid out. */
function shown(part: Locator): Promise<string> {
  return part.evaluate(
    (section) =>
      `${section.textContent} ${[...section.querySelectorAll('input')].map((input) => input.value).join(' ')}`,
  )
}

/** What stands in its fields: without the words about the ground, which is read in its own time. */
function fields(part: Locator): Promise<string> {
  return part.evaluate((section) => [...section.querySelectorAll('input')].map((input) => input.value).join(' '))
}

test('an answer in sight follows the hand, one below the fold waits for its release', async () => {
  const { page } = opened
  const lens = answer(words.answers.whichLens)
  const where = answer(words.answers.where.title)
  const ground = answer(groundWords.question).locator('svg.profile')
  // The elevations are there: nothing but the hand changes the drawing from now on.
  await ground.waitFor({ state: 'attached' })
  await page.locator('.tolerance[aria-busy=false]').waitFor({ state: 'attached' })
  const drawing = (): Promise<string> => ground.evaluate((profile) => profile.innerHTML)
  const [lensBefore, whereBefore, groundBefore] = [await shown(lens), await fields(where), await drawing()]
  const standpoint = closePlan(page).getByRole('button', { name: /^Standpoint/ })
  await dragBy(page, standpoint, 12, 25, async () => {
    await soon(async () => (await shown(lens)) !== lensBefore)
    expect(await fields(where)).toBe(whereBefore)
    expect(await drawing()).toBe(groundBefore)
    // Scrolled to, it is read, and so it follows.
    await where.evaluate((section) => section.scrollIntoView())
    await soon(async () => (await fields(where)) !== whereBefore)
    await page.locator('.answers').evaluate((column) => column.scrollTo(0, 0))
  })
  await where.scrollIntoViewIfNeeded()
  const after = await fields(where)
  await soon(async () => (await drawing()) !== groundBefore)
  await page.reload()
  await boardReady(page)
  // What was shown on release is what is saved.
  await soon(async () => (await fields(where)) === after)
})
