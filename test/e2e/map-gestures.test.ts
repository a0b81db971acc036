/** Gestures on the map in a real browser: placing, dragging, keys, Escape, hidden maps, tiles that fail. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import { geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import type { Spot } from '#core/record/spot.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { boardReady, closePlan, dragBy, savedShoot, savedSpot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { askForPage } from './pages.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

function map(page: Page): Locator {
  return page.getByRole('region', { name: mapWords.map, exact: true })
}

function onMap(page: Page, name: RegExp): Locator {
  return page.getByRole('group', { name: mapWords.things }).getByRole('button', { name })
}

/** The board's spot as saved, once nothing is under way any more. */
function saved(): Promise<Spot> {
  return savedSpot(opened.host, 'demo')
}

async function savedOnce(before: Spot): Promise<Spot> {
  await soon(async () => (await saved()).revision > before.revision)
  return saved()
}

/** Nothing may be saved by what went before: a marker edit made afterwards is the very next revision. */
async function nothingSaved(before: Spot): Promise<void> {
  const { page } = opened
  const standpoint = closePlan(page).getByRole('button', { name: /^Standpoint/ })
  await standpoint.focus()
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('Tab')
  const after = await savedOnce(before)
  expect(after.revision).toBe(before.revision + 1)
  expect(after.stop).toEqual(before.stop)
  expect(geodesicDistance(after.standpoint.at, before.standpoint.at)).toBeCloseTo(0.1, 3)
}

beforeEach(async () => {
  await opened.page.keyboard.press('Escape')
})

describe('a thing on the map', () => {
  test('has a name and is reached, selected and moved by keys, a burst saved as one edit', async () => {
    const { page } = opened
    const before = await saved()
    const pair = onMap(page, /^Subject and standpoint together, /)
    await pair.focus()
    await page.keyboard.press('Space')
    expect(await pair.getAttribute('aria-pressed')).toBe('true')
    // Sent at once: on a busy machine real presses may lie farther apart than a burst's pause.
    await pair.evaluate((thing) => {
      const press = (key: string, shiftKey: boolean): boolean =>
        thing.dispatchEvent(new KeyboardEvent('keydown', { key, shiftKey, bubbles: true, cancelable: true }))
      for (let count = 0; count < 3; count++) press('ArrowRight', false)
      press('ArrowUp', true)
    })
    await page.keyboard.press('Tab')
    const after = await savedOnce(before)
    expect(after.revision).toBe(before.revision + 1)
    const way = geodesicLine(before.stop.at, after.stop.at)
    expect(way.distance).toBeCloseTo(Math.hypot(3, 10), 2)
    expect(way.bearing).toBeCloseTo((Math.atan2(3, 10) * 180) / Math.PI, 1)
  })

  test('moves once when dragged fast, and no press reaches the map below', async () => {
    const { page } = opened
    const before = await saved()
    await dragBy(page, onMap(page, /^Subject and standpoint together, /), 70, -30)
    const after = await savedOnce(before)
    expect(after.revision).toBe(before.revision + 1)
    const apart = (spot: Spot): number => geodesicDistance(spot.stop.at, spot.standpoint.at)
    expect(apart(after)).toBeCloseTo(apart(before), 3)
    await nothingSaved(after)
  })

  test('goes back where it was when Escape is pressed during the drag', async () => {
    const { page } = opened
    const before = await saved()
    const subject = closePlan(page).getByRole('button', { name: /^Subject/ })
    await dragBy(page, subject, 40, 30, async () => {
      await page.keyboard.press('Escape')
    })
    await nothingSaved(before)
  })

  test('lets the landmark be dragged as a whole, its shape kept', async () => {
    const { page } = opened
    const { shoot } = await savedShoot(opened.host, 'demo')
    const landmark = onMap(page, /^Landmark/)
    const name = await landmark.getAttribute('aria-label')
    const before = shoot.landmarks.find((one) => name?.includes(one.name))
    if (before === undefined) throw new Error('the demo looks at a landmark')
    await dragBy(page, landmark.locator('.landmark-foot'), 30, 40)
    await soon(async () => (await savedShoot(opened.host, 'demo')).shoot.revision > shoot.revision)
    const after = (await savedShoot(opened.host, 'demo')).shoot.landmarks.find((one) => one.id === before.id)
    if (after === undefined) throw new Error('the landmark is gone')
    const length = (points: readonly { lat: number; lon: number }[]): number =>
      geodesicDistance(points[0] ?? { lat: 0, lon: 0 }, points.at(-1) ?? { lat: 0, lon: 0 })
    expect(length(landmarkPoints(after))).toBeCloseTo(length(landmarkPoints(before)), 2)
    expect(landmarkPoints(after)[0]).not.toEqual(landmarkPoints(before)[0])
    await page.keyboard.press('Control+z')
    const back = async (): Promise<Landmark | undefined> =>
      (await savedShoot(opened.host, 'demo')).shoot.landmarks.find((one) => one.id === before.id)
    await expect.poll(back, { timeout: 30_000 }).toEqual(before)
  })
})

test('another page leaves the map looking where it looked', async () => {
  const { page } = opened
  const looks = async (): Promise<string> => {
    const box = await onMap(page, /^Landmark/)
      .first()
      .boundingBox()
    return `${await page.locator('.scale-bar').first().getAttribute('aria-label')} ${Math.round(box?.x ?? 0)} ${Math.round(box?.y ?? 0)}`
  }
  const before = await looks()
  expect(before).toMatch(/\d\s?m /u)
  await askForPage(page, 'settings')
  await page.getByRole('button', { name: sheetWords.back }).click()
  await boardReady(page)
  await soon(async () => (await looks()) === before)
})

describe('a map whose size changes', () => {
  test('stays true under the pointer after the window narrows', async () => {
    const { page } = opened
    await page.setViewportSize({ width: 1100, height: 700 })
    const before = await saved()
    const pair = onMap(page, /^Subject and standpoint together, /)
    await page.getByRole('button', { name: mapWords.fitPlan }).click()
    const box = await pair.boundingBox()
    const holder = await map(page).boundingBox()
    if (box === null || holder === null) throw new Error('the map is not in sight')
    expect(box.x).toBeGreaterThan(holder.x)
    expect(box.x + box.width).toBeLessThan(holder.x + holder.width)
    await dragBy(page, pair, 20, 10)
    const after = await savedOnce(before)
    expect(geodesicDistance(before.stop.at, after.stop.at)).toBeGreaterThan(1)
    const now = await pair.boundingBox()
    expect((now?.x ?? 0) - box.x).toBeCloseTo(20, -1)
    await page.setViewportSize({ width: 1440, height: 900 })
  })

  test('leaves no fault behind when another page opens right after the window was resized', async () => {
    const { page } = opened
    for (const width of [1100, 1300, 1440]) {
      await page.setViewportSize({ width, height: 900 })
      await askForPage(page, 'help')
      // By the time the board is back, whatever the map that was left had put off is over.
      await page.getByRole('button', { name: sheetWords.back }).click()
      await boardReady(page)
    }
    expect(opened.troubles).toEqual([])
  })
})
