/** Which days? The year fills, a day is chosen by keys, windows go into a calendar file, alignments and sides are listed. */
import { text as textOf } from 'node:stream/consumers'
import ICAL from 'ical.js'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Change } from '#app/contract/library.ts'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import { civilTime, formatDay, instantOf } from '#core/time/civil.ts'
import { dateText } from '#core/time/date-text.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { daysWords } from '#renderer/words/en-days.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { words } from '#renderer/words/en.ts'
import { boardReady, savedShoot, savedSpot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { apply } from './shelf.ts'
import { goToPage } from './pages.ts'

const { year: yearWords, list, stands, sides } = daysWords
const WISHES: LightWishes = {
  ...NO_WISHES,
  subject: 'lit',
  landmark: 'lit',
  sun: 'out-of-frame',
  altitude: { least: 3, most: 30 },
  hours: { from: 600, until: 1140 },
}

/** The ground comes in while the page is up, and the light is worked out again with it. */
const PATIENT = { timeout: 60_000 } as const

let opened: Opened
let zone: string
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await wish(WISHES)
  const spot = await savedSpot(opened.host, 'demo')
  const answer = (await library(opened.host, 'places.zones', { at: spot.stop.at })) as { zones: string[] }
  zone = answer.zones[0] ?? ''
})
afterAll(() => opened.close())

/** Changes the wishes past the page, which is then loaded again. */
async function wish(light: LightWishes): Promise<void> {
  const { shoot } = await savedShoot(opened.host, 'demo')
  const change = { kind: 'shoot', id: shoot.id, before: shoot.revision, record: { ...shoot, light } }
  await apply(opened.host, [change as Change])
  await opened.page.reload()
  await boardReady(opened.page)
}

async function daysPage(page: Page): Promise<void> {
  await goToPage(page, 'days')
}

const grid = (page: Page) => page.getByRole('grid')

describe('the year', () => {
  test('fills, and tells of a day what the board tells of it', async () => {
    const { page } = opened
    await daysPage(page)
    await grid(page).waitFor()
    await page.getByText(/^\d+ days in 2027 have the light you want$/u).waitFor({ timeout: 60_000 })
    expect(await page.getByRole('gridcell').count()).toBe(365)
    const bright = await page.locator('.year-light').count()
    expect(bright).toBeGreaterThan(100)
    // 11 April is day 101. What the worker finds for it is what the board says of it once it is chosen.
    await page.locator('[data-index="100"]').click()
    await page.mouse.move(0, 0)
    await expect
      .poll(() => page.locator('.year-pointed').textContent(), PATIENT)
      .toMatch(/^Sun 11 April: \d.*, \d\d:\d\d–/u)
    await page.keyboard.press('Escape')
    await boardReady(page)
    const answer = page.getByRole('region', { name: lightWords.question })
    const figure = async (): Promise<string> => ((await answer.locator('.answer-figure').textContent()) ?? '').trim()
    await expect.poll(figure, PATIENT).toMatch(/^\d\d:\d\d–\d\d:\d\d$/u)
    await expect
      .poll(async () => {
        const board = await figure()
        await daysPage(page)
        await page.getByText(/^\d+ days in 2027 have the light you want$/u).waitFor({ timeout: 60_000 })
        const told = await page.locator('.year-pointed').textContent()
        await page.keyboard.press('Escape')
        await boardReady(page)
        return told?.includes(board) === true
      }, PATIENT)
      .toBe(true)
  })

  test('a day is chosen by keys alone, and stands in the library', async () => {
    const { page } = opened
    await daysPage(page)
    await page.getByText(/^\d+ days in 2027 have the light you want$/u).waitFor({ timeout: 60_000 })
    const chosen = page.locator('[role=gridcell][tabindex="0"]')
    await chosen.focus()
    await page.keyboard.press('Home')
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key)
    // 1 January 2027, two weeks and a day on.
    const active = page.locator('[role=gridcell]:focus')
    expect(await active.getAttribute('aria-label')).toMatch(/^Sat 16 January: /u)
    await page.keyboard.press('Enter')
    await soon(async () => {
      const { when } = await savedSpot(opened.host, 'demo')
      return civilTime(when, zone).date === '2027-01-16'
    })
    // The middle of its longest window, to the minute, read off what is shown.
    await page.mouse.move(0, 0)
    const told = (await page.locator('.year-pointed').textContent()) ?? ''
    const windows = [...told.matchAll(/(\d\d):(\d\d)–(\d\d):(\d\d)/gu)].map((found) => {
      const [fromHour, fromMinute, untilHour, untilMinute] = found.slice(1).map(Number)
      const at = (hour = 0, minute = 0): number => instantOf('2027-01-16', hour * 60 + minute, zone).instant
      return { from: at(fromHour, fromMinute), until: at(untilHour, untilMinute) }
    })
    const longest = windows.toSorted((one, other) => other.until - other.from - (one.until - one.from))[0]
    expect(longest).toBeDefined()
    const { when } = await savedSpot(opened.host, 'demo')
    const middle = ((longest?.from ?? 0) + (longest?.until ?? 0)) / 2
    // The windows are told rounded inward.
    expect(Math.abs(when - middle)).toBeLessThanOrEqual(60_000)
    expect(await page.locator('[aria-selected=true]').getAttribute('aria-label')).toMatch(/^Sat 16 January/u)
    await page.keyboard.press('Escape')
    await boardReady(page)
    await expect.poll(() => page.locator('.day-strip .date-field input').inputValue(), PATIENT).toBe('16 Jan 2027')
  })

  test('steps from year to year and refuses one that is not computed', async () => {
    const { page } = opened
    await daysPage(page)
    await page.getByRole('button', { name: yearWords.later }).click()
    await page.getByText(/ in 2028 have the light you want$/u).waitFor({ timeout: 60_000 })
    expect(await page.getByRole('gridcell').count()).toBe(366)
    const field = page.getByRole('textbox', { name: yearWords.year })
    await field.fill('2101')
    await field.press('Enter')
    expect(await page.locator('.year-stepper .refusal').textContent()).toContain('2100')
    await field.fill('2027')
    await field.press('Enter')
    await page.getByText(/ in 2027 have the light you want$/u).waitFor({ timeout: 60_000 })
  })
})

