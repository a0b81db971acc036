/** What tests of the shelf and of what is noted of a spot share: its cards, its fields, its messages. */
import type { Locator, Page } from 'playwright-core'
import type { Change } from '#app/contract/library.ts'
import type { Spot } from '#core/record/spot.ts'
import { words } from '#renderer/words/en.ts'
import type { RunningHost } from '#test/help/host.ts'
import { savedShoot, soon } from './board.ts'
import { library } from './library.ts'

const { shelf } = words.board

export function shelfOf(page: Page): Locator {
  return page.getByRole('navigation', { name: shelf.title })
}

/** The cards of the shoot's own spots, in their order. */
export function cards(page: Page): Locator {
  return page.getByRole('region', { name: shelf.thisShoot }).getByRole('listitem')
}

/** The button that puts a spot on the board. */
export function card(page: Page, name: string): Locator {
  return cards(page).getByRole('button').filter({ hasText: name }).first()
}

export function names(page: Page): Promise<string[]> {
  return cards(page).locator('strong').allInnerTexts()
}

/** Puts a spot on the board and waits until it is the one whose notes are shown. */
export async function choose(page: Page, name: string): Promise<void> {
  const face = card(page, name)
  await face.click()
  await soon(async () => (await face.getAttribute('aria-current')) === 'true')
  await soon(async () => ((await about(page).textContent()) ?? '').includes(name))
}

export function about(page: Page): Locator {
  return page.getByRole('region', { name: words.spot.title })
}

/** Types into a field of one line and leaves it, as one does who goes on to the next. */
export async function write(field: Locator, text: string): Promise<void> {
  await field.fill(text)
  await field.press('Tab')
}

export function notices(page: Page): Locator {
  return page.getByRole('region', { name: words.board.notices })
}

export async function savedNames(host: RunningHost | null, shootId = 'demo'): Promise<string[]> {
  return (await savedShoot(host, shootId)).spots.map((spot) => spot.name)
}

/** Saves changes past the page, as another window would. */
export async function apply(host: RunningHost | null, changes: readonly Change[]): Promise<void> {
  await library(host, 'library.apply', { changes })
}

/** Changes one saved spot past the page. */
export async function changeSaved(host: RunningHost | null, index: number, part: Partial<Spot>): Promise<void> {
  const { spots } = await savedShoot(host, 'demo')
  const spot = spots[index]
  if (spot === undefined) throw new Error('no such spot is saved')
  await apply(host, [
    { kind: 'spot', id: spot.id, before: spot.revision, record: structuredClone({ ...spot, ...part }) } as Change,
  ])
}
