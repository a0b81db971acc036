/** Elevation files in the browser: added, listed, put in order, removed; and the routes that answer nobody else. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { groundSourceWords } from '#renderer/words/en-ground-sources.ts'
import { words } from '#renderer/words/en.ts'
import { hgtBytes, zipOf } from '#test/help/elevation-files.ts'
import { boardReady, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'

let opened: Opened
let files = ''

beforeEach(async () => {
  files = mkdtempSync(join(tmpdir(), 'standpoint-files-'))
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await opened.page.getByRole('button', { name: words.board.settings, exact: true }).click()
})

afterEach(async () => {
  await opened.close()
  rmSync(files, { recursive: true, force: true })
})

const list = () => opened.page.getByRole('list', { name: groundSourceWords.list })
const names = () => list().getByRole('listitem').locator('strong').allInnerTexts()

async function choose(...paths: readonly string[]): Promise<void> {
  const input = opened.page.locator('input[type=file][accept*=".hgt"]')
  await input.setInputFiles(paths)
}

function written(name: string, bytes: Uint8Array): string {
  const path = join(files, name)
  writeFileSync(path, bytes)
  return path
}

/** A square around the demo island that is known nowhere but in its east. */
const ISLAND_SQUARE = hgtBytes(1201, (column) => (column < 600 ? null : 40))

describe('sources of elevations', () => {
  test('a square is added, told, put last, kept over a reload, and removed', async () => {
    const { page } = opened
    await expect.poll(names).toEqual(['Demo island', 'Elevation tiles from the web'])
    await list().getByText(groundSourceWords.here.covers('20 m')).waitFor()
    await choose(written('n46w034.hgt', ISLAND_SQUARE))
    await expect
      .poll(names, { timeout: 30_000 })
      .toEqual(['N46W034.hgt', 'Demo island', 'Elevation tiles from the web'])
    const square = list().getByRole('listitem').filter({ hasText: 'N46W034.hgt' })
    await square.getByText('46° N to 47° N, 34° W to 33° W').waitFor()
    await square.getByText(groundSourceWords.gaps('50\u{a0}%')).waitFor()
    await square.getByText(groundSourceWords.here.gap).waitFor()
    await square.getByRole('button', { name: groundSourceWords.later('N46W034.hgt') }).click()
    await expect.poll(names).toEqual(['Demo island', 'N46W034.hgt', 'Elevation tiles from the web'])
    await page.reload()
    await boardReady(page)
    await page.getByRole('button', { name: words.board.settings, exact: true }).click()
    await expect.poll(names).toEqual(['Demo island', 'N46W034.hgt', 'Elevation tiles from the web'])
    await list()
      .getByRole('button', { name: groundSourceWords.remove('N46W034.hgt') })
      .click()
    await expect.poll(names).toEqual(['Demo island', 'Elevation tiles from the web'])
    await page.getByText(groundSourceWords.removed('N46W034.hgt')).waitFor()
  })

  test('an archive and a file that is none, chosen together: each is told', async () => {
    const { page } = opened
    await soon(async () => (await names()).length === 2)
    const archive = written(
      'squares.zip',
      zipOf({ 'a/S10E010.hgt': hgtBytes(1201, () => 5), 'N00E000.hgt': new Uint8Array(10) }),
    )
    await choose(archive, written('N46E007.hgt', new Uint8Array(5000)), written('ground.tif', new Uint8Array(300)))
    await page.getByText('Added S10E010.hgt.').waitFor({ timeout: 30_000 })
    await page.getByText(/N46E007\.hgt has 5,000 bytes/).waitFor()
    await page.getByText(/ground\.tif cannot be read as a GeoTIFF/).waitFor()
    await expect.poll(names).toEqual(['S10E010.hgt', 'Demo island', 'Elevation tiles from the web'])
    await list().getByText(groundSourceWords.here.outside).waitFor()
  })

  test('web tiles are off when they are switched off, and a bad address is refused where it is typed', async () => {
    const { page } = opened
    const tiles = list().getByRole('listitem').filter({ hasText: 'Elevation tiles from the web' })
    await tiles.getByRole('checkbox', { name: groundSourceWords.tilesOn }).uncheck()
    await tiles.getByText(groundSourceWords.here.off).waitFor()
    await tiles.getByText(groundSourceWords.tilesAddress).click()
    const address = tiles.getByRole('textbox', { name: groundSourceWords.address })
    await address.fill('tiles.example.org')
    await address.blur()
    await tiles.getByText(words.board.settingsPage.badTemplate).waitFor()
    await address.fill('https://10.0.0.1/{z}/{x}/{y}.png')
    await address.blur()
    await page
      .getByText(/inside this machine or its own network/)
      .first()
      .waitFor()
    const kept = (await library(opened.host, 'settings.get', {})) as {
      elevationTiles: { on: boolean; template: string }
    }
    expect(kept.elevationTiles).toMatchObject({ on: false, template: '' })
  })
})

describe('the routes', () => {
  const prefix = async () => ((await library(opened.host, 'ground.sources', { at: null })) as { prefix: string }).prefix
  const origin = () => opened.host?.origin ?? ''
  const send = (path: string, headers: Record<string, string>) =>
    fetch(`${origin()}${path}/file?name=N46E007.hgt`, { method: 'POST', body: new Uint8Array(10), headers })

  test('cut a window for who knows the secret path, and for nobody else', async () => {
    const path = await prefix()
    const query = 'lat=46.4&lon=-33.6&cell=10&half=50'
    const answer = await fetch(`${origin()}${path}/window?${query}`)
    const told = JSON.parse(answer.headers.get('x-ground') ?? '') as { known: number }
    const heights = new Float32Array(await answer.arrayBuffer())
    expect([answer.status, heights.length, told.known]).toEqual([200, 101 * 101, 1])
    expect(Math.max(...heights)).toBeGreaterThan(20)
    expect((await fetch(`${origin()}/ground/guess/window?${query}`)).status).toBe(404)
    for (const wrong of [
      'lat=46.4&lon=-33.6&cell=10&half=1501',
      'lat=46.4&lon=-33.6&cell=600&half=5',
      'lat=99&lon=0&cell=10&half=5',
      '',
    ]) {
      const refused = await fetch(`${origin()}${path}/window?${wrong}`)
      expect(refused.status).toBe(400)
      expect(await refused.json()).toMatchObject({ reason: 'bad-window' })
    }
  })

  test('take no file without the token, from elsewhere, or by another name', async () => {
    const path = await prefix()
    const good = {
      'content-type': 'application/octet-stream',
      authorization: `Bearer ${opened.host?.token ?? ''}`,
      origin: origin(),
    }
    expect((await send(path, { ...good, authorization: '' })).status).toBe(401)
    expect((await send(path, { ...good, origin: 'https://elsewhere.example' })).status).toBe(403)
    expect((await send('/ground/guess', good)).status).toBe(404)
    const taken = await send(path, good)
    expect([taken.status, await taken.json()]).toMatchObject([200, { ok: false, fault: { reason: 'bad-size' } }])
  })
})
