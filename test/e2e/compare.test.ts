/** Side by side: two spots picked on the shelf, their frames, maps and figures beside one another, and one chosen there. */
import type { Locator } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import { bearing, metres, millimetres } from '#renderer/text/figure.ts'
import { words } from '#renderer/words/en.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { boardReady, savedShoot, savedSpot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { card, notices } from './shelf.ts'
import { askForPage } from './pages.ts'

const say = sheetWords.compare
const [TRACK, WALL] = ['Track below Hallow Brae', 'Quennick harbour wall'] as const

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

function sideBySide(): Locator {
  return opened.page.getByRole('region', { name: say.title })
}

function row(name: string): Locator {
  const { page } = opened
  return sideBySide()
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name, exact: true }) })
}

/** The figures of a row without the mark of the best one. */
async function figures(name: string): Promise<string[]> {
  const cells = await row(name).getByRole('cell').allInnerTexts()
  return cells.map((cell) => cell.replace(new RegExp(`\\s*${say.best}$`), '').trim())
}

async function pick(name: string): Promise<void> {
  const { page } = opened
  // What can be done with a spot shows when the pointer is over it.
  await card(page, name).hover()
  await page.getByRole('checkbox', { name: `${words.board.shelf.pick}: ${name}`, exact: true }).check()
}

test('cannot be opened before two spots are picked', async () => {
  const { page } = opened
  const button = page.getByRole('button', { name: words.board.sideBySide })
  expect(await button.isDisabled()).toBe(true)
  await pick(TRACK)
  expect(await button.isDisabled()).toBe(true)
  await pick(WALL)
  await soon(() => button.isEnabled())
})

test('shows two spots with their frames, their maps and their figures, the best of each row marked', async () => {
  const { page, host } = opened
  await page.getByRole('button', { name: words.board.sideBySideCount(2) }).click()
  const { shoot, spots } = await savedShoot(host, 'demo')
  const found = spots.slice(0, 2).map((spot) => assess(planOf(shoot, spot)))
  for (const name of [TRACK, WALL]) {
    await sideBySide().getByRole('columnheader').filter({ hasText: name }).waitFor()
    await sideBySide()
      .getByRole('img', { name: sheetWords.mapLabel(name) })
      .waitFor()
  }
  // Each map names its maker, as the large one does.
  expect(await sideBySide().getByText('an island of our own invention').count()).toBe(2)
  expect(await figures(say.rows.toSubject)).toEqual(found.map((one) => metres(one.toSubject.distance, 'metric')))
  expect(await figures(say.rows.toLandmark)).toEqual(
    found.map((one) => metres(one.toLandmark?.distance ?? Number.NaN, 'metric')),
  )
  expect(await figures(say.rows.bearing)).toEqual(found.map((one) => bearing(one.toLandmark?.bearing ?? Number.NaN)))
  expect(await figures(say.rows.focal)).toEqual(found.map((one) => millimetres(one.focalLength ?? Number.NaN)))
  expect(await figures(say.rows.walk)).toEqual(['6 min', '2 min'])
  expect(await figures(say.rows.status)).toEqual([words.spot.statuses.chosen, words.spot.statuses['to-visit']])
  // The demo: two minutes on foot beat six, four stars beat three.
  const marked = async (name: string) =>
    (await row(name).getByRole('cell').allInnerTexts()).map((cell) => cell.includes(say.best))
  expect(await marked(say.rows.walk)).toEqual([false, true])
  expect(await marked(say.rows.stars)).toEqual([true, false])
})

test('draws each frame and each map with ink', async () => {
  const { page } = opened
  const frames = sideBySide().locator('.compare-frame')
  expect(await frames.count()).toBe(2)
  for (const frame of await frames.all())
    expect(await frame.locator('svg path, svg polygon').count()).toBeGreaterThan(10)
  await soon(() =>
    page.evaluate(() => {
      const grounds = [...document.querySelectorAll<SVGImageElement>('.compare-pictures image')]
      return grounds.length === 2 && grounds.every((ground) => (ground.getAttribute('href') ?? '').length > 5_000)
    }),
  )
})

test('chooses one there: said, saved, undone by the header, chosen again, and shown back on the shelf', async () => {
  const { page, host } = opened
  const column = sideBySide().getByRole('columnheader').filter({ hasText: WALL })
  const choose = column.getByRole('button', { name: say.choose, exact: true })
  await choose.click()
  await notices(page).getByText(say.chosen(WALL)).waitFor()
  const status = () => expect.poll(async () => (await savedSpot(host, 'demo', 1)).status, { timeout: 30_000 })
  await status().toBe('chosen')
  await soon(() => choose.isDisabled())
  await page.keyboard.press('Control+z')
  await status().toBe('to-visit')
  await choose.click()
  await status().toBe('chosen')
  expect(await figures(say.rows.status)).toEqual([words.spot.statuses.chosen, words.spot.statuses.chosen])

  await page.getByRole('button', { name: sheetWords.back }).click()
  await card(page, WALL).getByText(words.spot.statuses.chosen).waitFor()
  await page.reload()
  await boardReady(page)
  await card(page, WALL).getByText(words.spot.statuses.chosen).waitFor()
})

test('takes one out, and says how many it takes', async () => {
  const { page } = opened
  await pick(TRACK)
  await pick(WALL)
  await askForPage(page, 'compare')
  await page.getByRole('button', { name: say.remove(TRACK) }).click()
  await page.getByText(say.needTwo).waitFor()
  await page.getByRole('button', { name: sheetWords.back }).click()
  await boardReady(page)
})
