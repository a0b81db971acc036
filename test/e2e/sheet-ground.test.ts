/** The sheet where elevations are not to be had: none are known, they fail, they never come; it says so, and the rest of it stands. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Spot } from '#core/record/spot.ts'
import { words } from '#renderer/words/en.ts'
import { GROUND_WAIT } from '#renderer/page/sheet/ground-wait.ts'
import { groundWords } from '#renderer/words/en-ground.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { findPoppler } from '#test/help/browser.ts'
import { startTileServer, type TileServer, type TileServerMode } from '#test/help/tile-server.ts'
import { boardReady, savedSpot } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { changeSaved } from './shelf.ts'

const { missing, row } = groundWords.sheet
/** In the Ötztal Alps, where nothing but tiles from the web could know the ground. */
const AWAY = { lat: 46.9, lon: 10.9 }

let opened: Opened
let server: TileServer
let folder: string

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-sheet-ground-'))
  server = await startTileServer()
  opened = await open({ host: 'browser', environment: { STANDPOINT_TEST_TILES: 'loopback' } })
  await boardReady(opened.page)
  const { stop, standpoint, access } = await savedSpot(opened.host, 'demo', 1)
  await changeSaved(opened.host, 1, {
    landmarkId: null,
    stop: { ...stop, at: { lat: AWAY.lat + 0.0001, lon: AWAY.lon }, elevation: null },
    standpoint: { ...standpoint, at: AWAY, elevation: null },
    access: { ...access, parking: null },
  })
})

afterAll(async () => {
  server.release()
  await opened.close()
  await server.close()
  rmSync(folder, { recursive: true, force: true })
})

let spot: Spot
beforeEach(async () => {
  spot = await savedSpot(opened.host, 'demo', 1)
})

async function tiles(on: boolean, mode: TileServerMode): Promise<void> {
  server.mode = mode
  // Each its own address, so that no tile of before serves.
  const template = `${server.template}?${mode}`
  await library(opened.host, 'settings.set', { elevationTiles: { on, template, maxZoom: 12, attribution: '' } })
}

/** On a busy machine a server's failure may take longer to come than a sheet waits: then it says so, which another test is for. */
const PATIENT = 20

async function sheet(patience = 1): Promise<Page> {
  const page = await opened.context.newPage()
  await page.addInitScript(
    ({ wait, times }) => {
      const usual = globalThis.setTimeout
      const patient = (run: () => void, after?: number): unknown => usual(run, after === wait ? wait * times : after)
      globalThis.setTimeout = patient as typeof setTimeout
    },
    { wait: GROUND_WAIT, times: patience },
  )
  const address = new URL((await opened.host?.address()) ?? '')
  await page.goto(`${address.origin}/sheet.html?shoot=demo&spot=${spot.id}&paper=a4${address.hash}`)
  await page.locator('html[data-ready=yes]').waitFor({ timeout: 120_000 })
  return page
}

/** What the sheet has with or without ground: its one page, its places, its light, its cautions, its last line. */
async function restStands(page: Page): Promise<void> {
  const path = join(folder, 'sheet.pdf')
  writeFileSync(path, await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true }))
  const run = (name: 'pdfinfo' | 'pdftotext', ...options: string[]): string =>
    execFileSync(findPoppler(name), options, { encoding: 'utf8' })
  expect(/Pages:\s+(\d+)/u.exec(run('pdfinfo', path))?.[1]).toBe('1')
  const text = run('pdftotext', path, '-').replaceAll(/\s+/gu, ' ')
  for (const part of [
    spot.name,
    `${spot.standpoint.at.lat.toFixed(6)}, ${spot.standpoint.at.lon.toFixed(6)}`,
    sheetWords.light.title,
    words.spot.cautions.always,
    sheetWords.madeWith,
    row,
  ])
    expect(text).toContain(part)
  // Unknown is told as unknown, never as a height of nothing.
  expect(text).toContain(sheetWords.unknown)
  expect(text).not.toMatch(/\b0\s?m\b/u)
  expect(await page.locator('svg.profile').count()).toBe(0)
}

describe('without elevations', () => {
  test('says that none are known there', async () => {
    await tiles(false, 'answers')
    const page = await sheet()
    const said = page.locator('.sheet-ground')
    await said.getByText(missing['none-known']).waitFor()
    expect(await said.innerText()).not.toContain(missing.failed)
    await restStands(page)
    await page.close()
  })

  test('says that they could not be read when their server fails', async () => {
    await tiles(true, 'failing')
    const page = await sheet(PATIENT)
    await page.locator('.sheet-ground').getByText(missing.failed).waitFor()
    expect(server.requests.length).toBeGreaterThan(0)
    await restStands(page)
    await page.close()
  })

  test('is made without them when they do not come, and says that', async () => {
    await tiles(true, 'slow')
    const page = await sheet()
    await page.locator('.sheet-ground').getByText(missing.late).waitFor()
    await restStands(page)
    await page.close()
  })
})

test('a slope measured by hand is on the sheet where no elevations are', async () => {
  const { stop } = spot
  await changeSaved(opened.host, 1, { stop: { ...stop, slope: 7, aspect: 180 } })
  await tiles(false, 'answers')
  const page = await sheet()
  await page.locator('.sheet-ground').getByText('7° to the south (entered by you)').waitFor()
  await page.close()
})
