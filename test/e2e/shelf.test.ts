/** The shelf: what is noted of a spot stays, spots are found, copied, ordered, deleted and brought back, and any text is only text. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { HAZARDS } from '#core/record/spot.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, openAnswer, savedShoot, savedSpot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { about, apply, card, choose, names, notices, savedNames, shelfOf, write } from './shelf.ts'

const { shelf } = words.board
const [TRACK, WALL, LAYBY] = ['Track below Hallow Brae', 'Quennick harbour wall', 'Orvane lay-by'] as const

/** Of 2031-02-30. */
const NO_SUCH_DAY = '30 February 2031 is not in the calendar'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

/** Nothing is on its way to the library any more: undo goes on from a known state. */
async function atRest(): Promise<void> {
  await opened.page.getByText(words.board.saving).waitFor({ state: 'hidden' })
}

describe('what is noted of a spot', () => {
  test('is saved as it is written, and there after a reload', async () => {
    const { page, host } = opened
    await choose(page, WALL)
    const there = page.getByRole('region', { name: words.spot.getThere })
    const asked = page.getByRole('region', { name: words.spot.whoAsked })
    const watch = page.getByRole('region', { name: words.spot.watchFor })
    const notes = 'Low tide only.\nTwo people for the ropes; ask twice.'
    await openAnswer(page, words.spot.title)
    await write(about(page).getByRole('textbox', { name: words.spot.name, exact: true }), 'Harbour wall, west end')
    await about(page).getByRole('combobox', { name: words.spot.status }).selectOption(words.spot.statuses.visited)
    await about(page).getByTitle(shelf.stars(5)).click()
    await write(about(page).getByRole('textbox', { name: words.spot.notes }), notes)
    await openAnswer(page, words.spot.getThere)
    await there.getByRole('button', { name: words.spot.parkingRemove }).click()
    await write(there.getByRole('textbox', { name: words.spot.walk }), '14')
    await write(there.getByRole('textbox', { name: words.spot.surface }), 'wet cobbles, steps')
    await openAnswer(page, words.spot.whoAsked)
    await asked.getByRole('combobox', { name: words.spot.permission }).selectOption(words.spot.permissions.granted)
    await write(asked.getByRole('textbox', { name: words.spot.until }), '14/6/2031')
    await write(asked.getByRole('textbox', { name: words.spot.whom }), 'Harbour master, extension 12')
    await openAnswer(page, words.spot.watchFor)
    await watch.getByRole('checkbox', { name: words.spot.hazards.traffic }).uncheck()
    await watch.getByRole('checkbox', { name: words.spot.hazards.rail }).check()
    await write(watch.getByRole('textbox', { name: words.spot.hazardNote }), 'crane swings over the wall')

    const wanted = {
      name: 'Harbour wall, west end',
      status: 'visited',
      stars: 5,
      notes,
      access: { parking: null, walkMinutes: 14, surface: 'wet cobbles, steps' },
      permission: { state: 'granted', until: '2031-06-14', whom: 'Harbour master, extension 12' },
      hazards: HAZARDS.filter((hazard) => ['rail', 'water', 'edge'].includes(hazard)),
      hazardNote: 'crane swings over the wall',
    }
    await expect.poll(() => savedSpot(host, 'demo', 1), { timeout: 30_000 }).toMatchObject(wanted)

    await page.reload()
    await boardReady(page)
    await choose(page, wanted.name)
    await openAnswer(page, words.spot.title)
    expect(await about(page).getByRole('combobox', { name: words.spot.status }).inputValue()).toBe('visited')
    expect(
      await about(page)
        .getByRole('radio', { name: shelf.stars(5) })
        .isChecked(),
    ).toBe(true)
    expect(await about(page).getByRole('textbox', { name: words.spot.notes }).inputValue()).toBe(notes)
    await openAnswer(page, words.spot.getThere)
    await there.getByText(words.spot.parkingNone).waitFor()
    expect(await there.getByRole('textbox', { name: words.spot.walk }).inputValue()).toBe('14')
    expect(await there.getByRole('textbox', { name: words.spot.surface }).inputValue()).toBe('wet cobbles, steps')
    await openAnswer(page, words.spot.whoAsked)
    expect(await asked.getByRole('combobox', { name: words.spot.permission }).inputValue()).toBe('granted')
    expect(await asked.getByRole('textbox', { name: words.spot.until }).inputValue()).toBe('14 Jun 2031')
    await openAnswer(page, words.spot.watchFor)
    expect(await watch.getByRole('checkbox', { name: words.spot.hazards.traffic }).isChecked()).toBe(false)
    expect(await watch.getByRole('checkbox', { name: words.spot.hazards.rail }).isChecked()).toBe(true)
    await watch.getByText(words.spot.cautions.rail).waitFor()
    const face = card(page, wanted.name)
    await face.getByText(words.spot.statuses.visited).waitFor()
    await face.getByText(words.spot.hazards.rail, { exact: false }).waitFor()
  })

  test('refuses a day that is none, says how to write it, and keeps the last good one', async () => {
    const { page, host } = opened
    await choose(page, LAYBY)
    const until = (await openAnswer(page, words.spot.whoAsked)).getByRole('textbox', { name: words.spot.until })
    await write(until, '2031-02-30')
    await page.getByText(NO_SUCH_DAY).waitFor()
    expect((await savedSpot(host, 'demo', 2)).permission.until).toBeNull()
    await until.fill('2031-02-28')
    await until.press('Enter')
    await page.getByText(NO_SUCH_DAY).waitFor({ state: 'hidden' })
    await expect
      .poll(async () => (await savedSpot(host, 'demo', 2)).permission.until, { timeout: 30_000 })
      .toBe('2031-02-28')
  })

  test('saves notes that are still being written when the window goes', async () => {
    const { page, host } = opened
    await choose(page, TRACK)
    await openAnswer(page, words.spot.title)
    await about(page).getByRole('textbox', { name: words.spot.notes }).pressSequentially('Bring the short tripod. ')
    await page.reload()
    await boardReady(page)
    await expect
      .poll(async () => (await savedSpot(host, 'demo', 0)).notes, { timeout: 30_000 })
      .toContain('Bring the short tripod.')
  })
})

