/** The location sheet as it leaves the program: one printed page that reads right, a code that scans, a file that needs nothing. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { forward } from 'mgrs'
import type { Page } from 'playwright-core'
import proj4 from 'proj4'
import qrcode from 'qrcode-generator'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Change } from '#app/contract/library.ts'
import { declination } from '#core/geo/declination.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import { HAZARDS, type Spot } from '#core/record/spot.ts'
import { bearing, metres } from '#renderer/text/figure.ts'
import { words } from '#renderer/words/en.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { findPoppler } from '#test/help/browser.ts'
import { boardReady, savedShoot, savedSpot } from './board.ts'
import { changeSaved, apply } from './shelf.ts'
import { newContext, type Opened, open } from './open.ts'
import { goToPage } from './pages.ts'

const PAPERS = { a4: { wide: 595.28, high: 841.89 }, letter: { wide: 612, high: 792 } } as const
type Paper = keyof typeof PAPERS

let opened: Opened
let folder: string
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'standpoint-sheet-'))
  opened = await open({ host: 'browser' })
  await boardReady(opened.page)
})
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true })
  await opened.close()
})

/** The page that is only printed, as the shell opens it. */
async function standalone(spot: string, paper: Paper, crop: string | null = null): Promise<Page> {
  const page = await opened.context.newPage()
  const address = new URL((await opened.host?.address()) ?? '')
  const query = new URLSearchParams({ shoot: 'demo', spot, paper, ...(crop === null ? {} : { crop }) })
  await page.goto(`${address.origin}/sheet.html?${query.toString()}${address.hash}`)
  await page.locator('html[data-ready=yes]').waitFor({ timeout: 60_000 })
  return page
}

async function printed(page: Page, name: string): Promise<string> {
  const path = join(folder, `${name}.pdf`)
  writeFileSync(path, await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true }))
  return path
}

function poppler(name: 'pdfinfo' | 'pdftotext' | 'pdftoppm', ...options: string[]): string {
  return execFileSync(findPoppler(name), options, { encoding: 'utf8' })
}

function textOf(pdf: string): string {
  return poppler('pdftotext', pdf, '-').replaceAll(/\s+/g, ' ')
}

function sizeOf(pdf: string): { pages: number; wide: number; high: number } {
  const told = poppler('pdfinfo', pdf)
  const [, wide = '', high = ''] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(told) ?? []
  return { pages: Number(/Pages:\s+(\d+)/.exec(told)?.[1]), wide: Number(wide), high: Number(high) }
}

/** Degrees, minutes and tenths of seconds by arithmetic of the test's own. */
function dms(at: LatLon): string {
  const part = (value: number, letters: string): string => {
    const tenths = Math.round(Math.abs(value) * 36_000)
    const [degrees, minutes] = [Math.floor(tenths / 36_000), Math.floor(tenths / 600) % 60]
    const seconds = ((tenths % 600) / 10).toFixed(1).padStart(4, '0')
    return `${degrees}°${String(minutes).padStart(2, '0')}′${seconds}″${letters[value < 0 ? 1 : 0]}`
  }
  return `${part(at.lat, 'NS')} ${part(at.lon, 'EW')}`
}

/** The demo lies in zone 25 of the northern hemisphere (from 36 to 30 degrees west). */
function utm(at: LatLon): string {
  const [easting = 0, northing = 0] = proj4('+proj=utm +zone=25 +datum=WGS84', [at.lon, at.lat])
  return `25 North ${Math.round(easting)} ${Math.round(northing)}`
}

/** The square of one metre. */
function mgrsSquare(at: LatLon): string {
  return forward([at.lon, at.lat], 5)
}

/** The share of pixels that are not white, and how many colours there are, of a page drawn at 60 dots an inch. */
function inkOf(pdf: string): { share: number; colours: number } {
  const stem = join(folder, 'ink')
  poppler('pdftoppm', '-r', '60', '-singlefile', pdf, stem)
  const bytes = readFileSync(`${stem}.ppm`)
  const header = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))?.[0].length ?? 0
  const colours = new Set<number>()
  let inked = 0
  for (let at = header; at + 2 < bytes.length; at += 3) {
    const colour = bytes.readUIntBE(at, 3)
    colours.add(colour)
    if (colour !== 0xffffff) inked += 1
  }
  return { share: inked / ((bytes.length - header) / 3), colours: colours.size }
}

