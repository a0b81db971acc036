/** The way back by Escape in a real browser: from every page, unless a field or a list has the key for itself. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { words } from '#renderer/words/en.ts'
import { boardReady } from './board.ts'
import { type Opened, open } from './open.ts'
import { PAGES_OVER_BOARD, goToPage, pickSpots } from './pages.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await pickSpots(opened.page, 'Track below Hallow Brae', 'Quennick harbour wall')
})
afterAll(() => opened.close())

describe('Escape', () => {
  test.each(PAGES_OVER_BOARD)('leads from the page %s to the board', async (id) => {
    const { page } = opened
    await goToPage(page, id)
    await page.keyboard.press('Escape')
    await boardReady(page)
  })

  test('brings back what a field held first, and leads back then', async () => {
    const { page } = opened
    await goToPage(page, 'shoot')
    const field = page.getByRole('main').getByRole('textbox').first()
    const held = await field.inputValue()
    await field.fill(`${held} and more`)
    await field.press('Escape')
    expect(await field.inputValue()).toBe(held)
    await field.press('Escape')
    await boardReady(page)
  })

  test('leaves a map source half typed as it is, from whichever of its fields, and leads back once it is taken back', async () => {
    const { page } = opened
    const say = words.board.settingsPage
    await goToPage(page, 'settings')
    await page.locator('summary', { hasText: say.ownAdd }).click()
    const name = page.getByRole('textbox', { name: say.ownName, exact: true })
    await name.fill('Harbour office')
    await page.getByRole('textbox', { name: say.ownAttribution, exact: true }).press('Escape')
    expect(await name.inputValue()).toBe('Harbour office')
    const zoom = page.getByRole('textbox', { name: say.ownZoom })
    const usual = await zoom.inputValue()
    await zoom.fill('7')
    await zoom.press('Escape')
    expect(await zoom.inputValue()).toBe(usual)
    await name.press('Escape')
    expect(await name.inputValue()).toBe('')
    await zoom.press('Escape')
    await boardReady(page)
  })

  test('closes the list of places first, and leads back then', async () => {
    const { page } = opened
    await goToPage(page, 'help')
    const box = page.getByRole('combobox', { name: words.board.place.label })
    await box.fill('46.4, -33.6')
    await page.getByRole('option').first().waitFor()
    await box.press('Escape')
    await expect.poll(() => page.getByRole('option').count()).toBe(0)
    await page.getByRole('heading', { name: words.board.helpPage.how }).waitFor()
    await box.press('Escape')
    await boardReady(page)
  })
})
