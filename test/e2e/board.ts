/** What tests of the board share: reading its answers, its library, and dragging as a hand does. */
import type { Locator, Page } from 'playwright-core'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import type { RunningHost } from '#test/help/host.ts'
import { expect } from 'vitest'
import { library } from './library.ts'

/** Waits until a statement about the page holds. */
export function soon(check: () => unknown): Promise<void> {
  return expect.poll(async () => (await check()) === true, { timeout: 30_000, interval: 50 }).toBe(true)
}

/** Waits until the board is drawn with its answers. */
export async function boardReady(page: Page): Promise<void> {
  await page.getByRole('heading', { name: words.answers.whichLens }).waitFor({ timeout: 60_000 })
  await closePlan(page)
    .getByRole('button', { name: /^Standpoint/ })
    .waitFor()
}

export function closePlan(page: Page): Locator {
  return page.getByRole('group', { name: mapWords.closePlanThings })
}

/** The answer under a question, opened where it stands closed. */
export async function openAnswer(page: Page, question: string): Promise<Locator> {
  const answer = page.getByRole('region', { name: question, exact: true })
  const line = answer.getByRole('heading').getByRole('button')
  if ((await line.getAttribute('aria-expanded')) === 'false') await line.click()
  await answer.locator('.answer-body').waitFor()
  return answer
}

/** Presses on the middle of a thing and drags it by so many pixels, in steps; `during` runs before the release. */
export async function dragBy(
  page: Page,
  thing: Locator,
  dx: number,
  dy: number,
  during?: () => Promise<void>,
): Promise<void> {
  const box = await thing.boundingBox()
  if (box === null) throw new Error('the thing to drag is not in sight')
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  for (const step of [0.25, 0.5, 0.75, 1]) await page.mouse.move(from.x + dx * step, from.y + dy * step)
  await during?.()
  await page.mouse.up()
}

export async function savedShoot(host: RunningHost | null, shootId: string): Promise<{ shoot: Shoot; spots: Spot[] }> {
  return (await library(host, 'library.open', { shootId })) as { shoot: Shoot; spots: Spot[] }
}

export async function savedSpot(host: RunningHost | null, shootId: string, index = 0): Promise<Spot> {
  const { spots } = await savedShoot(host, shootId)
  const spot = spots[index]
  if (spot === undefined) throw new Error('no such spot is saved')
  return spot
}
