/** The bag by keys alone: lenses written as on their barrels, one that cannot be read refused beside the line, every one undone. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Lens } from '#core/optics/lens.ts'
import { formWords } from '#renderer/words/en-forms.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot } from './board.ts'
import { type Opened, open } from './open.ts'
import { askForPage } from './pages.ts'

const say = formWords.lens

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await askForPage(opened.page, 'shoot')
  await opened.page.getByRole('heading', { name: words.shoot.lenses }).waitFor()
})
afterAll(() => opened.close())

async function lenses(): Promise<readonly Lens[]> {
  return (await savedShoot(opened.host, 'demo')).shoot.bag.lenses
}

/** Focal lengths and maximum apertures of the lenses after the first so many. */
async function since(count: number): Promise<readonly (readonly number[])[]> {
  return (await lenses())
    .slice(count)
    .map(({ focalMin, focalMax, widestAtMin, widestAtMax }) => [focalMin, focalMax, widestAtMin, widestAtMax])
}

/** Tab, until the line for lenses has the focus: it lies behind the camera. */
async function tabToEntry(): Promise<void> {
  const { page } = opened
  const entry = page.getByRole('textbox', { name: say.label })
  for (let press = 0; press < 80; press += 1) {
    if (await entry.evaluate((line) => line === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('the line for lenses is not reached by Tab')
}

test('three lenses by keys alone, a bad one refused, all of them undone', async () => {
  const { page } = opened
  const { keyboard } = page
  const there = (await lenses()).length
  const entry = page.getByRole('textbox', { name: say.label })
  await tabToEntry()

  await keyboard.type('200-70 f/2,8')
  await page.getByText(say.reads('70–200 mm f/2.8')).waitFor()
  expect(await since(there)).toEqual([])
  await keyboard.press('Enter')
  await expect.poll(() => since(there)).toEqual([[70, 200, 2.8, 2.8]])
  expect(await entry.inputValue()).toBe('')

  await keyboard.type('18–55 mm 1:3.5–5.6')
  await keyboard.press('Enter')
  await keyboard.type('fifty')
  await keyboard.press('Enter')
  await page.getByRole('alert').getByText('"fifty" cannot be read as a lens.').waitFor()
  expect(await entry.inputValue()).toBe('fifty')
  expect(await entry.getAttribute('aria-invalid')).toBe('true')
  await expect.poll(() => since(there)).toHaveLength(2)

  // What was refused is still there after a look elsewhere, and nobody has added it meanwhile.
  await keyboard.press('Tab')
  expect(await entry.inputValue()).toBe('fifty')
  await page.getByRole('button', { name: words.board.back }).focus()
  await keyboard.press('Enter')
  await boardReady(page)
  await askForPage(page, 'shoot')
  await tabToEntry()
  expect(await entry.inputValue()).toBe('fifty')
  await keyboard.press('Escape')
  expect(await entry.inputValue()).toBe('')

  await keyboard.type('85')
  await page.getByText(say.readsFocal('85 mm', 'f/2.8')).waitFor()
  await keyboard.press('Tab')
  await keyboard.press('Enter')
  const added = [
    [70, 200, 2.8, 2.8],
    [18, 55, 3.5, 5.6],
    [85, 85, 2.8, 2.8],
  ]
  await expect.poll(() => since(there)).toEqual(added)
  expect(await entry.evaluate((line) => line === document.activeElement)).toBe(true)

  for (const left of [2, 1, 0]) {
    await keyboard.press('Control+Z')
    await expect.poll(() => since(there)).toEqual(added.slice(0, left))
  }
  await keyboard.press('Control+Shift+Z')
  await expect.poll(() => since(there)).toEqual(added.slice(0, 1))
  expect(opened.troubles).toEqual([])
})
