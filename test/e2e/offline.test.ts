/** Map tiles from a server of the test's own, well, failing, lying and gone, and no network at all: the rest always works. */
import { existsSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { mapWords } from '#renderer/words/en-map.ts'
import { words } from '#renderer/words/en.ts'
import { temporaryData } from '#test/help/host.ts'
import { startTileServer, type TileServer, type TileServerMode } from '#test/help/tile-server.ts'
import { boardReady, closePlan, dragBy, savedSpot, soon } from './board.ts'
import { library } from './library.ts'
import { type Opened, open } from './open.ts'
import { about, names, write } from './shelf.ts'

const CREDIT = 'Tiles by the test'
const LOOPBACK_TILES = { STANDPOINT_TEST_TILES: 'loopback' }

let opened: Opened
let server: TileServer
let data: Awaited<ReturnType<typeof temporaryData>>

beforeEach(async () => {
  data = await temporaryData()
  server = await startTileServer()
})

afterEach(async () => {
  // A tile that does not come is told on the console by the browser itself; all else would be trouble.
  const others = opened.troubles.splice(0).filter((trouble) => !trouble.startsWith('console: Failed to load resource'))
  opened.troubles.push(...others)
  await opened.close()
  await server.close()
  await data.remove()
})

/** Opens the board on the map of a source of the user's own, which the server answers for. */
async function startOnServer(): Promise<void> {
  const own = { name: 'Mine', template: server.template, maxNativeZoom: 19, attribution: CREDIT, attributionLink: '' }
  opened = await open({
    answers: ['spot'],
    host: 'browser',
    data: data.folder,
    environment: LOOPBACK_TILES,
    prepare: (host) => library(host, 'settings.set', { ownSources: [{ id: 'mine', ...own }], mapSource: 'mine' }),
  })
  await boardReady(opened.page)
}

/** Tiles that are pictures, not empty places. */
function shown(): Promise<number> {
  return opened.page.evaluate(
    () =>
      [...document.querySelectorAll<HTMLImageElement>('img.leaflet-tile')].filter((tile) => tile.naturalWidth > 0)
        .length,
  )
}

function note() {
  return opened.page.getByRole('region', { name: words.board.map }).getByRole('status')
}

/** The number in the note on missing tiles, 0 without one. */
async function missing(): Promise<number> {
  const said = await note().allInnerTexts()
  return Number(/(\d+) map tiles? (?:is|are) missing/.exec(said.join(' '))?.[1] ?? 0)
}

/** What the demo is for still works: the standpoint is dragged, the answer saved. */
async function demoWorks(): Promise<void> {
  const { page, host } = opened
  const before = await savedSpot(host, 'demo')
  await dragBy(page, closePlan(page).getByRole('button', { name: /^Standpoint/ }), -20, 12)
  await expect
    .poll(async () => (await savedSpot(host, 'demo')).standpoint.at, { timeout: 30_000 })
    .not.toEqual(before.standpoint.at)
}

describe('a server that answers', () => {
  test('is shown with its credit, and asked for nothing twice', async () => {
    await startOnServer()
    await soon(async () => (await shown()) > 3)
    await opened.page.getByText(CREDIT).waitFor()
    expect(await missing()).toBe(0)
    const paths = server.requests.map(({ path }) => path)
    expect(new Set(paths).size).toBe(paths.length)
  })

  test('leaves what it gave on the map after it has gone, and the board works on', async () => {
    await startOnServer()
    await soon(async () => (await shown()) > 3)
    await server.stop()
    await opened.page.reload()
    await boardReady(opened.page)
    await soon(async () => (await shown()) > 3)
    await demoWorks()
  })
})

describe('a server that fails', () => {
  test('leaves a note with the number of tiles missing, and trying again brings them once it is well', async () => {
    server.mode = 'failing'
    await startOnServer()
    await soon(async () => (await missing()) > 3)
    expect(await shown()).toBe(0)
    await demoWorks()
    server.mode = 'answers'
    const again = opened.page.getByRole('button', { name: mapWords.tryAgain })
    // The program leaves a failing server in peace for some seconds: pressed too early, the note stays.
    await expect
      .poll(
        async () => {
          if (await again.isVisible()) await again.click()
          return missing()
        },
        { timeout: 90_000, interval: 1_000 },
      )
      .toBe(0)
    await soon(async () => (await shown()) > 3)
    await again.waitFor({ state: 'hidden' })
  })
})

describe('a server that takes its time', () => {
  test('keeps no note from being saved at once, in either of two windows, and its tiles come in the end', async () => {
    server.mode = 'slow'
    await startOnServer()
    const { page, host } = opened
    const second = await opened.another()
    await boardReady(second)
    // Both windows wait for more tiles than a browser has connections.
    await server.arrived(2)
    for (const [window, text] of [
      [page, 'Gate is locked after six.'],
      [second, 'Gate is locked after seven.'],
    ] as const) {
      await window.bringToFront()
      await expect
        .poll(() => window.evaluate(() => document.querySelectorAll('img.leaflet-tile').length))
        .toBeGreaterThan(6)
      const began = performance.now()
      await write(about(window).getByRole('textbox', { name: words.spot.notes }), text)
      await expect.poll(async () => (await savedSpot(host, 'demo')).notes, { interval: 50, timeout: 10_000 }).toBe(text)
      expect(performance.now() - began).toBeLessThan(4_000)
      await second.bringToFront()
      await soon(
        async () => (await about(second).getByRole('textbox', { name: words.spot.notes }).inputValue()) === text,
      )
    }
    server.mode = 'answers'
    server.release()
    await second.close()
    // Those that took longer than a tile may are told as missing by now and asked for as after any failure.
    const again = page.getByRole('button', { name: mapWords.tryAgain })
    await expect
      .poll(
        async () => {
          if (await again.isVisible()) await again.click()
          return (await shown()) > 6 && (await missing()) === 0
        },
        { timeout: 90_000, interval: 1_000 },
      )
      .toBe(true)
  })
})

describe('a server that lies', () => {
  test.each<TileServerMode>(['redirect', 'huge'])('%s: nothing of it is shown, and the rest works', async (mode) => {
    server.mode = mode
    await startOnServer()
    await soon(async () => (await missing()) > 0)
    expect(server.requests.length).toBeGreaterThan(0)
    expect(server.requests.filter(({ path }) => path.startsWith('/elsewhere'))).toEqual([])
    expect(await shown()).toBe(0)
    await demoWorks()
  })

  test.each<TileServerMode>(['html', 'wrong-magic', 'plain-type', 'huge-told'])(
    '%s: the page is given nothing of it',
    async (mode) => {
      server.mode = mode
      await startOnServer()
      const { host } = opened
      const { prefix } = (await library(host, 'tiles.sources', {})) as { prefix: string }
      const answer = await fetch(`${host?.origin ?? ''}${prefix}/mine/9/207/182`)
      expect(answer.ok).toBe(false)
      expect(answer.headers.get('content-type')).not.toMatch(/image|html/)
      expect(server.requests.length).toBeGreaterThan(0)
    },
  )
})

describe('no network', () => {
  test('is told where a tile server is used, the demo goes on, and the sketch map needs none', async () => {
    await server.stop()
    await startOnServer()
    const { page } = opened
    await note().filter({ hasText: mapWords.offline }).waitFor()
    await page.getByRole('banner').getByText(words.board.offline, { exact: true }).waitFor()
    await demoWorks()
    await page.getByRole('button', { name: words.board.settings, exact: true }).click()
    await page.getByRole('radio', { name: words.board.settingsPage.sketch }).check()
    await page.getByRole('button', { name: words.board.settings, exact: true }).click()
    await boardReady(page)
    await note().filter({ hasText: mapWords.offline }).waitFor({ state: 'hidden' })
    await page.getByRole('banner').getByText(words.board.offline, { exact: true }).waitFor({ state: 'hidden' })
    await sketchDrawn()
  })

  test('from the first start on: nothing outside is asked, and a tile server chosen then is asked in vain', async () => {
    const asked = join(data.folder, 'asked.txt')
    const guard = pathToFileURL(resolve(import.meta.dirname, '../help/no-network.mjs')).href
    const environment = { NODE_OPTIONS: `--import ${guard}`, STANDPOINT_TEST_ASKED: asked }
    opened = await open({ host: 'browser', data: data.folder, environment })
    const { page } = opened
    await boardReady(page)
    expect(await names(page)).toHaveLength(3)
    await sketchDrawn()
    await demoWorks()
    const place = page.getByRole('combobox', { name: words.board.place.label })
    await place.fill('Bergen')
    await page
      .getByRole('option', { name: /Bergen/ })
      .first()
      .waitFor()
    expect(existsSync(asked)).toBe(false)

    await library(opened.host, 'settings.set', { mapSource: 'openstreetmap' })
    await page.reload()
    await boardReady(page)
    await note().filter({ hasText: mapWords.offline }).waitFor()
    expect([...new Set(readFileSync(asked, 'utf8').trim().split('\n'))]).toEqual(['tile.openstreetmap.org'])
    await demoWorks()
  })
})

/** The sketch map's canvases hold ink, not only paper. */
function sketchDrawn(): Promise<void> {
  return soon(() =>
    opened.page.evaluate(() => {
      const colours = new Set<string>()
      for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.leaflet-tile-pane canvas')) {
        const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? []
        for (let at = 0; at < pixels.length; at += 4096)
          colours.add(`${pixels[at]} ${pixels[at + 1]} ${pixels[at + 2]}`)
      }
      return colours.size > 10
    }),
  )
}
