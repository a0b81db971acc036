/** From an empty map to answers: a shoot of one's own, its place found, its things dropped, and every wrong figure refused in words. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { goToPage } from './pages.ts'

let opened: Opened
let shootId = ''
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

async function saved() {
  return savedShoot(opened.host, shootId)
}

async function fill(name: string | RegExp, text: string): Promise<void> {
  const field = opened.page.getByRole('textbox', { name }).first()
  await field.fill(text)
  await field.press('Tab')
}

/** Middle of the map's window, read off the place box's own map through a press in placing mode later; here by the page's scale. */
async function press(x: number, y: number): Promise<void> {
  const map = await opened.page.locator('.board-map').boundingBox()
  if (map === null) throw new Error('no map')
  await opened.page.mouse.click(map.x + map.width * x, map.y + map.height * y)
}

test('a new shoot starts empty and takes its name and its subject', async () => {
  const { page } = opened
  await goToPage(page, 'shoot')
  await page.getByRole('button', { name: words.shoot.newShoot }).click()
  await soon(
    async () => ((await library(opened.host, 'library.shoots', {})) as { shoots: unknown[] }).shoots.length === 2,
  )
  const { shoots } = (await library(opened.host, 'library.shoots', {})) as { shoots: { id: string }[] }
  shootId = shoots.find((shoot) => shoot.id !== 'demo')?.id ?? ''
  await fill(words.shoot.name, 'Red van, autumn')
  await page
    .getByRole('combobox', { name: words.shoot.subjectKind })
    .first()
    .selectOption({ label: words.shoot.subjectKinds.van })
  await soon(async () => (await saved()).shoot.subject.kind === 'van')
  expect((await saved()).shoot.subject.length).toBe(5.4)
  await fill(new RegExp(words.shoot.length), '5,61')
  await soon(async () => (await saved()).shoot.subject.length === 5.61)
  expect((await saved()).shoot.name).toBe('Red van, autumn')
})

describe('a wrong size is refused in words, and the last good one kept', () => {
  test.each(['0', '-3', 'abc', '', '1e9', '99999999'])('%s', async (text) => {
    const before = (await saved()).shoot
    await fill(new RegExp(words.shoot.length), text)
    const field = opened.page.getByRole('textbox', { name: new RegExp(words.shoot.length) }).first()
    await soon(async () => (await field.getAttribute('aria-invalid')) === 'true')
    const described = (await field.getAttribute('aria-describedby')) ?? ''
    const said = await opened.page
      .locator(
        described
          .split(' ')
          .map((id) => `[id="${id}"]`)
          .join(','),
      )
      .first()
      .innerText()
    expect(said.length).toBeGreaterThan(20)
    expect((await saved()).shoot).toEqual(before)
    await field.press('Escape')
  })
})

test('landmark, camera and lenses are put in', async () => {
  const { page } = opened
  await page
    .getByRole('combobox', { name: words.shoot.edit.addLandmark })
    .selectOption({ label: words.shoot.landmarkKinds.upright })
  await page.getByRole('button', { name: words.shoot.addLandmark, exact: true }).click()
  await soon(async () => (await saved()).shoot.landmarks.length === 1)
  // Adding a landmark may lead to the map at once, to place it there.
  if (await page.getByText(mapWords.pressForLandmark).isVisible()) await page.keyboard.press('Escape')
  if (!(await page.getByRole('heading', { name: words.shoot.landmarks }).isVisible())) {
    await goToPage(page, 'shoot')
  }
  await fill(new RegExp(formWords.landmark.height.upright), '41')
  await soon(async () => (await saved()).shoot.landmarks[0]?.height === 41)
  await page.getByRole('combobox', { name: words.shoot.format }).first().selectOption({ index: 1 })
  await soon(async () => (await saved()).shoot.bag.camera.sensorWidth === 23.5)
})

