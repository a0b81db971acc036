/** A job that begins with its landmark, far from the demo: seen as soon as it has a place, placed wherever the map looks, nothing left behind. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { goToPage } from './pages.ts'

/** In the open ocean, four thousand kilometres from anything of the demo. */
const TOWER: LatLon = { lat: 40.1234, lon: -30.4321 }
const ASIDE: LatLon = { lat: 40.3, lon: -30.4321 }

let opened: Opened
let shootId = ''
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

function saved() {
  return savedShoot(opened.host, shootId)
}

async function tower(): Promise<LatLon> {
  const [landmark] = (await saved()).shoot.landmarks
  const [at] = landmark === undefined ? [] : landmarkPoints(landmark)
  if (at === undefined) throw new Error('no landmark is saved')
  return at
}

async function toShoot(): Promise<void> {
  await goToPage(opened.page, 'shoot')
}

async function lookAt({ lat, lon }: LatLon): Promise<void> {
  const box = opened.page.getByRole('combobox', { name: words.board.place.label })
  await box.fill(`${lat}, ${lon}`)
  await opened.page.getByRole('option').first().waitFor()
  await box.press('Enter')
}

/** Presses a button as the mouse does, or as the keyboard does. */
type Press = (name: string) => Promise<void>
const byMouse: Press = (name) => opened.page.getByRole('button', { name, exact: true }).first().click()
const byKeys: Press = async (name) => {
  const button = opened.page.getByRole('button', { name, exact: true }).first()
  await button.focus()
  await button.press('Enter')
}

const mark = () => opened.page.getByRole('img', { name: mapWords.landmarkAlone('Far tower') })
const prompt = () => opened.page.getByText(mapWords.pressForLandmark)

/** Whether the landmark lies in the map's window. */
async function inSight(): Promise<boolean> {
  const map = await opened.page.locator('.board-map').boundingBox()
  const box = (await mark().count()) === 0 ? null : await mark().boundingBox()
  if (map === null || box === null) return false
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  return x > map.x && x < map.x + map.width && y > map.y && y < map.y + map.height
}

async function placeOnMap(press: Press): Promise<void> {
  await toShoot()
  await press(words.shoot.placeOnMap)
  await prompt().waitFor()
}

describe.each([
  ['by mouse', byMouse],
  ['by keys', byKeys],
])('%s', (_, press) => {
  test('a landmark with typed coordinates is on the map before there is a spot', async () => {
    const { page } = opened
    const ids = async (): Promise<string[]> =>
      ((await library(opened.host, 'library.shoots', {})) as { shoots: { id: string }[] }).shoots.map(({ id }) => id)
    const before = await ids()
    await toShoot()
    await press(words.shoot.newShoot)
    await soon(async () => (await ids()).length === before.length + 1)
    shootId = (await ids()).find((id) => !before.includes(id)) ?? ''
    await page
      .getByRole('combobox', { name: words.shoot.edit.addLandmark })
      .selectOption({ label: words.shoot.landmarkKinds.upright })
    await press(words.shoot.addLandmark)
    await soon(async () => (await saved()).shoot.landmarks.length === 1)
    const fill = async (name: string, text: string): Promise<void> => {
      const field = page.getByRole('group', { name: words.shoot.landmarkKinds.upright }).getByRole('textbox', { name })
      await field.first().fill(text)
      await field.first().press('Enter')
    }
    await fill(words.shoot.landmarkName, 'Far tower')
    await fill(words.shoot.place, `${TOWER.lat}, ${TOWER.lon}`)
    await soon(async () => geodesicDistance(await tower(), TOWER) < 1)
    await press(words.board.back)
    await mark().waitFor()
    await soon(inSight)
    expect((await saved()).spots).toEqual([])
  })

  test('show together brings it back into sight', async () => {
    await lookAt({ lat: 10, lon: 10 })
    await soon(async () => !(await inSight()))
    await press(mapWords.fitPlan)
    await soon(inSight)
  })

  test('leaving the prompt leaves nothing behind', async () => {
    const before = await saved()
    await placeOnMap(press)
    await press(mapWords.leaveIt)
    await soon(async () => !(await prompt().isVisible()))
    expect(await saved()).toEqual(before)
  })

  test('it is placed where the map looks, without a spot', async () => {
    await lookAt(ASIDE)
    await placeOnMap(press)
    await press(mapWords.placeHere)
    await soon(async () => geodesicDistance(await tower(), ASIDE) < 100)
    await soon(inSight)
    expect((await saved()).spots).toEqual([])
  })

  test('the prompt ends with undo, and with another shoot', async () => {
    const { page } = opened
    await placeOnMap(press)
    await page.keyboard.press('Control+z')
    await soon(async () => !(await prompt().isVisible()))
    await soon(async () => geodesicDistance(await tower(), TOWER) < 1)
    await placeOnMap(press)
    await toShoot()
    await page.locator('.shoot-list .brief:not([aria-current=true])').first().click()
    await press(words.board.back)
    await boardReady(page)
    expect(await prompt().isVisible()).toBe(false)
    await toShoot()
    await page
      .locator('.shoot-list .brief', { hasText: words.shoot.spots(0) })
      .first()
      .click()
    await page.getByRole('group', { name: words.shoot.landmarkKinds.upright }).waitFor()
    await press(words.board.back)
    await mark().waitFor()
  })

  test('a spot begins clear of it and looks at it', async () => {
    const { page } = opened
    await press(mapWords.fitPlan)
    await soon(inSight)
    await press(words.board.shelf.add)
    await boardReady(page)
    const [spot] = (await saved()).spots
    if (spot === undefined) throw new Error('no spot is saved')
    const away = geodesicDistance(spot.stop.at, await tower())
    expect(away).toBeGreaterThanOrEqual(100)
    expect(away).toBeLessThan(50_000)
    expect(spot.landmarkId).toBe((await saved()).shoot.landmarks[0]?.id)
    await page.getByRole('button', { name: /^Landmark Far tower, / }).waitFor()
    // Gone with its shoot, for the next hand.
    await toShoot()
    await page.getByRole('button', { name: words.shoot.deleteShoot }).click()
    await page.locator('.shoot-list .brief[aria-current=true]').waitFor()
  })
})

test('with nothing to show, show together says so', async () => {
  const { page } = opened
  await toShoot()
  await byMouse(words.shoot.newShoot)
  await byMouse(words.board.back)
  await byMouse(mapWords.fitPlan)
  await page.getByText(mapWords.nothingTogether).waitFor()
})
