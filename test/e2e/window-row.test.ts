/** The window's first row, the picture's places, the shelf's fold and the light conditions on the strip: by mouse and by keys. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { chipWords } from '#renderer/words/en-light-chips.ts'
import { headerWords as say } from '#renderer/words/en-header.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { picturePlaceWords } from '#renderer/words/en-picture-place.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, closePlan, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { goToPage } from './pages.ts'
import { names } from './shelf.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

const menu = () => opened.page.getByRole('banner').getByRole('button', { name: /^Shoot: / })
const light = async () => (await savedShoot(opened.host, 'demo')).shoot.light

describe('the shoot’s menu', () => {
  test('opens and is moved through by keys, and Escape gives the focus back', async () => {
    const { page } = opened
    await menu().focus()
    await page.keyboard.press('ArrowDown')
    const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '')
    await soon(async () => (await focused()).startsWith('Subject and bag'))
    await page.keyboard.press('ArrowDown')
    expect(await focused()).toContain(say.rename)
    await page.keyboard.press('End')
    await page.keyboard.press('Escape')
    expect(await menu().getAttribute('aria-expanded')).toBe('false')
    expect(await menu().evaluate((button) => button === document.activeElement)).toBe(true)
  })

  test('duplicates the shoot with its spots, which undo takes back, and leads to the other one', async () => {
    const { page } = opened
    const before = await names(page)
    await menu().click()
    await page.getByRole('menuitem', { name: say.duplicate }).click()
    await soon(async () => (await menu().getAttribute('aria-label'))?.includes(words.board.shelf.copyName('')) === true)
    expect(await names(page)).toEqual(before)
    await menu().click()
    await page.getByRole('menuitem').last().click()
    await soon(
      async () => (await menu().getAttribute('aria-label'))?.includes(words.board.shelf.copyName('')) === false,
    )
    await page.keyboard.press('Control+z')
    await menu().click()
    await soon(async () => (await page.getByText(say.otherShoots).count()) === 0)
    await page.keyboard.press('Escape')
  })
})

describe('the picture', () => {
  test('trades places with the map by its button, composes there, and goes back by its key', async () => {
    const { page } = opened
    const frame = page.getByRole('group', { name: lensViewWords.frame })
    const small = (await frame.boundingBox())?.width ?? 0
    await page.getByRole('button', { name: picturePlaceWords.trade }).click()
    await soon(async () => ((await frame.boundingBox())?.width ?? 0) > small * 1.8)
    await closePlan(page)
      .getByRole('button', { name: /^Standpoint/ })
      .waitFor()
    const placement = async () => JSON.stringify((await savedShoot(opened.host, 'demo')).spots[0]?.shot)
    const before = await placement()
    await frame.focus()
    await page.keyboard.press('ArrowLeft')
    await soon(async () => (await placement()) !== before)
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+Shift+E')
    await soon(async () => (await frame.boundingBox())?.width === small)
  })

  test('fills the window, and Escape leaves it', async () => {
    const { page } = opened
    const frame = page.getByRole('group', { name: lensViewWords.frame })
    const small = (await frame.boundingBox())?.width ?? 0
    await page.keyboard.press('Control+Shift+F')
    await soon(async () => ((await frame.boundingBox())?.width ?? 0) > 1_000)
    await frame.focus()
    await page.keyboard.press('Escape')
    await soon(async () => (await frame.boundingBox())?.width === small)
  })
})

test('the shelf folds, gives its room to the map, and stays folded over a reload', async () => {
  const { page } = opened
  const map = page.getByRole('region', { name: words.board.map })
  const before = (await map.boundingBox())?.width ?? 0
  await page.getByRole('button', { name: say.foldShelf }).click()
  await soon(async () => ((await map.boundingBox())?.width ?? 0) > before + 150)
  await page.reload()
  await boardReady(page)
  await page.getByRole('button', { name: say.unfoldShelf }).click()
  await soon(async () => (await map.boundingBox())?.width === before)
})

test('finding spots brings a folded shelf back, with the box to type in', async () => {
  const { page } = opened
  await page.getByRole('button', { name: say.foldShelf }).click()
  await page.getByRole('button', { name: say.unfoldShelf }).waitFor()
  await page.keyboard.press('Control+f')
  await page.locator('#find-box:focus').waitFor()
})

describe('light conditions on the strip', () => {
  const chips = () => opened.page.getByRole('group', { name: chipWords.conditions })

  test('are taken off and added with a press each, and undone', async () => {
    const { page } = opened
    const { soft, altitude } = await light()
    expect(soft).toBeNull()
    const off = chips().getByRole('button', { name: /^Remove: sun/u })
    await off.click()
    await soon(async () => (await light()).altitude === null)
    await chips().getByRole('button', { name: chipWords.addLabel }).click()
    await page.getByRole('menuitem', { name: chipWords.golden }).click()
    await soon(async () => (await light()).altitude?.most === 6)
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await soon(async () => JSON.stringify((await light()).altitude) === JSON.stringify(altitude))
  })

  test('lead to where they are changed', async () => {
    const { page } = opened
    await chips()
      .getByRole('button', { name: /Change$/u })
      .first()
      .click()
    await page.locator('.light-wishes select').first().waitFor({ state: 'visible' })
  })
})

test('a tab that is not ready cannot be pressed, and says what it needs', async () => {
  const { page } = opened
  const tab = page.getByRole('navigation', { name: say.pages }).getByRole('button', { name: words.board.sideBySide })
  expect(await tab.isDisabled()).toBe(true)
  expect(await tab.getAttribute('title')).toBe(words.board.sideBySideHint)
})

test('what a page needs is said when its key is pressed, and leaves with the page it was said on', async () => {
  const { page } = opened
  const said = page.getByRole('region', { name: words.board.notices }).getByText(words.board.sideBySideHint)
  await page.locator('body').press('Control+i')
  await said.waitFor()
  await goToPage(page, 'settings')
  await said.waitFor({ state: 'detached' })
  await page.keyboard.press('Escape')
  await boardReady(page)
})
