/** The day strip: the line dragged and stepped, dates typed and refused, odd days, far zones, a zone chosen by hand, all kept. */
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { civilTime, formatClock } from '#core/time/civil.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { dateWords } from '#renderer/words/en-date.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { temporaryData } from '#test/help/host.ts'
import { axeFindings } from './axe.ts'
import { boardReady, dragBy, savedShoot, savedSpot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { apply, notices } from './shelf.ts'

const MINUTE = 60_000
/** The demo's island lies at sea, two hours behind UTC. */
const ISLAND = 'Etc/GMT+2'

let data: Awaited<ReturnType<typeof temporaryData>>
let opened: Opened
beforeAll(async () => {
  data = await temporaryData()
  opened = await open({ host: 'browser', data: data.folder })
  await boardReady(opened.page)
  await strip(opened.page).getByText('UTC−2, open sea').waitFor()
})
afterAll(async () => {
  await opened.close()
  await data.remove()
})

function strip(page: Page): Locator {
  return page.getByRole('region', { name: stripWords.title })
}

function line(page: Page): Locator {
  return page.getByRole('slider', { name: stripWords.line })
}

async function lineText(): Promise<string> {
  return (await line(opened.page).getAttribute('aria-valuetext')) ?? ''
}

async function lineSays(text: string | RegExp): Promise<void> {
  await soon(async () => (typeof text === 'string' ? (await lineText()).includes(text) : text.test(await lineText())))
}

function dateField(page: Page): Locator {
  return strip(page).getByRole('textbox', { name: stripWords.day, exact: true })
}

async function typeDate(text: string): Promise<void> {
  await dateField(opened.page).fill(text)
  await dateField(opened.page).press('Enter')
}

async function chooseZone(page: Page, typed: string, option: string): Promise<void> {
  await strip(page).getByRole('button', { name: lightWords.zone }).click()
  await strip(page).getByRole('combobox', { name: stripWords.zoneFind }).fill(typed)
  await strip(page).getByRole('option', { name: option }).first().click()
}

/** Puts a shoot with one spot of a place, an instant and a zone in the library. */
async function addElsewhere(id: string, at: { lat: number; lon: number }, when: number, part: Partial<Shoot>) {
  const shoot = { ...newShoot(id, `${id}-lens`, when), name: id, ...part }
  const spot = newSpot(`${id}-spot`, shoot, at, 0, when)
  await apply(opened.host, [
    { kind: 'shoot', id, before: null, record: shoot as never },
    { kind: 'spot', id: spot.id, before: null, record: spot as never },
  ])
}

async function saved(): Promise<Spot> {
  return savedSpot(opened.host, 'demo')
}

describe('the line', () => {
  test('dragged, the answers follow while it moves; released, it is one edit, which undo takes back', async () => {
    const { page } = opened
    const before = await saved()
    const sunBefore = await strip(page).locator('.strip-line').first().innerText()
    await dragBy(page, line(page), -160, 0, async () => {
      await soon(async () => (await strip(page).locator('.strip-line').first().innerText()) !== sunBefore)
      expect((await saved()).when).toBe(before.when)
    })
    await soon(async () => (await saved()).revision === before.revision + 1)
    const after = await saved()
    expect(after).toEqual({ ...before, when: after.when, revision: after.revision })
    expect(after.when % MINUTE).toBe(0)
    // The axis is as long as the day.
    const width = await strip(page)
      .locator('.sky-band')
      .evaluate((band) => band.clientWidth)
    expect(Math.abs(after.when - before.when + (160 / width) * 86_400_000)).toBeLessThan(2 * MINUTE)
    await lineSays(formatClock(after.when, ISLAND))
    await page.keyboard.press('Control+z')
    await soon(async () => (await saved()).when === before.when)
  })

  test('leaves the strip’s still parts as they are while it moves', async () => {
    const { page } = opened
    await page.evaluate(() => {
      const still = document.querySelectorAll('.sky-band, .hour-axis, .window-rows')
      const seen = { changes: 0, parts: still.length }
      Object.assign(window, { seen })
      const watch = new MutationObserver((records) => (seen.changes += records.length))
      for (const part of still)
        watch.observe(part, { childList: true, subtree: true, attributes: true, characterData: true })
    })
    const before = await lineText()
    await dragBy(page, line(page), 90, 0, async () => {
      await soon(async () => (await lineText()) !== before)
      expect(await page.evaluate(() => (window as unknown as { seen: unknown }).seen)).toEqual({ changes: 0, parts: 3 })
      await page.keyboard.press('Escape')
    })
    await lineSays(before)
  })

  test('given up by Escape, stands where it stood, and nothing is saved', async () => {
    const { page } = opened
    const before = await saved()
    const text = await lineText()
    await dragBy(page, line(page), 120, 0, async () => {
      await soon(async () => (await lineText()) !== text)
      await page.keyboard.press('Escape')
    })
    await lineSays(text)
    expect(await saved()).toEqual(before)
  })

  test('comes to where the strip is pressed', async () => {
    const { page } = opened
    const before = await saved()
    const band = await strip(page).locator('.sky-band').boundingBox()
    if (band === null) throw new Error('no band')
    await page.mouse.click(band.x + band.width / 4, band.y + band.height / 2)
    await soon(async () => (await saved()).revision === before.revision + 1)
    const { hour, minute } = civilTime((await saved()).when, ISLAND)
    expect(Math.abs(hour * 60 + minute - 360)).toBeLessThanOrEqual(1)
  })
})

describe('keys on the line', () => {
  test.each([
    ['ArrowRight', 1],
    ['Shift+ArrowLeft', -10],
    ['PageUp', 60],
    ['PageDown', -60],
    ['ArrowUp', 1440],
    ['Shift+ArrowDown', -10_080],
  ])('%s moves it by %s minutes', async (key, minutes) => {
    const { page } = opened
    const before = await saved()
    await line(page).focus()
    await page.keyboard.press(key)
    await line(page).blur()
    await soon(async () => (await saved()).revision === before.revision + 1)
    expect(((await saved()).when - before.when) / MINUTE).toBe(minutes)
  })

  test('a burst of them is one edit', async () => {
    const { page } = opened
    const before = await saved()
    await line(page).focus()
    for (let press = 0; press < 12; press++) await page.keyboard.press('ArrowRight')
    await line(page).blur()
    await soon(async () => (await saved()).when === before.when + 12 * MINUTE)
    expect((await saved()).revision).toBe(before.revision + 1)
  })

  test('Home and End go to sunrise and sunset', async () => {
    const { page } = opened
    await line(page).focus()
    await page.keyboard.press('Home')
    const rise = civilTime((await saved()).when, ISLAND).date
    await lineSays(/sun (?:0\.\d|1\.0)° (?:high|below)/)
    await page.keyboard.press('End')
    await lineSays(/sun 0\.\d° (?:high|below)/)
    await line(page).blur()
    await soon(async () => civilTime((await saved()).when, ISLAND).hour >= 18)
    expect(civilTime((await saved()).when, ISLAND).date).toBe(rise)
  })
})

describe('the windows', () => {
  test('the common one leads to its middle', async () => {
    const { page } = opened
    const name = strip(page).getByRole('button', { name: /^light right/ })
    const [, from = '', until = ''] = /(\d\d:\d\d)–(\d\d:\d\d)/.exec(await name.innerText()) ?? []
    await name.click()
    const inMinutes = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3))
    await soon(async () => {
      const { hour, minute } = civilTime((await saved()).when, ISLAND)
      return Math.abs(hour * 60 + minute - (inMinutes(from) + inMinutes(until)) / 2) <= 1
    })
  })
})

