/** Does the ground allow it: what the board says of the demo's hills is what the engine says of the same elevations. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { formatClock } from '#core/time/civil.ts'
import { profileReading, shownFigure } from '#renderer/text/ground-text.ts'
import { words } from '#renderer/words/en.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { boardReady, dragBy, openAnswer, savedShoot, soon } from './board.ts'
import { reloadedGround } from './ground.ts'
import { type Opened, open } from './open.ts'
import { card } from './shelf.ts'
import { askForPage, goToPage } from './pages.ts'

/** The demo lies in open sea, two hours behind UTC. */
const ZONE = 'Etc/GMT+2'

let opened: Opened
let grid: ElevationGrid
beforeAll(async () => {
  opened = await open({ host: 'browser', viewport: { width: 1440, height: 1000 } })
  await boardReady(opened.page)
  await openAnswer(opened.page, groundWords.question)
  grid = await reloadedGround(opened)
})
afterAll(() => opened.close())

async function savedPlan(index = 0): Promise<Plan> {
  const { shoot, spots } = await savedShoot(opened.host, 'demo')
  const spot = spots[index]
  if (spot === undefined) throw new Error('no such spot is saved')
  return planOf(shoot, spot, grid)
}

function question() {
  return opened.page.getByRole('region', { name: groundWords.question }).locator('.answer-body')
}

async function shown(): Promise<string> {
  const { ground } = assess(await savedPlan())
  if (ground?.landmarkShown === undefined || ground.landmarkShown === null) throw new Error('the demo has elevations')
  return shownFigure(ground.landmarkShown)
}

describe('the answer', () => {
  test('tells the share of the landmark that shows, as the engine has it of the same window', async () => {
    expect(grid.heights.some((height) => height > 100)).toBe(true)
    await question()
      .getByText(await shown(), { exact: true })
      .first()
      .waitFor()
    await question().locator('svg.profile').waitFor()
  })

  test('tells first and last direct sun, inside the level horizon’s times', async () => {
    const plan = await savedPlan()
    const { direct, sun } = dayLight(plan, assess(plan), ZONE)
    const spans = direct.subject ?? []
    const [first] = spans
    const last = spans.at(-1)
    if (first === undefined || last === undefined) throw new Error('the subject has sun on the planned day')
    expect(first.from).toBeGreaterThan(sun.rise[0] ?? Infinity)
    expect(last.until).toBeLessThan(sun.set[0] ?? -Infinity)
    const row = question().getByRole('row', { name: /^Cargo bicycle/u })
    const minute = 60_000
    await row.getByText(formatClock(Math.ceil(first.from / minute) * minute, ZONE), { exact: true }).waitFor()
    await row.getByText(formatClock(Math.floor(last.until / minute) * minute, ZONE), { exact: true }).waitFor()
    // The strip and the ring tell the same.
    await opened.page.locator('.sun-behind').first().waitFor({ state: 'attached' })
    await opened.page.locator('.bead-hidden').first().waitFor({ state: 'attached' })
  })
})

describe('trees and walls', () => {
  test('a high one before the landmark hides it and is told by its name; undone, it shows again', async () => {
    const { page } = opened
    const before = await shown()
    await question().locator('summary', { hasText: groundWords.obstructions.title }).click()
    await question().getByRole('button', { name: groundWords.obstructions.add }).click()
    await soon(async () => (await savedPlan()).shoot.obstructions.length === 1)
    const name = question().getByRole('textbox', { name: groundWords.obstructions.name })
    await name.fill('Row of poplars')
    await name.press('Enter')
    const height = question().getByRole('textbox', { name: new RegExp(groundWords.obstructions.height, 'u') })
    await height.fill('90')
    await height.press('Enter')
    await soon(async () => (await savedPlan()).shoot.obstructions[0]?.height === 90)
    await question()
      .getByText(/“Row of poplars” \(90\s?m high\)/u)
      .first()
      .waitFor()
    const { ground } = assess(await savedPlan())
    expect(ground?.toLandmark?.hiddenBy?.obstruction).toBe(0)
    expect(ground?.landmarkShown).toBeLessThan(0.9)
    // It stands in the view through the lens, too.
    await page.locator('.lens-canvas[data-parts~="obstructions"]').waitFor()
    await question()
      .getByText(await shown(), { exact: true })
      .first()
      .waitFor()
    // Seen from near it is taken by an end.
    const drawn = (await savedPlan()).shoot.obstructions[0]?.line[0]
    await question()
      .getByRole('button', { name: groundWords.obstructions.show('Row of poplars') })
      .click()
    const end = page.getByRole('button', { name: groundWords.obstructions.end('Row of poplars', 1, 2) }).first()
    await end.waitFor()
    await dragBy(page, end, 25, -60)
    await soon(async () => (await savedPlan()).shoot.obstructions[0]?.line[0]?.lat !== drawn?.lat)
    // The other end by the keys.
    const other = (await savedPlan()).shoot.obstructions[0]?.line[1]
    await page.getByRole('button', { name: groundWords.obstructions.end('Row of poplars', 2, 2) }).focus()
    await page.keyboard.press('ArrowUp')
    await soon(async () => ((await savedPlan()).shoot.obstructions[0]?.line[1]?.lat ?? 0) > (other?.lat ?? Infinity))
    // Moved twice, heightened, named, added: five edits go back one by one.
    for (const left of [1, 1, 1, 1, 0]) {
      const { revision } = (await savedPlan()).shoot
      await page.keyboard.press('Control+z')
      await soon(async () => {
        const { shoot } = await savedPlan()
        return shoot.revision > revision && shoot.obstructions.length === left
      })
    }
    await question().getByText(before, { exact: true }).first().waitFor()
    await page.locator('.lens-canvas[data-parts~="obstructions"]').waitFor({ state: 'detached' })
    expect(await page.locator('[data-part="obstructions"]').count()).toBe(0)
  })
})