describe.each(Object.keys(PAPERS) as Paper[])('printed on %s', (paper) => {
  test.each(['demo-spot-1', 'demo-spot-2', 'demo-spot-3'])('%s is one whole page that is not blank', async (spot) => {
    const page = await standalone(spot, paper)
    const pdf = await printed(page, `${spot}-${paper}`)
    const size = sizeOf(pdf)
    expect(size.pages).toBe(1)
    expect(size.wide).toBeCloseTo(PAPERS[paper].wide, 0)
    expect(size.high).toBeCloseTo(PAPERS[paper].high, 0)
    const ink = inkOf(pdf)
    expect(ink.share).toBeGreaterThan(0.1)
    expect(ink.colours).toBeGreaterThan(200)
    // The last line of the sheet is on it: nothing was cut away.
    expect(textOf(pdf)).toContain(sheetWords.madeWith)
    await page.close()
  })
})

test('reads from what to set by where and when to access and cautions, its pictures beside them', async () => {
  const page = await standalone('demo-spot-1', 'a4')
  const article = page.getByRole('article')
  const titles = await article.getByRole('heading', { level: 2 }).allInnerTexts()
  const order = [
    sheetWords.settings,
    sheetWords.where,
    sheetWords.light.title,
    sheetWords.access,
    sheetWords.permission,
    sheetWords.hazards,
  ].map((title) => titles.findIndex((found) => found.startsWith(title)))
  expect(order.every((at) => at >= 0)).toBe(true)
  expect(order).toEqual(order.toSorted((one, other) => one - other))
  // What to set stands in the first column, the picture through the lens beside it.
  const set = await article.locator('.sheet-settings').boundingBox()
  const frame = await article.locator('.sheet-frame svg').first().boundingBox()
  if (set === null || frame === null) throw new Error('what to set or the picture is not shown')
  expect(set.x + set.width).toBeLessThanOrEqual(frame.x)
  expect(Math.abs(set.y - frame.y)).toBeLessThan(12)
  await page.close()
})

test('has map and close plan side by side, as high as each other, the close plan with its distance', async () => {
  const page = await standalone('demo-spot-1', 'a4')
  const name = (await savedSpot(opened.host, 'demo')).name
  const map = await page.getByRole('img', { name: sheetWords.mapLabel(name) }).boundingBox()
  const close = page.getByRole('img', { name: sheetWords.closeLabel(name) })
  const box = await close.boundingBox()
  if (map === null || box === null) throw new Error('a plan is not shown')
  expect(Math.abs(map.height - box.height)).toBeLessThan(2)
  expect(map.x + map.width).toBeLessThan(box.x)
  for (const part of ['.subject-body', '.standpoint-kite', '.wedge', '.sharp-band'])
    expect(await close.locator(part).count(), part).toBe(1)
  const { shoot } = await savedShoot(opened.host, 'demo')
  const { toSubject } = assess(planOf(shoot, await savedSpot(opened.host, 'demo')))
  await close.getByText(metres(toSubject.distance, 'metric'), { exact: true }).waitFor()
  // A still drawing: nothing in it takes the keyboard.
  expect(await close.locator('[tabindex]').count()).toBe(0)
  await page.close()
})

test('names the crop where the shoot has the one chosen, and draws it over the picture', async () => {
  const held = '.sheet-settings'
  const cropped = await standalone('demo-spot-1', 'a4', '16:9')
  expect(await cropped.locator(held).innerText()).toContain('crop 16:9')
  expect(await cropped.locator('.sheet-crop .lens-crop').count()).toBe(1)
  await cropped.close()
  for (const none of [null, '17:3', 'nonsense', ':']) {
    const page = await standalone('demo-spot-1', 'a4', none)
    expect(await page.locator(held).innerText()).toContain(sheetWords.uncropped(sheetWords.orientation.lying))
    expect(await page.locator('.sheet-crop').count()).toBe(0)
    await page.close()
  }
})

test('leaves no band of empty paper: what is on it fills the page', async () => {
  for (const paper of Object.keys(PAPERS) as Paper[]) {
    const page = await standalone('demo-spot-1', paper)
    const used = await page.locator('.sheet-fit').evaluate((sheet) => sheet.getBoundingClientRect().height)
    const room = (PAPERS[paper].high / 72) * 96 - (20 / 25.4) * 96
    expect(used).toBeLessThanOrEqual(room)
    expect(used).toBeGreaterThan(room * 0.95)
    await page.close()
  }
})