describe('the date', () => {
  test('by day and week keeps the clock time', async () => {
    const { page } = opened
    const before = await saved()
    await strip(page).getByRole('button', { name: stripWords.weekLater }).click()
    await soon(async () => (await saved()).when === before.when + 7 * 1440 * MINUTE)
    await strip(page).getByRole('button', { name: stripWords.earlier }).click()
    await soon(async () => (await saved()).when === before.when + 6 * 1440 * MINUTE)
  })

  test('out of the years is refused in words, and Escape brings back the day', async () => {
    const { page } = opened
    const before = await saved()
    const shown = await dateField(page).inputValue()
    await typeDate('14.6.1850')
    await strip(page)
      .getByRole('alert')
      .getByText(/14 June 1850 is outside the years 1900 to 2100/)
      .waitFor()
    expect(await dateField(page).getAttribute('aria-invalid')).toBe('true')
    expect(await saved()).toEqual(before)
    await dateField(page).press('Escape')
    expect(await dateField(page).inputValue()).toBe(shown)
  })

  test('emptied is refused in words', async () => {
    const { page } = opened
    const before = await saved()
    await typeDate('')
    await strip(page)
      .getByRole('alert')
      .getByText(/There is no date/)
      .waitFor()
    await dateField(page).press('Escape')
    expect(await saved()).toEqual(before)
  })

  test.each([
    ['2.7.27', '2 Jul 2027', 'Fri 2 July 2027'],
    ['03/08/2027', '3 Aug 2027', 'Tue 3 August 2027'],
    ['2027-06-14', '14 Jun 2027', 'Mon 14 June 2027'],
    ['July 1', '1 Jul 2027', 'Thu 1 July 2027'],
  ])(
    'typed as %s is read day first, in whatever language the machine is set to, and written %s',
    async (typed, written, day) => {
      await typeDate(typed)
      await lineSays(day)
      await soon(async () => (await dateField(opened.page).inputValue()) === written)
      await strip(opened.page).getByRole('heading', { name: day }).waitFor()
    },
  )

  test('is taken when the field is left; one that does not exist stays in it, refused, and nothing is saved', async () => {
    const { page } = opened
    await dateField(page).fill('14 jun')
    await dateField(page).blur()
    await lineSays('Mon 14 June 2027')
    await soon(async () => civilTime((await saved()).when, ISLAND).date === '2027-06-14')
    const before = await saved()
    await dateField(page).fill('31 June')
    await dateField(page).blur()
    await strip(page).getByRole('alert').getByText('31 June is not in the calendar: June has 30 days.').waitFor()
    expect(await dateField(page).inputValue()).toBe('31 June')
    expect(await saved()).toEqual(before)
    await dateField(page).focus()
    await page.keyboard.press('Escape')
    expect(await dateField(page).inputValue()).toBe('14 Jun 2027')
  })

  test('half typed is taken before the day is stepped', async () => {
    const { page } = opened
    await dateField(page).fill('20 jun')
    await strip(page).getByRole('button', { name: stripWords.later, exact: true }).click()
    await lineSays('Mon 21 June 2027')
    await typeDate('14 jun')
    await lineSays('Mon 14 June 2027')
  })
})

