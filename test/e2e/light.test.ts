/** When is the light right: wishes made on the board give the windows that the engine reckons, everywhere the same. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { formatClock } from '#core/time/civil.ts'
import { spanText, thingText } from '#renderer/text/light-text.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { boardReady, openAnswer, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'
import { card, changeSaved } from './shelf.ts'
import { askForPage, goToPage } from './pages.ts'

/** The demo lies in open sea, two hours behind UTC. */
const ZONE = 'Etc/GMT+2'
const say = lightWords.wishes

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser', viewport: { width: 1440, height: 1000 } })
  await boardReady(opened.page)
  await openAnswer(opened.page, lightWords.question)
})
afterAll(() => opened.close())

async function savedPlan(index = 0): Promise<Plan> {
  const { shoot, spots } = await savedShoot(opened.host, 'demo')
  const spot = spots[index]
  if (spot === undefined) throw new Error('no such spot is saved')
  return planOf(shoot, spot)
}

async function windowNow(): Promise<string> {
  const plan = await savedPlan()
  const [first] = dayLight(plan, assess(plan), ZONE).windows.common
  return first === undefined ? lightWords.never : spanText(first, ZONE)
}

function question() {
  return opened.page.getByRole('region', { name: lightWords.question }).locator('.answer-body')
}

describe('on the board', () => {
  test('the demo’s windows are those of the engine, by the island’s own clock', async () => {
    await question()
      .getByText(await windowNow(), { exact: true })
      .waitFor()
    const plan = await savedPlan()
    await question()
      .getByText(thingText(assess(plan).light.subject), { exact: true })
      .first()
      .waitFor()
    expect(await opened.page.locator('.hour-bead').count()).toBeGreaterThan(8)
  })

  test('another wish gives other windows, saved with the shoot', async () => {
    await question()
      .locator('summary', { hasText: say.titleCount(3) })
      .click()
    await question()
      .getByRole('combobox', { name: say.subject('Cargo bicycle') })
      .selectOption('back-lit')
    await soon(async () => (await savedPlan()).shoot.light.subject === 'back-lit')
    await question()
      .getByText(await windowNow(), { exact: true })
      .waitFor()
  })

  test('two wishes that no sun can meet are named', async () => {
    await question().getByRole('combobox', { name: say.soft }).selectOption('evening')
    await question()
      .getByText(/No position of the sun gives both/u)
      .first()
      .waitFor()
    await question().getByRole('combobox', { name: say.soft }).selectOption('')
    await question()
      .getByRole('combobox', { name: say.subject('Cargo bicycle') })
      .selectOption('lit')
    await soon(async () => (await savedPlan()).shoot.light.soft === null)
  })

  test('hours are read as people write them; what is no time is refused and nothing is lost', async () => {
    const from = question().getByRole('textbox', { name: say.from })
    const until = question().getByRole('textbox', { name: say.until })
    await from.fill('4 pm')
    await from.press('Enter')
    await until.fill('25:00')
    await until.press('Enter')
    await question()
      .getByText(/is not a time of day/u)
      .waitFor()
    expect((await savedPlan()).shoot.light.hours).toBeNull()
    await until.fill('17.15')
    await until.press('Enter')
    await soon(async () => {
      const { hours } = (await savedPlan()).shoot.light
      return hours?.from === 960 && hours.until === 1035
    })
    await question()
      .getByText(await windowNow(), { exact: true })
      .waitFor()
    expect(await windowNow()).toBe('16:00–17:15')
    await until.fill('16:00')
    await until.press('Enter')
    await question().getByText(say.sameHours).waitFor()
    expect((await savedPlan()).shoot.light.hours).toEqual({ from: 960, until: 1035 })
    await until.press('Escape')
  })

  test('moving the time by a key moves beads, shadow, shading and answers together', async () => {
    const { page } = opened
    const picture = page.locator('.board-right .lens-canvas')
    const pixels = (): Promise<string> =>
      picture.evaluate(async (canvas) => {
        const copy = document.createElement('canvas')
        copy.width = 250
        copy.height = 160
        copy.getContext('2d')?.drawImage(canvas as HTMLCanvasElement, 0, 0, copy.width, copy.height)
        return copy.toDataURL()
      })
    const drawn = async () => ({
      shadow: await page.locator('.close-plan .subject-shadow').getAttribute('d'),
      sun: await page.locator('.hour-ring .sun-up').first().getAttribute('cx'),
    })
    const before = await drawn()
    const pictured = await pixels()
    const spot = (await savedPlan()).spot
    await page.getByRole('slider', { name: /time/iu }).focus()
    await page.keyboard.press('PageDown')
    await page.keyboard.press('PageDown')
    await page.keyboard.press('Tab')
    await soon(async () => Math.abs((await savedPlan()).spot.when - spot.when) === 7_200_000)
    const plan = await savedPlan()
    await question()
      .getByText(thingText(assess(plan).light.subject), { exact: true })
      .first()
      .waitFor()
    const after = await drawn()
    await soon(async () => (await pixels()) !== pictured)
    expect(after.shadow).not.toBe(before.shadow)
    expect(after.sun).not.toBe(before.sun)
  })
})