test('own words on hazards stand on the sheet with no kind ticked, and a lens without a name by what it reaches', async () => {
  const { shoot, spots } = await savedShoot(opened.host, 'demo')
  const [, , third] = spots
  if (third === undefined) throw new Error('no third spot is saved')
  const lenses = shoot.bag.lenses.map((lens) => ({ ...lens, name: '' }))
  await apply(opened.host, [
    {
      kind: 'shoot',
      id: shoot.id,
      before: shoot.revision,
      record: { ...shoot, bag: { ...shoot.bag, lenses } },
    } as Change,
  ])
  await changeSaved(opened.host, 2, { hazards: [], hazardNote: 'loose stones under the wall' })
  const page = await standalone(third.id, 'a4')
  const text = await page.getByRole('article').innerText()
  expect(text).toContain('loose stones under the wall')
  expect(text).not.toContain(sheetWords.noHazards)
  const set = page.locator('.sheet-rows div', { hasText: sheetWords.lens }).first()
  expect(await set.innerText()).toMatch(/\d mm f\/\d/u)
  await page.close()
})

test('a spot with every hazard and long notes still fits its page, in print that can be read', async () => {
  const full = await savedSpot(opened.host, 'demo', 1)
  const notes = 'Only before the boats come in; stand with the wall behind and have one person at the rope. '.repeat(6)
  await changeSaved(opened.host, 1, { hazards: [...HAZARDS], hazardNote: 'a crane swings over the wall', notes })
  for (const paper of Object.keys(PAPERS) as Paper[]) {
    const page = await standalone(full.id, paper)
    const pdf = await printed(page, `full-${paper}`)
    expect(sizeOf(pdf).pages).toBe(1)
    expect(textOf(pdf)).toContain(sheetWords.madeWith)
    const size = await page
      .getByRole('article')
      .locator('.sheet-fit')
      .evaluate((sheet) => sheet.style.zoom)
    expect(Number(size)).toBeGreaterThan(0.8)
    await page.close()
  }
})

describe('what is printed', () => {
  let text = ''
  let spot: Spot
  beforeAll(async () => {
    spot = await savedSpot(opened.host, 'demo')
    const page = await standalone(spot.id, 'a4')
    text = textOf(await printed(page, 'read'))
    await page.close()
  })

  test('names the spot and the shoot, the notes, the access and whom to ask', async () => {
    const { shoot } = await savedShoot(opened.host, 'demo')
    for (const part of [spot.name, shoot.name, spot.notes.slice(0, 30), spot.permission.whom, spot.access.surface]) {
      expect(text).toContain(part)
    }
    expect(text).toContain(sheetWords.walk(String(spot.access.walkMinutes)))
  })

  test('gives every place in degrees, in minutes and seconds, in UTM and in MGRS', () => {
    for (const at of [spot.standpoint.at, spot.stop.at, spot.access.parking ?? spot.stop.at]) {
      expect(text).toContain(`${at.lat.toFixed(6)}, ${at.lon.toFixed(6)}`)
      expect(text).toContain(dms(at))
      expect(text).toContain(utm(at))
      expect(text).toContain(mgrsSquare(at))
    }
  })

  test('gives the true bearing and the magnetic one, with the declination of the day planned for', async () => {
    const { shoot } = await savedShoot(opened.host, 'demo')
    const line = assess(planOf(shoot, spot)).toLandmark?.bearing ?? Number.NaN
    const turn = declination(spot.standpoint.at, spot.standpoint.elevation, spot.when)
    // West of the Greenwich meridian in the middle of the Atlantic the needle points west of north: the reading is the greater.
    expect(turn?.degrees).toBeLessThan(-2)
    expect(text).toContain(bearing(line))
    expect(text).toContain(bearing(line - (turn?.degrees ?? 0)))
    expect(text).toContain(`${sheetWords.west} by ${turn?.model}`)
  })

  test('says the cautions of the hazards seen and the usual ones, and calls nothing safe or allowed', () => {
    const { cautions } = words.spot
    const said = [cautions.livestock, cautions.edge, cautions.weather, cautions.sun, cautions.drones, cautions.always]
    for (const caution of said) expect(text).toContain(caution)
    // The one sentence that uses the word says that the program does not know.
    expect(text.replace('does not know whether a place is safe', '')).not.toMatch(
      /\b(?:is|are) (?:safe|legal|allowed)\b/i,
    )
  })
})

