/** What tests of the board share: reading its answers, its library, and dragging as a hand does. */
import type { Locator, Page } from 'playwright-core'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import type { RunningHost } from '#test/help/host.ts'
import { expect } from 'vitest'

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

/** Reads the library as the services hold it, past the page. */
export async function library(host: RunningHost | null, call: string, input: unknown): Promise<unknown> {
  if (host === null) throw new Error('the library is read through the loopback host')
  const response = await fetch(`${host.origin}/api/${call}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      authorization: `Bearer ${host.token}`,
      origin: host.origin,
      // A kept connection may be closed by the host while a test reckons for seconds, and be found dead by its next call.
      connection: 'close',
    },
    body: JSON.stringify(input),
  })
  const answer = (await response.json()) as { ok: boolean; value: unknown; fault?: { message: string } }
  if (!answer.ok) throw new Error(answer.fault?.message)
  return answer.value
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