describe('finding', () => {
  function box() {
    return shelfOf(opened.page).getByRole('search').getByRole('textbox')
  }

  test('takes a part of a word, and letters with or without their accents', async () => {
    const { page, host } = opened
    const { spots } = await savedShoot(host, 'demo')
    await choose(page, LAYBY)
    await write(
      (await openAnswer(page, words.spot.getThere)).getByRole('textbox', { name: words.spot.surface }),
      'Schotter, große Löcher',
    )
    const hits = page.getByRole('region', { name: shelf.find(spots.length) }).getByRole('listitem')
    await expect
      .poll(async () => (await savedSpot(host, 'demo', 2)).access.surface, { timeout: 30_000 })
      .toContain('große')
    for (const typed of ['locher', 'LÖCH', 'grosse', 'yb']) {
      await box().fill(typed)
      await hits.filter({ hasText: LAYBY }).waitFor()
      await expect.poll(() => hits.count(), { timeout: 30_000 }).toBe(1)
    }
    await box().fill('lighthouse-keeper')
    await page.getByText(shelf.foundNothing('lighthouse-keeper')).waitFor()
    await box().press('Escape')
    await card(page, TRACK).waitFor()
  })

  test('puts a spot that was found on the board', async () => {
    const { page, host } = opened
    const { spots } = await savedShoot(host, 'demo')
    await choose(page, TRACK)
    await page.keyboard.press('Control+f')
    await box().fill('lay')
    await page
      .getByRole('region', { name: shelf.find(spots.length) })
      .getByRole('button')
      .filter({ hasText: LAYBY })
      .click()
    await box().fill('')
    await soon(async () => (await card(page, LAYBY).getAttribute('aria-current')) === 'true')
  })

  test('shows the spots of other shoots that lie on the map, and opens theirs', async () => {
    const { page, host } = opened
    const near = page.getByRole('region', { name: shelf.nearHere })
    await near.waitFor({ state: 'hidden' })
    const { shoot, spots } = await savedShoot(host, 'demo')
    const [first] = spots
    if (first === undefined) throw new Error('the demo has no spot')
    const other = { ...shoot, id: 'other', name: 'Another day' }
    const guest = { ...first, id: 'guest', shootId: 'other', name: 'Gate above the bend' }
    await apply(host, [
      { kind: 'shoot', id: 'other', before: null, record: structuredClone(other) as never },
      { kind: 'spot', id: 'guest', before: null, record: structuredClone(guest) as never },
    ])
    await page.reload()
    await boardReady(page)
    await choose(page, TRACK)
    await near.getByRole('button').filter({ hasText: guest.name }).waitFor()
    await near.getByText(shelf.anotherShoot(other.name)).waitFor()

    const place = page.getByRole('combobox', { name: words.board.place.label })
    await place.fill('10.5, 20.25')
    await page.getByRole('option').first().waitFor()
    await place.press('Enter')
    await near.waitFor({ state: 'hidden' })
    await choose(page, TRACK)
    await near.getByRole('button').filter({ hasText: guest.name }).click()
    await card(page, guest.name).waitFor()
    await page.getByRole('banner').getByText(other.name).waitFor()
    // Now it is the demo's spot that belongs to another shoot.
    await near.getByRole('button').filter({ hasText: TRACK }).click()
    await card(page, LAYBY).waitFor()
  })
})

