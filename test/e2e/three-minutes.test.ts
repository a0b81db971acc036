/** A new user's first three minutes: from a new shoot, far from the demo, to a spot with lens, light window and sheet; the actions it takes are counted. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { COMMANDS } from '#app/commands.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { sunAt } from '#core/light/sky.ts'
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { firstStepsWords as say } from '#renderer/words/en-first-steps.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'

/** Among hills of which this machine has neither map nor elevations. */
const TOWER: LatLon = { lat: 47, lon: 9 }
const MOST_ACTIONS = 25

let opened: Opened
let shootId = ''
/** What a hand did: one press, one choice, one text typed. */
let actions: string[] = []
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

async function act(what: string, doing: () => Promise<unknown>): Promise<void> {
  actions.push(what)
  await doing()
}

const key = (keys: string): Promise<void> => act(keys, () => opened.page.keyboard.press(keys))
const typed = (text: string): Promise<void> => act(`“${text}”`, () => opened.page.keyboard.type(text))
const press = (name: string): Promise<void> =>
  act(name, () => opened.page.getByRole('button', { name, exact: true }).click())
const command = (id: string): Promise<void> =>
  key((COMMANDS.find((one) => one.id === id)?.accelerator ?? '').replace('CmdOrCtrl', 'Control'))

const saved = (): Promise<{ shoot: Shoot; spots: Spot[] }> => savedShoot(opened.host, shootId)
const panel = () => opened.page.getByRole('region', { name: say.title })
const kind = () => panel().getByRole('combobox', { name: say.kind })

async function ids(): Promise<string[]> {
  const { shoots } = (await library(opened.host, 'library.shoots', {})) as { shoots: { id: string }[] }
  return shoots.map(({ id }) => id)
}

/** A new shoot for every test, asked for as a user does, with nothing in focus. */
beforeEach(async () => {
  const { page } = opened
  const before = await ids()
  actions = []
  await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : null))
  await command('new-shoot')
  await soon(async () => (await ids()).length === before.length + 1)
  shootId = (await ids()).find((id) => !before.includes(id)) ?? ''
  await panel().waitFor()
})

/** The spot that has been laid, with all that makes it one to go to. */
async function expectSpot(): Promise<void> {
  const { page } = opened
  await boardReady(page)
  await soon(async () => (await saved()).spots.length === 1)
  const { shoot, spots } = await saved()
  const [spot] = spots
  if (spot === undefined) throw new Error('no spot is saved')
  const found = assess(planOf(shoot, spot))
  expect(found.lens?.reaches).toBe(true)
  expect(found.subject?.whole).toBe(true)
  expect(found.landmark?.whole).toBe(true)
  expect(geodesicDistance(spot.stop.at, TOWER)).toBeGreaterThan(10)
  expect(sunAt(spot.stop.at, spot.when).altitude).toBeGreaterThan(-0.9)
  expect(spot.when).toBeGreaterThan(Date.now() - 3_600_000)
  await page
    .getByRole('region', { name: stripWords.title })
    .getByText(/^light right /)
    .first()
    .waitFor()
  await panel().waitFor({ state: 'detached' })
  await command('print-sheet')
  await page.locator('html[data-ready=yes]').waitFor({ timeout: 60_000 })
  await page.keyboard.press('Escape')
}

function tellActions(how: string): void {
  console.log(`three minutes, ${how}: ${actions.length} actions: ${actions.join(', ')}`)
  expect(actions.length).toBeLessThanOrEqual(MOST_ACTIONS)
}

describe('from a new shoot to a spot with lens, light window and sheet', () => {
  test('by mouse', async () => {
    await act('choose Van', () => kind().selectOption({ label: words.shoot.subjectKinds.van }))
    await press(say.next)
    const box = panel().getByRole('textbox', { name: say.coordinates })
    await act('to the coordinates', () => box.click())
    await typed(`${TOWER.lat}, ${TOWER.lon}`)
    await key('Enter')
    await press(say.lay)
    await expectSpot()
    expect((await saved()).shoot.subject.kind).toBe('van')
    tellActions('by mouse')
  })

  test('by keys alone', async () => {
    const { page } = opened
    await soon(() => kind().evaluate((node) => node === document.activeElement))
    await typed('v')
    await soon(async () => (await saved()).shoot.subject.kind === 'van')
    for (let tabs = 0; tabs < 4; tabs++) await key('Tab')
    await key('Enter')
    await page.getByRole('textbox', { name: say.coordinates }).waitFor()
    await key('Tab')
    await typed(`${TOWER.lat}, ${TOWER.lon}`)
    await key('Enter')
    const lay = page.getByRole('button', { name: say.lay })
    await soon(() => lay.evaluate((node) => node === document.activeElement))
    await key('Enter')
    await expectSpot()
    tellActions('by keys')
  })
})