describe('the calendar', () => {
  const calendar = () => opened.page.getByRole('dialog', { name: dateWords.calendar(stripWords.day) })
  const pick = () => strip(opened.page).getByRole('button', { name: dateWords.pick(stripWords.day) })
  const focused = () => opened.page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

  test('is gone through by keys, and Enter chooses', async () => {
    const { page } = opened
    await pick().click()
    await soon(async () => (await focused()).startsWith('Mon 14 June 2027'))
    expect(await calendar().locator('[aria-selected=true]').textContent()).toBe('14')
    expect(await calendar().getByRole('columnheader').first().textContent()).toBe('Mon')
    for (const [key, day] of [
      ['ArrowRight', 'Tue 15 June 2027'],
      ['ArrowDown', 'Tue 22 June 2027'],
      ['Home', 'Mon 21 June 2027'],
      ['End', 'Sun 27 June 2027'],
      ['PageDown', 'Tue 27 July 2027'],
      ['Shift+PageUp', 'Mon 27 July 2026'],
      ['PageUp', 'Sat 27 June 2026'],
      ['ArrowUp', 'Sat 20 June 2026'],
      ['ArrowLeft', 'Fri 19 June 2026'],
    ] as const) {
      await page.keyboard.press(key)
      await soon(async () => (await focused()).startsWith(day))
    }
    await calendar().getByRole('heading', { name: 'June 2026' }).waitFor()
    await page.keyboard.press('Enter')
    await lineSays('Fri 19 June 2026')
    await calendar().waitFor({ state: 'hidden' })
    expect(await focused()).toBe(dateWords.pick(stripWords.day))
    await soon(async () => (await dateField(page).inputValue()) === '19 Jun 2026')
  })

  test('is opened from the field, changes nothing by Escape, and gives the focus back', async () => {
    const { page } = opened
    const before = await saved()
    await dateField(page).press('Alt+ArrowDown')
    await soon(async () => (await focused()).startsWith('Fri 19 June 2026'))
    await page.keyboard.press('PageDown')
    await page.keyboard.press('Escape')
    await calendar().waitFor({ state: 'hidden' })
    expect(await focused()).toBe(dateWords.pick(stripWords.day))
    expect(await saved()).toEqual(before)
  })

  test('chooses by the pointer in another month, and stands within a small window, readable by axe’s rules', async () => {
    const { page } = opened
    const usual = page.viewportSize()
    await page.setViewportSize({ width: 733, height: 467 })
    await pick().click()
    await calendar().getByRole('button', { name: dateWords.later }).click()
    await calendar().getByRole('heading', { name: 'July 2026' }).waitFor()
    const box = await calendar().boundingBox()
    if (box === null) throw new Error('no calendar')
    expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(0)
    expect(box.x + box.width).toBeLessThanOrEqual(733)
    expect(box.y + box.height).toBeLessThanOrEqual(467)
    const button = await pick().boundingBox()
    expect(box.y + box.height).toBeLessThanOrEqual(button?.y ?? 0)
    // None of it lies beyond a scroll of its own.
    expect(await calendar().evaluate((one) => one.scrollHeight - one.clientHeight)).toBe(0)
    expect(await axeFindings(page, '.day-strip')).toEqual([])
    await calendar().getByRole('gridcell', { name: 'Tue 14 July 2026' }).click()
    await lineSays('Tue 14 July 2026')
    if (usual !== null) await page.setViewportSize(usual)
  })

  test('closes when one goes elsewhere', async () => {
    await pick().click()
    await calendar().waitFor()
    await line(opened.page).focus()
    await calendar().waitFor({ state: 'hidden' })
  })
})

