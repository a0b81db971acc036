/** How far off may it be: told on the board when it rests, again after a drag, on the sheet and side by side alike. */
import type { Locator } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { planOf } from '#core/plan/plan.ts'
import { offsetText } from '#renderer/text/tolerance-text.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { toleranceWords } from '#renderer/words/en-tolerance.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, dragBy, openAnswer, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { card, choose } from './shelf.ts'

/** The demo lies in open sea, two hours behind UTC. */
const ZONE = 'Etc/GMT+2'
const [TRACK, WALL] = ['Track below Hallow Brae', 'Quennick harbour wall'] as const
const say = toleranceWords

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await openAnswer(opened.page, say.question)
})
afterAll(() => opened.close())

function section(): Locator {
  return opened.page.getByRole('region', { name: say.question })
}

/** Worked out for the board as it is. */
async function settled(): Promise<void> {
  await section().locator('.tolerance[aria-busy=false]').waitFor({ timeout: 30_000 })
}

async function clockCells(): Promise<string[]> {
  const row = section()
    .getByRole('row')
    .filter({ has: opened.page.getByRole('rowheader', { name: say.table.clock }) })
  return row.getByRole('cell').allInnerTexts()
}

/** The room that the engine's own windows leave around the saved instant, as the board words it. */
async function windowRoom(): Promise<string[]> {
  const { shoot, spots } = await savedShoot(opened.host, 'demo')
  const spot = spots.find(({ name }) => name === TRACK)
  if (spot === undefined) throw new Error('no such spot is saved')
  const plan = planOf(shoot, spot)
  const { when } = spot
  const window = dayLight(plan, assess(plan), ZONE).windows.common.find(
    ({ from, until }) => from <= when && when <= until,
  )
  if (window === undefined) throw new Error('the light is not right at the saved instant')
  return [
    offsetText('earlier', (when - window.from) / 1000, 'metric'),
    offsetText('later', (window.until - when) / 1000, 'metric'),
  ]
}

test('the board tells what is tightest, and the clock’s room is that of the day’s windows', async () => {
  await settled()
  const figure = await section().locator('.answer-first strong').innerText()
  expect(figure).toMatch(/^0\.\d\d?\sm$/u)
  await soon(async () => (await clockCells()).join() === (await windowRoom()).join())
  await section().getByRole('columnheader', { name: say.table.nearer, exact: true }).waitFor()
})

test('a dragged time waits for the hand to let go, then tells the new room', async () => {
  const { page } = opened
  await settled()
  const before = await clockCells()
  await dragBy(page, page.getByRole('slider', { name: stripWords.line }), 20, 0, async () => {
    await section().locator('.tolerance[aria-busy=true]').waitFor()
    expect(await clockCells()).toEqual(before)
  })
  await settled()
  await soon(async () => (await clockCells()).join() === (await windowRoom()).join())
  expect(await clockCells()).not.toEqual(before)
})

test('every way is told with what then fails', async () => {
  await section().locator('summary', { hasText: say.table.every }).click()
  const rows = section().getByRole('row').filter({ hasText: say.ways['camera-nearer'] })
  await rows.getByText(say.cut('Cargo bicycle', ['bottom'])).waitFor()
})

test('what does not hold is named and left out', async () => {
  const { page } = opened
  await choose(page, WALL)
  await settled()
  await section()
    .getByText(say.failing(say.cut('Merrin Bridge', ['left'])))
    .waitFor()
  await choose(page, TRACK)
  await settled()
  expect(await section().locator('.warnings').count()).toBe(0)
})

test('the sheet says the same', async () => {
  const { page } = opened
  await settled()
  const figure = (await section().locator('.answer-first strong').innerText()).trim()
  await page.getByRole('button', { name: headerWords.sheet, exact: true }).click()
  const sheet = page.getByRole('article')
  const part = sheet.locator('section').filter({ has: page.getByRole('heading', { name: say.sheet.title }) })
  const [earlier, later] = await windowRoom()
  await part
    .getByText(`${say.sheet.things.clock} ${earlier} ${say.sheet.sides.earlier}, ${later} ${say.sheet.sides.later}`)
    .waitFor()
  expect(await part.innerText()).toContain(`${figure} ${say.sheet.sides['subject-nearer']}: `)
  await page.getByRole('button', { name: sheetWords.back }).click()
})

test('side by side tells the tightest of each', async () => {
  const { page } = opened
  await settled()
  const figure = (await section().locator('.answer-first strong').innerText()).trim()
  for (const name of [TRACK, WALL]) {
    await card(page, name).hover()
    await page.getByRole('checkbox', { name: `${words.board.shelf.pick}: ${name}`, exact: true }).check()
  }
  await page.getByRole('button', { name: words.board.sideBySideCount(2) }).click()
  const row = page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: say.compare.row, exact: true }) })
  const cells = row.getByRole('cell')
  await soon(async () => (await cells.count()) === 2 && (await cells.first().innerText()).startsWith(figure))
  // The harbour wall is the roomier of the two.
  await soon(async () => (await cells.nth(1).innerText()).includes(sheetWords.compare.best))
})