test('a span is made by its two ends and not before; each step is undone by itself', async () => {
  const { page } = opened
  await press(say.next)
  await kind().selectOption({ label: words.shoot.landmarkKinds.span })
  await press(say.placeOnMap)
  await page.getByText(say.pressForEnd).waitFor()
  const map = await page.locator('.board-map').boundingBox()
  if (map === null) throw new Error('no map')
  await page.mouse.click(map.x + map.width * 0.5, map.y + map.height * 0.5)
  await page.getByText(say.pressForOtherEnd).waitFor()
  expect((await saved()).shoot.landmarks).toEqual([])
  await page.mouse.click(map.x + map.width * 0.6, map.y + map.height * 0.6)
  await soon(async () => (await saved()).shoot.landmarks.length === 1)
  const [landmark] = (await saved()).shoot.landmarks
  expect(landmark?.kind === 'span' ? landmark.line : []).toHaveLength(2)
  await press(say.lay)
  await soon(async () => (await saved()).spots.length === 1)
  expect((await saved()).shoot.light.landmark).toBe('lit')
  await command('undo')
  await soon(async () => (await saved()).spots.length === 0)
  expect((await saved()).shoot.light.landmark).toBeNull()
  await panel().waitFor()
  await command('undo')
  await soon(async () => (await saved()).shoot.landmarks.length === 0)
})

test('leaving the prompt makes nothing, by Escape or by another shoot', async () => {
  const { page } = opened
  const [before, known] = [await saved(), await ids()]
  await press(say.next)
  for (const leave of ['Escape', 'Control+b']) {
    await press(say.placeOnMap)
    await page.getByText(mapWords.pressForLandmark).waitFor()
    await page.keyboard.press(leave)
    await page.getByText(mapWords.pressForLandmark).waitFor({ state: 'detached' })
    await panel().waitFor()
  }
  const { shoot, spots } = await saved()
  expect({ shoot, spots }).toEqual({ shoot: before.shoot, spots: [] })
  shootId = (await ids()).find((id) => !known.includes(id)) ?? ''
  expect((await saved()).shoot.landmarks).toEqual([])
})

test('Escape closes the steps, never from a field elsewhere, and they are brought back', async () => {
  const { page } = opened
  const find = page.locator('#find-box')
  await find.fill('river')
  await page.locator('#place-box').focus()
  await page.keyboard.press('Escape')
  expect(await panel().isVisible()).toBe(true)
  await kind().focus()
  await panel().getByRole('textbox', { name: say.length }).fill('5.1')
  await page.keyboard.press('Escape')
  await panel().waitFor()
  await page.keyboard.press('Escape')
  await panel().waitFor({ state: 'detached' })
  expect(await find.inputValue()).toBe('river')
  await find.fill('')
  await press(say.bringBack)
  await panel().waitFor()
})

test('the map is chosen on the map, as in the settings, and where there is none the way there is told once', async () => {
  const { page } = opened
  const box = page.getByRole('combobox', { name: words.board.place.label })
  await box.fill(`${TOWER.lat}, ${TOWER.lon}`)
  await page.getByRole('option').first().waitFor()
  await box.press('Enter')
  await page.getByText(say.noMap).waitFor()
  await page.getByRole('button', { name: say.addElevation }).click()
  await page.getByRole('heading', { name: words.board.settings, level: 1 }).waitFor()
  await page.keyboard.press('Escape')
  await page.locator('.board-map').waitFor()
  expect(await page.getByText(say.noMap).isVisible()).toBe(false)
  await page.locator('.source-menu').getByRole('button', { name: say.map }).click()
  const [ground] = await page
    .locator('.source-menu input')
    .all()
    .then((all) => [all[1]])
  await ground?.check()
  await soon(
    async () => ((await library(opened.host, 'settings.get', {})) as { mapSource: string }).mapSource === 'ground',
  )
  await page.keyboard.press('Escape')
  expect(await page.locator('.source-menu .popover-panel').count()).toBe(0)
  expect(await panel().isVisible()).toBe(true)
})