test('printed from the program itself is the sheet alone', async () => {
  const { page } = opened
  await goToPage(page, 'sheet')
  const pdf = await printed(page, 'own-page')
  expect(sizeOf(pdf).pages).toBe(1)
  const text = textOf(pdf)
  expect(text).toContain('Track below Hallow Brae')
  for (const word of [words.board.settings, words.board.undo, sheetWords.html]) expect(text).not.toContain(word)
  await page.getByRole('combobox', { name: sheetWords.paper }).selectOption('letter')
  await page.locator('html[data-paper=letter]').waitFor()
  expect(sizeOf(await printed(page, 'own-letter'))).toMatchObject({ pages: 1, wide: 612, high: 792 })
  await page.getByRole('combobox', { name: sheetWords.paper }).selectOption('a4')
})

test('the code is the geo address of where one parks, module by module, with light around it', async () => {
  const { access } = await savedSpot(opened.host, 'demo')
  if (access.parking === null) throw new Error('the demo spot has parking')
  const address = `geo:${access.parking.lat.toFixed(6)},${access.parking.lon.toFixed(6)}`
  const code = qrcode(0, 'M')
  code.addData(address, 'Byte')
  code.make()
  const count = code.getModuleCount()
  const wanted = Array.from({ length: count + 8 }, (_, row) =>
    Array.from({ length: count + 8 }, (_unused, column) => {
      const [y, x] = [row - 4, column - 4]
      return y >= 0 && x >= 0 && y < count && x < count && code.isDark(y, x)
    }),
  )
  const page = await standalone('demo-spot-1', 'a4')
  const image = page.getByRole('img', { name: sheetWords.qrLabel(sheetWords.roles.parking) })
  const picture = (await image.screenshot({ scale: 'device' })).toString('base64')
  await page.close()
  expect(await modulesOf(picture, count + 8)).toEqual(wanted)
})

/** Which squares of a picture divided into so many by so many are dark in their middle. */
async function modulesOf(picture: string, count: number): Promise<boolean[][]> {
  const context = await newContext()
  const page = await context.newPage()
  const modules = await page.evaluate(
    async ({ data, side }) => {
      const image = new Image()
      image.src = `data:image/png;base64,${data}`
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = image.width
      canvas.height = image.height
      const context = canvas.getContext('2d')
      context?.drawImage(image, 0, 0)
      const at = (index: number, size: number): number => Math.floor(((index + 0.5) / side) * size)
      return Array.from({ length: side }, (_, row) =>
        Array.from({ length: side }, (_unused, column) => {
          const pixel = context?.getImageData(at(column, image.width), at(row, image.height), 1, 1).data
          return (pixel?.[0] ?? 255) < 128
        }),
      )
    },
    { data: picture, side: count },
  )
  await context.close()
  return modules
}