/** An hour at which the spot's frame has the sun within: looked for on the days about midsummer. */
async function sunInFrame(index: number): Promise<{ plan: Plan; when: number }> {
  const plan = await savedPlan(index)
  for (let day = 0; day < 365; day++)
    for (let minute = 0; minute < 1440; minute += 10) {
      const when = Date.UTC(2027, 0, 1 + day, 0, minute)
      const tried = { ...plan, spot: { ...plan.spot, when } }
      const { sun } = assess(tried).light
      if (sun.up && sun.apparent > 1 && (sun.inFrame?.within ?? -90) > 0.5) return { plan: tried, when }
    }
  throw new Error('the sun is never in this frame')
}

describe('a sun in the frame', () => {
  test('is warned of on the board and on the sheet', async () => {
    const { page } = opened
    const { plan, when } = await sunInFrame(0)
    await changeSaved(opened.host, 0, { when })
    await page.reload()
    await boardReady(page)
    const focal = assess(plan).focalLength
    expect(focal).not.toBeNull()
    await question()
      .getByText(/The sun is in the frame at/u)
      .waitFor()
    await goToPage(page, 'sheet')
    await page
      .getByRole('article')
      .getByText(/The sun is in the frame at/u)
      .waitFor()
    await page.getByRole('article').getByText(formatClock(when, ZONE)).first().waitFor()
    await page.keyboard.press('Escape')
  })
})

describe('elsewhere', () => {
  test('the sheet tells the day’s times and windows', async () => {
    const { page } = opened
    await page.reload()
    await boardReady(page)
    await goToPage(page, 'sheet')
    const plan = await savedPlan()
    const { sun } = dayLight(plan, assess(plan), ZONE)
    const sheet = page.getByRole('article')
    const [rise = 0] = sun.rise
    const [set = 0] = sun.set
    await sheet.getByText(sheetWords.light.sunTimes(formatClock(rise, ZONE), formatClock(set, ZONE))).waitFor()
    await sheet.getByRole('img', { name: /The sun’s height over/u }).waitFor()
  })

  test('side by side each spot has its own time and windows', async () => {
    const { page } = opened
    await page.reload()
    await boardReady(page)
    for (const name of ['Track below Hallow Brae', 'Quennick harbour wall']) {
      await card(page, name).hover()
      await page.getByRole('checkbox', { name: new RegExp(`: ${name}$`, 'u') }).check()
    }
    await askForPage(page, 'compare')
    await page.getByRole('rowheader', { name: sheetWords.compare.groups.light }).waitFor()
    for (const index of [0, 1]) {
      const plan = await savedPlan(index)
      const { common } = dayLight(plan, assess(plan), ZONE).windows
      const text =
        common.length === 0 ? sheetWords.light.noWindow : common.map((span) => spanText(span, ZONE)).join(', ')
      await page
        .getByRole('row', { name: new RegExp(`^${sheetWords.compare.rows.window}`, 'u') })
        .getByText(text)
        .first()
        .waitFor()
    }
  })
})
