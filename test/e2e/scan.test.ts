/** Where along this track? A scan is begun, stopped, begun again; the best are tried out, kept and compared; what cannot be met says why. */
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Change } from '#app/contract/library.ts'
import { type ScanWishes, USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { scanFoundWords } from '#renderer/words/en-scan-found.ts'
import { scanRunWords } from '#renderer/words/en-scan-run.ts'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { axeFindings } from './axe.ts'
import { boardReady, savedShoot, soon } from './board.ts'
import { demoTrack } from './demo-track.ts'
import { type Opened, open } from './open.ts'
import { apply, cards, names, notices } from './shelf.ts'

const PATIENT = { timeout: 90_000 } as const
const { tryOut } = scanWords
const { none } = scanFoundWords

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(() => opened.close())

/** Puts ground and wishes into the library past the page, which is loaded again with the scan beside the map. */
async function prepare(ground: readonly StoppingGround[], wishes: Partial<ScanWishes> = {}): Promise<void> {
  const { shoot } = await savedShoot(opened.host, 'demo')
  const record = { ...shoot, stoppingGround: ground, scanWishes: { ...USUAL_SCAN_WISHES, ...wishes } }
  const change = { kind: 'shoot', id: shoot.id, before: shoot.revision, record }
  await apply(opened.host, [change as Change])
  const { page } = opened
  await page.reload()
  await boardReady(page)
  await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
  await page.getByRole('heading', { name: scanWords.whereAlong }).waitFor()
}

function runPart(page: Page): Locator {
  return page.getByRole('region', { name: scanWords.whereAlong })
}
function startButton(page: Page): Locator {
  return runPart(page).locator('.scan-button')
}
function results(page: Page): Locator {
  return runPart(page).getByRole('list', { name: scanFoundWords.best }).locator(':scope > li')
}

/** Once a scan has run the choice is folded away. */
async function look(page: Page, fineness: string): Promise<void> {
  const fold = runPart(page).getByText(scanRunWords.again, { exact: true })
  const choice = runPart(page).getByText(fineness, { exact: true })
  if ((await choice.count()) === 0) await fold.click()
  await choice.click()
}

async function scanToTheEnd(page: Page): Promise<void> {
  await startButton(page).click()
  await runPart(page).getByRole('progressbar').waitFor()
  await startButton(page).waitFor(PATIENT)
}

async function boardName(page: Page): Promise<string> {
  return (await page.locator('.whereabouts').textContent()) ?? ''
}

describe('before anything is drawn', () => {
  test('says what to do first, and nothing can be begun', async () => {
    const { page } = opened
    await prepare([])
    await runPart(page).getByText(scanRunWords.noGround).waitFor()
    expect(await startButton(page).count()).toBe(0)
    expect(await axeFindings(page, '.board-right')).toEqual([])
  })
})

describe('wishes', () => {
  test('a band the wrong way round is refused beside its field and not saved', async () => {
    const { page, host } = opened
    const region = page.getByRole('region', { name: 'Cargo bicycle fills' })
    const least = region.getByRole('textbox').first()
    await least.fill('90')
    await least.press('Tab')
    await region.locator('.refusal').filter({ hasText: 'must not be above' }).waitFor()
    expect((await savedShoot(host, 'demo')).shoot.scanWishes).toEqual(USUAL_SCAN_WISHES)
    await least.press('Escape')
  })

  test('days the wrong way round and hours without a time are refused beside their fields', async () => {
    const { page, host } = opened
    const part = page.getByRole('region', { name: scanWords.whatPicture })
    await part.getByLabel(scanWishWords.days.label, { exact: true }).selectOption('range')
    const last = part.getByRole('textbox', { name: scanWishWords.days.until })
    await last.fill('2027-05-01')
    await last.press('Enter')
    await part.locator('.refusal').filter({ hasText: scanWishWords.days.order }).waitFor()
    await last.press('Escape')
    await part.getByLabel(scanWishWords.hours.label, { exact: true }).selectOption('some')
    const from = part.getByRole('textbox', { name: scanWishWords.hours.from, exact: true })
    await from.fill('sevenish')
    await from.press('Enter')
    await part.locator('.refusal').filter({ hasText: 'is not a time of day' }).waitFor()
    await from.press('Escape')
    const saved = async () => {
      const { days, hours } = (await savedShoot(host, 'demo')).shoot.scanWishes
      return [days?.from, days?.until, hours]
    }
    await expect.poll(saved, PATIENT).toEqual(['2027-06-14', '2027-07-11', { from: 420, until: 1200 }])
    for (let step = 0; step < 2; step++) await page.getByRole('button', { name: /^Undo: / }).click()
    await expect.poll(saved, PATIENT).toEqual([undefined, undefined, null])
  })

  test('a view by its name is saved, and undone again', async () => {
    const { page, host } = opened
    const region = page.getByRole('region', { name: 'View of Cargo bicycle' })
    await region.getByRole('radio', { name: scanWishWords.spokenLevels.must }).check()
    await region.getByRole('combobox').selectOption('side')
    const saved = async () => (await savedShoot(host, 'demo')).shoot.scanWishes.subjectView
    await expect.poll(saved, PATIENT).toEqual({ must: true, weight: 3, least: 75, most: 105 })
    for (let step = 0; step < 2; step++) await page.getByRole('button', { name: /^Undo: / }).click()
    await expect.poll(saved, PATIENT).toBeNull()
  })
})

describe('along a track', () => {
  test('tells the cost before, stops when told to, and keeps what it found until then', async () => {
    const { page } = opened
    await prepare([await demoTrack(opened.host)])
    await runPart(page)
      .locator('.scan-cost')
      .filter({ hasText: /positions?, .*combinations?/ })
      .waitFor(PATIENT)
    await look(page, scanRunWords.fineness.finer)
    await startButton(page).click()
    await runPart(page).getByRole('button', { name: scanRunWords.stop, exact: true }).click()
    await soon(async () => (await runPart(page).getByRole('progressbar').count()) === 0)
    await startButton(page).filter({ hasText: scanRunWords.startAgain }).waitFor()
  })

  test('finds the best, numbered in the list and on the map', async () => {
    const { page } = opened
    await look(page, scanRunWords.fineness.coarser)
    await scanToTheEnd(page)
    const count = await results(page).count()
    expect(count).toBeGreaterThan(1)
    expect(await page.locator('.result-mark').count()).toBeGreaterThan(0)
    expect(await page.locator('.scan-scores path').first().getAttribute('d')).not.toBeNull()
    // The best is first: scores never rise down the list.
    const scores = (await results(page).locator('.result-score').allInnerTexts()).map((text) =>
      Number(/\d+/.exec(text)?.[0]),
    )
    expect(scores).toEqual(scores.toSorted((one, other) => other - one))
    await results(page).first().locator('summary').click()
    const met = results(page).first().getByRole('table')
    await expect.poll(() => met.getByRole('row').count()).toBe(5)
    expect(await axeFindings(page, '.board-right')).toEqual([])
  })

  test('one tried out lies on the board without touching the spot; undo and the way back leave it', async () => {
    const { page, host } = opened
    const before = (await savedShoot(host, 'demo')).spots
    const home = await boardName(page)
    await results(page).first().locator('.result-face').click()
    await page.locator('.try-out-note').waitFor()
    await soon(async () => (await boardName(page)) !== home)
    await page.getByRole('button', { name: words.board.undoWhat(tryOut.open('Best 1, Sound track')) }).click()
    await soon(async () => (await boardName(page)) === home)
    // By keys, from the mark on the map.
    await page.locator('.result-mark[data-result="1"]').focus()
    await page.keyboard.press('Enter')
    await page.locator('.try-out-note').waitFor()
    await page.locator('.try-out-note').getByRole('button').last().click()
    await soon(async () => (await boardName(page)) === home)
    expect((await savedShoot(host, 'demo')).spots).toEqual(before)
  })

  test('two kept are spots of the shelf, picked, and stand side by side and on the sheet', async () => {
    const { page, host } = opened
    for (const place of [0, 1])
      await results(page)
        .nth(place)
        .getByRole('button', { name: /^Save to the shelf: /u })
        .click()
    await expect.poll(() => names(page), PATIENT).toContain('Best 1, Sound track')
    await expect.poll(() => names(page), PATIENT).toContain('Best 2, Sound track')
    await notices(page).getByText(tryOut.kept('Best 2, Sound track')).waitFor()
    await expect.poll(async () => (await savedShoot(host, 'demo')).spots.length, PATIENT).toBe(5)
    await results(page).first().getByText(scanFoundWords.kept).waitFor()
    await page.getByRole('button', { name: words.board.sideBySideCount(2) }).click()
    const table = page.getByRole('region', { name: sheetWords.compare.title })
    for (const name of ['Best 1, Sound track', 'Best 2, Sound track'])
      await table.getByRole('columnheader').filter({ hasText: name }).waitFor()
    await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
    await boardReadyBesideScan(page)
    await cards(page).getByRole('button').filter({ hasText: 'Best 1, Sound track' }).first().click()
    await page.getByRole('button', { name: headerWords.sheet, exact: true }).click()
    await page.locator('.sheet').getByText('Best 1, Sound track').first().waitFor(PATIENT)
    await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
    await boardReadyBesideScan(page)
  })

  test('what is found stays, marked as of before, when the wishes change, and is found again', async () => {
    const { page } = opened
    await page.getByRole('button', { name: scanWishWords.summary.change }).click()
    const region = page.getByRole('region', { name: 'Merrin Bridge whole' })
    await region.getByRole('radio', { name: scanWishWords.spokenLevels.off }).check()
    await page.locator('.scan-stale').filter({ hasText: scanRunWords.changes.wishes }).waitFor()
    expect(await results(page).count()).toBeGreaterThan(1)
    await scanToTheEnd(page)
    expect(await page.locator('.scan-stale').count()).toBe(0)
  })
})

async function boardReadyBesideScan(page: Page): Promise<void> {
  await page.getByRole('heading', { name: scanWords.whereAlong }).waitFor()
}

describe('wishes that cannot be met', () => {
  test('are named with what they rule out, and a relaxation leads to places', async () => {
    const { page } = opened
    const { landmarkFill } = USUAL_SCAN_WISHES
    if (landmarkFill === null) throw new Error('the usual wishes have a landmark’s fill')
    // The bridge is half a kilometre off: so tall it is only with a lens that is not in the bag.
    await prepare([await demoTrack(opened.host)], {
      landmarkWhole: null,
      landmarkFill: { ...landmarkFill, must: true, least: 4, most: 6 },
    })
    await look(page, scanRunWords.fineness.coarser)
    await scanToTheEnd(page)
    await runPart(page).getByText(none.title).first().waitFor()
    expect(await runPart(page).locator('.none-table').getByRole('row').count()).toBeGreaterThan(0)
    expect(await axeFindings(page, '.board-right')).toEqual([])
    const applied = runPart(page).getByRole('button', { name: /^Apply and scan again/ })
    expect(await applied.count()).toBeGreaterThan(0)
    await applied.first().click()
    await results(page).first().waitFor(PATIENT)
    await page.getByRole('button', { name: words.board.undoWhat(none.edit('')) }).waitFor()
  })
})