describe('the file for the phone', () => {
  let path = ''
  let name = ''
  beforeAll(async () => {
    const { permission } = await savedSpot(opened.host, 'demo')
    const whom = 'The farm at Tolvay, +44 (0)20 7946 0958, after six'
    await changeSaved(opened.host, 0, { permission: { ...permission, whom } })
    const { page } = opened
    await page.reload()
    await boardReady(page)
    await goToPage(page, 'sheet')
    await page.locator('html[data-ready=yes]').waitFor({ timeout: 60_000 })
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 60_000 }),
      page.getByRole('button', { name: sheetWords.html }).click(),
    ])
    name = download.suggestedFilename()
    path = join(folder, 'phone.html')
    await download.saveAs(path)
    await page.getByText(sheetWords.savedAs('Track below Hallow Brae.html')).waitFor()
  })

  async function onPhone(colorScheme: 'light' | 'dark'): Promise<Page> {
    const context = await newContext({
      viewport: { width: 390, height: 844 },
      offline: true,
      hasTouch: true,
      colorScheme,
    })
    const phone = await context.newPage()
    await phone.goto(pathToFileURL(path).href)
    await phone.getByRole('heading', { level: 1, name: 'Track below Hallow Brae' }).waitFor()
    return phone
  }

  test('leads to every place by a geo address and by a page of a map, and calls whom to ask', async () => {
    const phone = await onPhone('light')
    const { standpoint, stop, access } = await savedSpot(opened.host, 'demo')
    for (const [role, at] of [
      ['subject', stop.at],
      ['standpoint', standpoint.at],
      ['parking', access.parking ?? stop.at],
    ] as const) {
      const row = phone.locator('tr', { has: phone.getByRole('rowheader', { name: sheetWords.roles[role] }) })
      const app = row.getByRole('link', { name: sheetWords.phone.open })
      const [lat, lon] = ((await app.getAttribute('href')) ?? '').replace('geo:', '').split(',').map(Number)
      expect(Math.abs((lat ?? 0) - at.lat) + Math.abs((lon ?? 0) - at.lon)).toBeLessThan(2e-6)
      const web = new URL((await row.getByRole('link', { name: sheetWords.phone.page }).getAttribute('href')) ?? '')
      expect(web.protocol).toBe('https:')
      expect(Number(web.searchParams.get('mlat'))).toBeCloseTo(at.lat, 6)
      expect(Number(web.searchParams.get('mlon'))).toBeCloseTo(at.lon, 6)
      // Large enough for a thumb.
      expect((await app.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    }
    const call = phone.getByRole('link', { name: sheetWords.phone.call('+44 (0)20 7946 0958') })
    expect(await call.getAttribute('href')).toBe('tel:+442079460958')
    await phone.context().close()
  })

  test('takes a coordinate whole at one tap, and has no code of what it links to', async () => {
    const phone = await onPhone('light')
    const { standpoint } = await savedSpot(opened.host, 'demo')
    const decimal = `${standpoint.at.lat.toFixed(6)}, ${standpoint.at.lon.toFixed(6)}`
    await phone.getByText(decimal, { exact: true }).click()
    expect(await phone.evaluate(() => getSelection()?.toString().trim())).toBe(decimal)
    expect(await phone.locator('svg.qr').isVisible()).toBe(false)
    await phone.context().close()
  })

  test('is dark where the phone is, and light on paper all the same', async () => {
    const phone = await onPhone('dark')
    const brightness = (): Promise<{ paper: number; ink: number }> =>
      phone.evaluate(() => {
        const sheet = document.querySelector('.sheet')
        const style = sheet === null ? null : getComputedStyle(sheet)
        const mean = (colour = ''): number => {
          const parts = (/\d+, \d+, \d+/u.exec(colour)?.[0] ?? '').split(', ').map(Number)
          return parts.reduce((sum, part) => sum + part, 0) / 3
        }
        return { paper: mean(style?.backgroundColor), ink: mean(style?.color) }
      })
    const dark = await brightness()
    expect(dark.paper).toBeLessThan(60)
    expect(dark.ink).toBeGreaterThan(190)
    await phone.emulateMedia({ media: 'print' })
    const printed = await brightness()
    expect(printed.paper).toBe(255)
    expect(printed.ink).toBeLessThan(60)
    await phone.context().close()
  })

  test('opens from the disk with no network, fonts inside, readable at a phone’s width', async () => {
    expect(name).toBe('Track below Hallow Brae.html')
    const context = await newContext({ viewport: { width: 390, height: 844 }, offline: true, hasTouch: true })
    const phone = await context.newPage()
    const asked: string[] = []
    const said: string[] = []
    phone.on('request', (request) => {
      if (!request.url().startsWith('data:')) asked.push(request.url())
    })
    phone.on('console', (message) => said.push(message.text()))
    phone.on('pageerror', (error) => said.push(error.message))
    const address = pathToFileURL(path).href
    await phone.goto(address)
    await phone.getByRole('heading', { level: 1, name: 'Track below Hallow Brae' }).waitFor()
    const found = await phone.evaluate(async () => {
      await document.fonts.ready
      const pictures = [...document.querySelectorAll<SVGImageElement>('image')]
      return {
        fonts: [...document.fonts].filter((font) => font.status === 'loaded').map((font) => font.family),
        failed: [...document.fonts].filter((font) => font.status === 'error').length,
        pictures: pictures.map((picture) => (picture.getAttribute('href') ?? '').slice(0, 15)),
        beyond: document.documentElement.scrollWidth - innerWidth,
        high: document.documentElement.scrollHeight,
        scripts: document.scripts.length,
      }
    })
    expect(asked).toEqual([address])
    expect(said).toEqual([])
    expect(found.fonts.join(' ')).toContain('Source Sans 3')
    expect(found.fonts.join(' ')).toContain('Source Serif 4')
    expect([found.failed, found.scripts]).toEqual([0, 0])
    expect(found.pictures).toContain('data:image/png;')
    expect(found.beyond).toBeLessThanOrEqual(0)
    // One column, and all of it can be reached by scrolling.
    expect(found.high).toBeGreaterThan(1_200)
    await phone.mouse.wheel(0, 100_000)
    await expect
      .poll(() => phone.evaluate(() => Math.ceil(scrollY + innerHeight) >= document.documentElement.scrollHeight), {
        timeout: 30_000,
      })
      .toBe(true)
    await context.close()
    // Words enough to read by: no smaller than a phone's own small print.
    expect(readFileSync(path, 'utf8')).not.toContain('<script')
  })
})