test('windows ticked are in the calendar file, each as it is listed', async () => {
  const { page } = opened
  const boxes = page.getByRole('checkbox')
  const labels: string[] = []
  for (const index of [1, 2, 4]) {
    labels.push((await boxes.nth(index).getAttribute('aria-label')) ?? '')
    await boxes.nth(index).check()
  }
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: list.saveCount(3) }).click(),
  ])
  expect(download.suggestedFilename()).toBe('Track below Hallow Brae light windows.ics')
  const text = await textOf(await download.createReadStream())
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
  expect(events).toHaveLength(3)
  const told = events.map((event) => {
    const span = { from: event.startDate.toJSDate().getTime(), until: event.endDate.toJSDate().getTime() }
    const day = formatDay(civilTime(span.from, zone).date).replace(/ \d{4}$/u, '')
    return list.pick(day, spanText(span, zone))
  })
  expect(told).toEqual(labels)
  const { standpoint } = await savedSpot(opened.host, 'demo')
  for (const event of events) {
    expect(event.summary).toBe('Light: Track below Hallow Brae')
    expect(event.location).toBe(`${standpoint.at.lat.toFixed(6)}, ${standpoint.at.lon.toFixed(6)}`)
    expect(event.description).toContain(words.spot.cautions.always)
    expect(event.description).toMatch(/f\/\d/u)
  }
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(3)
})

test('the landmark’s sides are told with their hours', async () => {
  const { page } = opened
  const section = page.getByRole('region', { name: sides.heading })
  const rows = section.locator('tbody tr')
  expect(await rows.count()).toBe(2)
  // Twelve months for each side, when the worker has done.
  await expect.poll(() => section.locator('.side-month span').count(), { timeout: 30_000 }).toBe(24)
  // North of the tropic a side toward north has more sun in June than in December, when it has none.
  const north = await rows.filter({ hasText: 'north' }).locator('.side-month span').allTextContents()
  expect(Number(north[5])).toBeGreaterThan(Number(north[2]))
  expect(Number(north[11])).toBe(0)
})