describe('the shelf’s order', () => {
  test('takes a copy below its spot and puts it on the board', async () => {
    const { page, host } = opened
    await choose(page, TRACK)
    await page.getByRole('button', { name: `${shelf.duplicate}: ${TRACK}`, exact: true }).click()
    const copy = shelf.copyName(TRACK)
    await soon(async () => (await card(page, copy).getAttribute('aria-current')) === 'true')
    const order = await names(page)
    expect(order.indexOf(copy)).toBe(order.indexOf(TRACK) + 1)
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).toEqual(order)
    const [original, made] = (await savedShoot(host, 'demo')).spots.filter(({ name }) => name.startsWith(TRACK))
    expect(made).toEqual({
      ...original,
      id: made?.id,
      name: copy,
      // Of a chosen place and its copy only one was chosen.
      status: 'idea',
      rank: made?.rank,
      revision: made?.revision,
    })
    expect(made?.id).not.toBe(original?.id)
  })

  test('follows Alt and the arrow keys, with the focus staying on the spot, and stays after a reload', async () => {
    const { page, host } = opened
    const before = await names(page)
    await card(page, TRACK).focus()
    await page.keyboard.press('Alt+ArrowDown')
    const [first, second, ...others] = before
    const after = [second ?? '', first ?? '', ...others]
    await expect.poll(() => names(page), { timeout: 30_000 }).toEqual(after)
    await page.keyboard.press('Alt+ArrowDown')
    await page.keyboard.press('Alt+ArrowUp')
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).toEqual(after)
    expect(await page.evaluate(() => document.activeElement?.closest('li')?.querySelector('strong')?.textContent)).toBe(
      TRACK,
    )
    await page.reload()
    await boardReady(page)
    expect(await names(page)).toEqual(after)
  })

  test('takes a spot dragged before another by the pointer', async () => {
    const { page, host } = opened
    const before = await names(page)
    const last = before.at(-1) ?? ''
    await card(page, last).dragTo(card(page, before[0] ?? ''))
    await expect.poll(() => names(page), { timeout: 30_000 }).toEqual([last, ...before.slice(0, -1)])
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).toEqual([last, ...before.slice(0, -1)])
    await atRest()
    await page.keyboard.press('Control+z')
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).toEqual(before)
  })
})

describe('deleting', () => {
  test('says so and brings the spot back, whole and in its place, from the message', async () => {
    const { page, host } = opened
    const before = (await savedShoot(host, 'demo')).spots
    await choose(page, LAYBY)
    await page.getByRole('button', { name: `${shelf.remove}: ${LAYBY}`, exact: true }).click()
    const notice = notices(page)
      .getByRole('status')
      .filter({ hasText: shelf.deleted(LAYBY) })
    await notice.waitFor()
    await card(page, LAYBY).waitFor({ state: 'hidden' })
    await expect.poll(() => savedNames(host), { timeout: 30_000 }).not.toContain(LAYBY)
    await notice.getByRole('button', { name: words.board.undo }).click()
    await card(page, LAYBY).waitFor()
    const plain = (spots: typeof before) => spots.map((spot) => ({ ...spot, revision: 0 }))
    await expect
      .poll(async () => plain((await savedShoot(host, 'demo')).spots), { timeout: 30_000 })
      .toEqual(plain(before))
  })

  test('is undone and done again by keys, and the header names what they would do', async () => {
    const { page, host } = opened
    const before = await names(page)
    await choose(page, LAYBY)
    await page.getByRole('button', { name: `${shelf.remove}: ${LAYBY}`, exact: true }).click()
    const gone = before.filter((name) => name !== LAYBY)
    const saved = () => expect.poll(() => savedNames(host), { timeout: 30_000 })
    await saved().toEqual(gone)
    await page.getByRole('button', { name: words.board.undoWhat(words.board.edit.deleteSpot) }).waitFor()
    await page.keyboard.press('Control+z')
    await saved().toEqual(before)
    await page.getByRole('button', { name: words.board.redoWhat(words.board.edit.deleteSpot) }).waitFor()
    await page.keyboard.press('Shift+Control+Z')
    await saved().toEqual(gone)
    await page.keyboard.press('Control+z')
    await saved().toEqual(before)
    expect(await names(page)).toEqual(before)
  })
})