describe('a measured slope', () => {
  test('counts before the elevations, is refused beyond its limits, and goes back', async () => {
    const { page } = opened
    const { slope: label, aspect: toward } = words.answers.where.subjectTilt
    await openAnswer(page, words.answers.where.title)
    const slope = page.getByRole('textbox', { name: label })
    await slope.fill('95')
    await slope.press('Enter')
    await page.getByText(words.shoot.field.most(label, '90 °')).waitFor()
    await slope.fill('12.5')
    await slope.press('Enter')
    await soon(async () => (await savedPlan()).spot.stop.slope === 12.5)
    const aspect = page.getByRole('textbox', { name: toward })
    await aspect.fill('-135')
    await aspect.press('Enter')
    await soon(async () => (await savedPlan()).spot.stop.aspect === 225)
    await openAnswer(page, groundWords.question)
    const row = question().getByRole('row', { name: /13° to the south-west/u })
    await row.getByText(/^entered by you; elevation data: (?:level|\d+°)/u).waitFor()
    for (const left of [
      [12.5, null],
      [null, null],
    ]) {
      await page.keyboard.press('Control+z')
      await soon(async () => {
        const { stop } = (await savedPlan()).spot
        return stop.slope === left[0] && stop.aspect === left[1]
      })
    }
  })
})

describe('a measured slope under the landmark', () => {
  test('is taken in its form, counts on the board, and goes back', async () => {
    const { page } = opened
    await goToPage(page, 'shoot')
    const slope = page.getByRole('textbox', { name: words.shoot.baseTilt.slope }).first()
    await slope.fill('-3')
    await slope.press('Enter')
    await page.getByText(words.shoot.field.least(words.shoot.baseTilt.slope, '0 °')).waitFor()
    await slope.fill('31')
    await slope.press('Enter')
    await soon(async () => (await savedPlan()).landmark?.baseSlope === 31)
    await page.getByRole('button', { name: words.board.back, exact: true }).click()
    await question().getByText(/^31°/u).waitFor()
    await page.keyboard.press('Control+z')
    await soon(async () => (await savedPlan()).landmark?.baseSlope === null)
  })
})

describe('the profile', () => {
  test('is read by keys, in words and as a point on the map', async () => {
    const { page } = opened
    const point = page.locator('.profile-point')
    const slider = question().getByRole('slider', { name: groundWords.profile.cursor })
    await slider.focus()
    await page.keyboard.press('Home')
    await point.waitFor()
    const at = () => point.boundingBox()
    const start = await at()
    for (let step = 0; step < 5; step++) await page.keyboard.press('PageUp')
    await soon(async () => (await at())?.x !== start?.x)
    const plan = await savedPlan()
    const line = groundProfile(plan, assess(plan).levels)
    if (line === null) throw new Error('there is a way to the landmark')
    const read = profileReading(line, line.length / 2, 'metric')
    expect(await slider.getAttribute('aria-valuetext')).toBe(read)
    await question().getByText(read, { exact: true }).waitFor()
    await page.keyboard.press('Tab')
    await point.waitFor({ state: 'detached' })
  })
})

describe('elsewhere', () => {
  test('side by side tells of each spot’s own ground', async () => {
    const { page } = opened
    for (const name of ['Track below Hallow Brae', 'Quennick harbour wall']) {
      await card(page, name).hover()
      await page.getByRole('checkbox', { name: new RegExp(`: ${name}$`, 'u') }).check()
    }
    await askForPage(page, 'compare')
    await page.getByRole('rowheader', { name: groundWords.question }).waitFor()
    const row = page.getByRole('row', { name: new RegExp(`^${groundWords.rows.shown}`, 'u') })
    for (const index of [0, 1]) {
      // The board's window serves both places: they lie within two kilometres of each other.
      const share = assess(await savedPlan(index)).ground?.landmarkShown ?? null
      await row.getByRole('cell').nth(index).getByText(shownFigure(share).toLowerCase()).waitFor()
    }
    const slopes = page.getByRole('row', { name: new RegExp(`^${groundWords.rows.slope}`, 'u') })
    await slopes.getByText(groundWords.under.tiltSources.elevations).first().waitFor()
    const levels = page.getByRole('row', { name: new RegExp(`^${groundWords.rows.level}`, 'u') })
    await levels.getByText(groundWords.under.sources.measured).first().waitFor()
    await page.keyboard.press('Escape')
  })

  test('the sheet has the profile and says how much shows', async () => {
    const { page } = opened
    await goToPage(page, 'sheet')
    const sheet = page.getByRole('article')
    await sheet.locator('svg.profile').first().waitFor({ state: 'attached' })
    expect(await sheet.innerText()).toContain(groundWords.sheet.row)
    expect(await sheet.innerText()).toContain(sheetWords.light.title)
  })
})