describe('places are found in every usual form', () => {
  // The middle of the demo island's bridge; the grid's figures by GDAL, the codes by mgrs and open-location-code.
  const at: LatLon = { lat: 46.402972, lon: -33.594528 }
  const FORMS = [
    '46.402972, -33.594528',
    '46,402972 -33,594528',
    '46°24′10.7″N 33°35′40.3″W',
    '４６°２４′１０．７″Ｎ ３３°３５′４０．３″Ｗ',
    'N46 24.1783, W033 35.6717',
    '25T 454300 5138994',
    '25TDM5429938993',
    '89R8CC34+55Q',
    'geo:46.402972,-33.594528',
  ]
  test.each(FORMS)('%s', async (text) => {
    const { page } = opened
    const box = page.getByRole('combobox', { name: words.board.place.label })
    await box.fill(text)
    await page.getByRole('option').first().waitFor()
    await box.press('Enter')
    await press(0.5, 0.3)
    await page.keyboard.press('Escape')
    await soon(async () => (await page.getByRole('option').count()) === 0)
    const title = await box.inputValue()
    expect(title.length).toBeGreaterThan(5)
    const numbers = /(-?\d+\.\d+),\s*(-?\d+\.\d+)/.exec(title)
    if (numbers !== null) {
      expect(geodesicDistance({ lat: Number(numbers[1]), lon: Number(numbers[2]) }, at)).toBeLessThan(30)
    }
  })

  test('a bad coordinate is told in words', async () => {
    const { page } = opened
    const box = page.getByRole('combobox', { name: words.board.place.label })
    await box.fill('91.5, 10')
    await page.locator('.place-offers [role=status]', { hasText: /\w{4,}/ }).waitFor()
    expect(await page.getByRole('option').count()).toBe(0)
    await box.press('Escape')
  })

  test('a town by its name, with the source shown', async () => {
    const { page } = opened
    const box = page.getByRole('combobox', { name: words.board.place.label })
    await box.fill('Reykjav')
    await page
      .getByRole('option', { name: /Reykjav/ })
      .first()
      .waitFor()
    await page
      .getByText(/GeoNames/)
      .first()
      .waitFor()
    await box.press('Enter')
  })
})

test('a spot is dropped in the middle of the map, with an answer at once', async () => {
  const { page } = opened
  await page.getByRole('button', { name: words.board.shelf.add }).click()
  await soon(async () => (await saved()).spots.length === 1)
  await page.getByRole('heading', { name: words.answers.howSharp }).waitFor()
  const [spot] = (await saved()).spots
  // Reykjavik's published position (64.1466, -21.9426), within the town.
  expect(geodesicDistance(spot?.stop.at ?? { lat: 0, lon: 0 }, { lat: 64.1466, lon: -21.9426 })).toBeLessThan(8_000)
})

test('the landmark is placed by a press: a double click places none, a shaky click one', async () => {
  const { page } = opened
  const place = async (): Promise<void> => {
    await goToPage(page, 'shoot')
    await page.getByRole('button', { name: words.shoot.placeOnMap }).first().click()
    await page.getByText(mapWords.pressForLandmark).waitFor()
  }
  await place()
  const before = (await saved()).shoot
  const map = await page.locator('.board-map').boundingBox()
  if (map === null) throw new Error('no map')
  const spot = { x: map.x + map.width * 0.62, y: map.y + map.height * 0.25 }
  await page.mouse.dblclick(spot.x, spot.y)
  await page.getByText(mapWords.pressForLandmark).waitFor()
  expect((await saved()).shoot).toEqual(before)
  // Elsewhere: near the same point, and soon enough after, it would still belong to the double press.
  await page.mouse.move(spot.x + 60, spot.y + 40)
  await page.mouse.down()
  await page.mouse.move(spot.x + 62, spot.y + 41)
  await page.mouse.up()
  await soon(async () => (await saved()).shoot.revision === before.revision + 1)
  expect((await saved()).shoot.landmarks).toHaveLength(1)
})
