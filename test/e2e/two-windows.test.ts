/** Two windows on one library, and a program that goes away: changes cross over, no work is written over, nothing saved is lost. */
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { words } from '#renderer/words/en.ts'
import { temporaryData } from '#test/help/host.ts'
import { boardReady, closePlan, dragBy, savedShoot, savedSpot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { about, card, choose, names, notices, savedNames, write } from './shelf.ts'

let opened: Opened
let data: Awaited<ReturnType<typeof temporaryData>>
beforeEach(async () => {
  data = await temporaryData()
  opened = await open({ host: 'browser', answers: ['spot'], data: data.folder })
  await boardReady(opened.page)
})
afterEach(async () => {
  await opened.close()
  await data.remove()
})

function nameField(page: Page) {
  return about(page).getByRole('textbox', { name: words.spot.name, exact: true })
}

function notesField(page: Page) {
  return about(page).getByRole('textbox', { name: words.spot.notes })
}

function standpoint(page: Page) {
  return closePlan(page).getByRole('button', { name: /^Standpoint/ })
}

describe('two windows', () => {
  test('show each other’s changes: a new name, a copy, a deleted spot', async () => {
    const { page, host } = opened
    const second = await opened.another()
    await boardReady(second)
    await write(nameField(page), 'Track, gate end')
    await card(second, 'Track, gate end').waitFor()
    await second.getByRole('banner').getByText('Track, gate end').waitFor()
    expect(await nameField(second).inputValue()).toBe('Track, gate end')

    await second.getByRole('button', { name: `${words.board.shelf.duplicate}: Track, gate end`, exact: true }).click()
    await card(page, words.board.shelf.copyName('Track, gate end')).waitFor()
    await page.getByRole('button', { name: `${words.board.shelf.remove}: Track, gate end`, exact: true }).click()
    await expect.poll(() => names(second), { timeout: 30_000 }).toEqual(await names(page))
    expect(await savedNames(host)).toEqual(await names(page))
    await second.close()
  })

  test('let typing go on while another window’s change comes in, and keep both', async () => {
    const { page, host } = opened
    const second = await opened.another()
    await boardReady(second)
    await nameField(second).pressSequentially(' – by the gate')
    await write(notesField(page), 'Ask for the key on Tuesdays.')
    await soon(async () => (await notesField(second).inputValue()) === 'Ask for the key on Tuesdays.')
    expect(await nameField(second).inputValue()).toContain('– by the gate')
    await nameField(second).press('Enter')
    await expect
      .poll(() => savedSpot(host, 'demo'), { timeout: 30_000 })
      .toMatchObject({ name: expect.stringContaining('– by the gate'), notes: 'Ask for the key on Tuesdays.' })
    await second.close()
  })

  test('of two changes of one spot keep the first, tell the second in a sentence, and let it be made again', async () => {
    const { page, host } = opened
    const second = await opened.another()
    await boardReady(second)
    const before = await savedSpot(host, 'demo')
    // While something is held nothing is read over it, so the two changes rest on the same state.
    await dragBy(second, standpoint(second), -25, 15, async () => {
      await write(nameField(page), 'Named in the first window')
      await expect.poll(() => savedNames(host), { timeout: 30_000 }).toContain('Named in the first window')
    })
    const told = notices(second).getByRole('alert')
    await told.filter({ hasText: 'in another window' }).waitFor()
    expect(await told.innerText()).toContain('Nothing was saved')
    await card(second, 'Named in the first window').waitFor()
    expect(await savedSpot(host, 'demo')).toEqual({
      ...before,
      name: 'Named in the first window',
      revision: before.revision + 1,
    })
    // Undo brings back nothing that rests on the refused change.
    expect(await second.getByRole('button', { name: words.board.undo, exact: true }).isDisabled()).toBe(true)

    await dragBy(second, standpoint(second), -25, 15)
    await expect
      .poll(async () => (await savedSpot(host, 'demo')).standpoint.at, { timeout: 30_000 })
      .not.toEqual(before.standpoint.at)
    expect((await savedSpot(host, 'demo')).name).toBe('Named in the first window')
    await second.close()
  })
})

describe('a program that is taken away in the middle of a drag', () => {
  test('loses nothing that was saved, says that it does not answer, and opens whole the next time', async () => {
    const { page, host } = opened
    await write(nameField(page), 'Saved before the cut')
    await dragBy(page, standpoint(page), -20, 10)
    await page.getByRole('button', { name: `${words.board.shelf.duplicate}: Saved before the cut` }).click()
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).toHaveLength(4)
    await page.getByText(words.board.saving).waitFor({ state: 'hidden' })
    const acknowledged = await savedShoot(host, 'demo')

    await dragBy(page, standpoint(page), 30, -20, async () => host?.kill())
    await notices(page).getByRole('alert').filter({ hasText: 'does not answer' }).waitFor()
    expect(opened.troubles.splice(0).join('\n')).toContain('ERR_CONNECTION_REFUSED')
    // Still drawn, not an empty window.
    await standpoint(page).waitFor()
    expect(opened.troubles.splice(0).filter((trouble) => !trouble.includes('ERR_CONNECTION_REFUSED'))).toEqual([])

    const again = await open({ host: 'browser', data: data.folder })
    await boardReady(again.page)
    expect(await savedShoot(again.host, 'demo')).toEqual(acknowledged)
    expect(await names(again.page)).toEqual(acknowledged.spots.map(({ name }) => name))
    expect(await library(again.host, 'library.state', {})).toMatchObject({ state: 'open', spotCount: 4 })
    await choose(again.page, 'Saved before the cut')
    await again.close()
    opened.troubles.splice(0)
  })
})
