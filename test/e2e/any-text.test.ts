/** Whatever is typed is shown as text: markup runs nowhere, pictures of letters stay whole, a very long name breaks nothing. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { boardReady, savedShoot, savedSpot } from './board.ts'
import { type Opened, open } from './open.ts'
import { about, apply, card, choose, write } from './shelf.ts'

const MARKUP = '<img src=x onerror=alert(1)><script>window.ran = 1</script>&amp;'
const FAMILY = '👨‍👩‍👧 Łódź 灯台 منارة 🚲'
const LONG = 'A pier of many words '.repeat(500).slice(0, 9_999).trimEnd() + '!'

let opened: Opened
const dialogs: string[] = []
beforeAll(async () => {
  opened = await open({ host: 'browser', answers: ['spot'] })
  opened.page.on('dialog', (dialog) => {
    dialogs.push(dialog.message())
    void dialog.dismiss()
  })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

function nameField() {
  return about(opened.page).getByRole('textbox', { name: words.spot.name, exact: true })
}

async function nothingRan(): Promise<void> {
  const { page } = opened
  expect(await page.evaluate(() => 'ran' in window)).toBe(false)
  expect(await page.locator('img[src="x"]').count()).toBe(0)
  expect(dialogs).toEqual([])
  expect(opened.troubles).toEqual([])
}

describe('a name of markup', () => {
  test('is text on shelf, header, map, sheet and side by side', async () => {
    const { page, host } = opened
    const { shoot, spots } = await savedShoot(host, 'demo')
    const named = {
      ...shoot,
      name: MARKUP,
      subject: { ...shoot.subject, name: MARKUP },
      landmarks: shoot.landmarks.map((landmark) => ({ ...landmark, name: MARKUP })),
    }
    await apply(host, [
      { kind: 'shoot', id: shoot.id, before: shoot.revision, record: structuredClone(named) as never },
      ...spots.slice(0, 2).map((spot) => ({
        kind: 'spot' as const,
        id: spot.id,
        before: spot.revision,
        record: structuredClone({ ...spot, name: MARKUP, notes: MARKUP }) as never,
      })),
    ])
    await page.reload()
    await boardReady(page)
    await card(page, MARKUP).waitFor()
    await page.getByRole('banner').getByText(MARKUP).first().waitFor()
    await page.getByRole('region', { name: words.board.map }).getByText(MARKUP).first().waitFor()
    expect(await nameField().inputValue()).toBe(MARKUP)
    await nothingRan()

    await page.getByRole('button', { name: headerWords.sheet, exact: true }).click()
    await page.getByRole('article').getByRole('heading', { name: MARKUP }).waitFor()
    await nothingRan()
    await page.getByRole('button', { name: sheetWords.back }).click()

    const picks = page.getByRole('checkbox', { name: `${words.board.shelf.pick}: ${MARKUP.slice(0, 100)}` })
    await card(page, MARKUP).click()
    await picks.first().check()
    await card(page, words.board.untitledSpot).or(page.getByRole('listitem').nth(1)).first().hover()
    await picks.nth(1).check()
    await page.getByRole('button', { name: words.board.sideBySideCount(2) }).click()
    await page.getByRole('columnheader').filter({ hasText: MARKUP }).first().waitFor()
    await nothingRan()
    await page.getByRole('button', { name: sheetWords.back }).click()
  })
})

describe('names of any letters and of any length', () => {
  test('keeps pictures of letters and every script as typed', async () => {
    const { page, host } = opened
    await choose(page, MARKUP)
    await write(nameField(), FAMILY)
    await card(page, FAMILY).waitFor()
    await expect.poll(async () => (await savedSpot(host, 'demo', 0)).name, { timeout: 30_000 }).toBe(FAMILY)
  })

  test('takes 10,000 characters, shows their beginning, and refuses one more with a sentence', async () => {
    const { page, host } = opened
    expect(LONG).toHaveLength(10_000)
    await choose(page, FAMILY)
    await write(nameField(), LONG)
    await expect.poll(async () => (await savedSpot(host, 'demo', 0)).name, { timeout: 30_000 }).toBe(LONG)
    await card(page, LONG.slice(0, 150)).waitFor()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(wide).toBeLessThanOrEqual(0)

    await write(nameField(), `${LONG}?`)
    await page.getByText(words.shoot.field.tooLong(words.spot.name, 10_000, 10_001)).waitFor()
    expect((await savedSpot(host, 'demo', 0)).name).toBe(LONG)
    await nameField().press('Escape')
    await page.getByRole('button', { name: headerWords.sheet, exact: true }).click()
    await page.getByRole('article').getByRole('heading', { level: 1 }).waitFor()
    await nothingRan()
  })
})