describe('a zone chosen by hand', () => {
  test('shows a day of 23 hours without its skipped hour, and takes the gap by a notice', async () => {
    const { page } = opened
    await chooseZone(page, 'berlin', 'Europe/Berlin')
    await soon(async () => (await savedShoot(opened.host, 'demo')).shoot.zone === 'Europe/Berlin')
    await typeDate('2026-03-28')
    await lineSays('Sat 28 March 2026')
    await line(page).focus()
    // From wherever it stands to 02:30.
    const { hour, minute } = civilTime((await saved()).when, 'Europe/Berlin')
    const hours = hour - 2
    for (let press = 0; press < Math.abs(hours); press++) await page.keyboard.press(hours > 0 ? 'PageDown' : 'PageUp')
    const minutes = 30 - minute
    for (let press = 0; press < Math.abs(minutes); press++)
      await page.keyboard.press(minutes > 0 ? 'ArrowRight' : 'ArrowLeft')
    await lineSays('02:30 UTC+1')
    await page.keyboard.press('ArrowUp')
    await lineSays('Sun 29 March 2026, 03:30 UTC+2')
    await notices(page)
      .getByText(stripWords.skipped('02:30', 'Sun 29 March 2026', '03:30'))
      .waitFor()
    expect(await line(page).getAttribute('aria-valuemax')).toBe(String(23 * 60 - 1))
    await strip(page).getByText('clock +1 h').waitFor()
    expect(await strip(page).locator('.axis-hour').allTextContents()).not.toContain('2')
    for (let press = 0; press < 4; press++) await page.keyboard.press('Shift+ArrowLeft')
    await lineSays('01:50 UTC+1')
    await line(page).blur()
    await soon(async () => (await saved()).when === Date.UTC(2026, 2, 29, 0, 50))
  })

  test('is there after the host and the page are started again, and undo was its own edit', async () => {
    await opened.close()
    opened = await open({ host: 'browser', data: data.folder })
    await boardReady(opened.page)
    await lineSays('Sun 29 March 2026, 01:50 UTC+1')
    await strip(opened.page).getByText('Europe/Berlin, UTC+1').waitFor()
    await chooseZone(opened.page, '', stripWords.zoneAsFound('UTC−2, open sea'))
    await lineSays('UTC−2')
    await opened.page.keyboard.press('Control+z')
    await lineSays('01:50 UTC+1')
  })
})