describe('alignments', () => {
  test('are listed in order, narrowed by sky and moon, and lead to their instant', async () => {
    const { page } = opened
    await page.getByText(stands.bodies.moon, { exact: true }).click()
    await page.getByLabel(stands.span).selectOption('10')
    const count = page.locator('.stands-count')
    await expect
      .poll(() => count.textContent(), { timeout: 60_000 })
      .toMatch(/^\d+ found from [^,]+(?:, (?:all|\d+) behind the hill)?$/u)
    const all = await page.locator('.stands-table tbody tr').count()
    expect(all).toBeGreaterThan(5)
    await page.getByLabel(stands.lit).fill('90')
    await page.getByLabel(stands.lit).press('Enter')
    await expect.poll(() => page.locator('.stands-table tbody tr').count(), PATIENT).toBeLessThan(all)
    const row = page.locator('.stands-table tbody tr').first()
    const [day, clock] = [await row.locator('th').textContent(), await row.locator('td').first().textContent()]
    await row.getByRole('button').click()
    await soon(async () => {
      const { when } = await savedSpot(opened.host, 'demo')
      const shown = civilTime(when + 30_000, zone)
      return (
        `${dateText(shown.date)} ${shown.hour}:${shown.minute}` ===
        `${day} ${Number(clock?.slice(0, 2))}:${Number(clock?.slice(3))}`
      )
    })
    expect(await row.getByRole('button').getAttribute('aria-pressed')).toBe('true')
  })

  test('behind the hill are marked as such, and go when they are to be left out', async () => {
    const { page } = opened
    await page.getByLabel(stands.lit).fill('0')
    await page.getByLabel(stands.lit).press('Enter')
    const field = page.getByRole('textbox', { name: stands.tolerance })
    await field.fill('3')
    await field.press('Enter')
    const rows = page.locator('.stands-table tbody tr')
    const behind = rows.filter({ hasText: new RegExp(`(?<!partly )${stands.hillNames.behind}`, 'u') })
    await expect.poll(() => behind.count(), { timeout: 60_000 }).toBeGreaterThan(0)
    // The list still grows.
    await soon(async () => (await page.locator('.stands-table tr.behind').count()) === (await behind.count()))
    await page.locator('.stands-count', { hasText: stands.hillNames.behind }).waitFor({ timeout: 60_000 })
    await page.getByText(stands.hilly).waitFor()
    await page.getByLabel(stands.hills).selectOption('left-out')
    await expect.poll(() => behind.count(), PATIENT).toBe(0)
    if ((await rows.count()) === 0) await page.getByText(/settings rule out /u).waitFor()
    await page.getByLabel(stands.hills).selectOption('marked')
    await field.fill('0.5')
    await field.press('Enter')
  })

  test('a tolerance of nothing is refused in words', async () => {
    const { page } = opened
    const field = page.getByRole('textbox', { name: stands.tolerance })
    await field.fill('0')
    await field.press('Enter')
    expect(await page.locator('.stands-form .refusal:not(:empty)').textContent()).toContain(stands.tolerance)
    await field.press('Escape')
  })

  test('the line of standpoints goes on the map, for the moon that is up', async () => {
    const { page } = opened
    await page.getByRole('button', { name: stands.line }).click()
    await page.locator('.map-note').filter({ hasText: stands.bodies.moon }).waitFor()
    expect(await page.locator('.standpoint-line').count()).toBeGreaterThan(0)
  })
})

describe('nothing to show', () => {
  test('wishes that no sun can meet together are named by pairs', async () => {
    const { page } = opened
    await wish({ ...NO_WISHES, subject: 'lit', soft: 'evening' })
    await daysPage(page)
    await page.getByText(/No position of the sun gives both/u).waitFor()
    expect(await grid(page).count()).toBe(0)
  })

  test('a year without a day says which wishes never meet, and how often each holds', async () => {
    const { page } = opened
    await wish({ ...NO_WISHES, subject: 'lit', hours: { from: 0, until: 60 } })
    await daysPage(page)
    await page.getByText(/never happen at the same time in this year/u).waitFor({ timeout: 60_000 })
    expect(await page.locator('.wish-days li').allTextContents()).toEqual([
      expect.stringMatching(/alone happens on 365 of 365 days/u),
      expect.stringMatching(/alone happens on 365 of 365 days/u),
    ])
  })

  test('without wishes it leads to them', async () => {
    const { page } = opened
    await wish(NO_WISHES)
    await daysPage(page)
    await page.getByText(yearWords.noWishes).waitFor()
    await page.getByRole('button', { name: yearWords.toWishes }).click()
    await page.locator('.light-wishes select').first().waitFor({ state: 'visible' })
  })
})
