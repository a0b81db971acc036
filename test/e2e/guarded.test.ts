/** A fault in one drawing leaves the rest of the page usable, says so in its own place, and is over once the records are mended. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Spot } from '#core/record/spot.ts'
import { notDrawnWords as say } from '#renderer/words/en-not-drawn.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { cards } from './shelf.ts'
import { askForPage, goToPage } from './pages.ts'

const { parts } = say

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await plant(opened.page)
  await opened.page.reload()
  await boardReady(opened.page)
})
afterAll(() => opened.close())

/** The second spot comes to the page without its shot, which no drawing of it can do without. */
async function plant(page: Page): Promise<void> {
  await page.route('**/api/library.open', async (route) => {
    const response = await route.fetch()
    const answer = (await response.json()) as { value?: { spots: Spot[] } }
    const spots = answer.value?.spots.map((spot, index) => (index === 1 ? { ...spot, shot: null } : spot))
    await route.fulfill({ response, json: { ...answer, value: { ...answer.value, spots } } })
  })
}

function notDrawn(part: string) {
  return opened.page.getByRole('region', { name: say.label(part) })
}

async function spotNames(): Promise<readonly string[]> {
  return (await savedShoot(opened.host, 'demo')).spots.map(({ name }) => name)
}

/** Deletes the first spot of the shelf, so that the broken one comes on the board. */
async function deleteFirst(): Promise<void> {
  const first = cards(opened.page).first()
  await first.hover()
  await first.getByRole('button', { name: new RegExp(`^${words.board.shelf.remove}`, 'u') }).click()
  await notDrawn(parts.lensView).waitFor()
}

test('a broken spot on the shelf leaves the others and the board as they are', async () => {
  const told = cards(opened.page).filter({ hasText: parts.spot })
  expect(await told.count()).toBe(1)
  // Its name and what can be done with it are there.
  expect(await told.innerText()).toContain((await spotNames())[1])
  expect(await cards(opened.page).count()).toBe((await spotNames()).length)
  expect(await notDrawn(parts.lensView).count()).toBe(0)
})

describe('with the broken one on the board', () => {
  test('each part says so in its own place, and what was done is saved all the same', async () => {
    const before = await spotNames()
    await deleteFirst()
    for (const part of [parts.onMap, parts.beside, parts.dayStrip]) await notDrawn(part).waitFor()
    // The map itself goes on.
    await opened.page.getByRole('button', { name: mapWords.nearer }).click()
    await soon(async () => (await spotNames()).length === before.length - 1)
    expect(await spotNames()).toEqual(before.slice(1))
    expect(await notDrawn(parts.lensView).innerText()).toContain(words.board.undoWhat(words.board.edit.deleteSpot))
  })

  test('undo from within the message brings everything back', async () => {
    await notDrawn(parts.lensView)
      .getByRole('button', { name: words.board.undoWhat(words.board.edit.deleteSpot) })
      .click()
    await boardReady(opened.page)
    for (const part of [parts.onMap, parts.beside, parts.dayStrip, parts.lensView])
      await soon(async () => (await notDrawn(part).count()) === 0)
    await soon(async () => (await spotNames()).length === 3)
  })

  test('another spot is opened from within the message', async () => {
    await deleteFirst()
    await notDrawn(parts.dayStrip).getByRole('button', { name: say.otherSpot }).click()
    await boardReady(opened.page)
    await soon(async () => (await notDrawn(parts.dayStrip).count()) === 0)
  })

  test('pages of the broken spot say so too, and the way back is there', async () => {
    const { page } = opened
    await page.keyboard.press('Control+z')
    await boardReady(page)
    await soon(async () => (await spotNames()).length === 3)
    await deleteFirst()
    await askForPage(page, 'days')
    await notDrawn(parts.page).waitFor()
    await notDrawn(parts.page).getByRole('button', { name: say.otherShoot }).click()
    await page.getByRole('heading', { name: words.shoot.subject }).waitFor()
    await page.keyboard.press('Control+z')
    await page.getByRole('button', { name: words.board.back }).click()
    await boardReady(page)
    await goToPage(page, 'days')
    expect(await notDrawn(parts.page).count()).toBe(0)
  })
})

test('the faults are told on the console for whoever mends them, and nothing else went wrong', () => {
  const told = opened.troubles.splice(0)
  expect(told.length).toBeGreaterThan(0)
  expect(told.filter((trouble) => !trouble.startsWith('console: TypeError'))).toEqual([])
})