describe('elsewhere', () => {
  async function goTo(id: string): Promise<void> {
    const { page } = opened
    await page.reload()
    await boardReady(page)
    await page.getByRole('textbox', { name: /Find in/ }).fill(id)
    await page
      .getByRole('button', { name: new RegExp(id) })
      .first()
      .click()
  }

  test('a polar day is told in words (Tromsø, 69.65 18.96)', async () => {
    await addElsewhere('tromso', { lat: 69.65, lon: 18.96 }, Date.UTC(2026, 5, 21, 10), { zone: 'Europe/Oslo' })
    await goTo('tromso')
    await lineSays('Sun 21 June 2026, 12:00 UTC+2')
    await strip(opened.page)
      .getByTitle(/; up all day/)
      .waitFor()
    await line(opened.page).focus()
    await opened.page.keyboard.press('End')
    await notices(opened.page).getByText(stripWords.noSunset).waitFor()
  })

  test('a place at +13 has its own date, with no light wished said quietly (Auckland, −36.85 174.76)', async () => {
    await addElsewhere('auckland', { lat: -36.85, lon: 174.76 }, Date.UTC(2026, 0, 14, 23), {
      zone: null,
      light: NO_WISHES,
    })
    await goTo('auckland')
    await lineSays('Thu 15 January 2026, 12:00 UTC+13')
    await strip(opened.page).getByText('Pacific/Auckland, UTC+13').waitFor()
    await strip(opened.page).getByText(stripWords.noWish).waitFor()
  })

  test('a day that ends early is reached at its last minute, by step and by date, and that is said (Nuuk, 64.18 −51.72)', async () => {
    const zone = 'America/Nuuk'
    await addElsewhere('nuuk', { lat: 64.18, lon: -51.72 }, Date.UTC(2026, 2, 28, 1, 30), { zone })
    await goTo('nuuk')
    const { page } = opened
    await lineSays('Fri 27 March 2026, 23:30')
    await strip(page).getByRole('button', { name: stripWords.later, exact: true }).click()
    await lineSays('Sat 28 March 2026, 22:59')
    await notices(page)
      .getByText(/ends at 23:00 there/)
      .waitFor()
    await typeDate('30 March')
    await lineSays('Mon 30 March 2026, 22:59')
    await typeDate('28.3.')
    await lineSays('Sat 28 March 2026, 22:59')
    // The moon's lit share is that of the chosen time, and says so.
    await strip(page)
      .getByTitle(/^Moon \d+\u{a0}% lit at 22:59, waxing;/u)
      .waitFor()
  })

  test('where two clocks are in use both are offered, and that is said (39.47 75.99)', async () => {
    await addElsewhere('kashgar', { lat: 39.47, lon: 75.99 }, Date.UTC(2026, 5, 14, 8), {})
    await goTo('kashgar')
    await strip(opened.page).getByText(stripWords.twoClocks).waitFor()
    await strip(opened.page).getByRole('button', { name: lightWords.zone }).click()
    await strip(opened.page).getByText(lightWords.zoneBoth).waitFor()
    for (const zone of ['Asia/Shanghai', 'Asia/Urumqi'])
      await strip(opened.page)
        .getByRole('option', { name: new RegExp(`${zone}.*${stripWords.zoneHere}`) })
        .waitFor()
    // The list stands open: named and readable by axe's rules.
    expect(await axeFindings(opened.page, '.day-strip')).toEqual([])
    await opened.page.keyboard.press('Escape')
  })
})
