/** Drawn ground in a real browser: lines and areas by pointer and by keys, points dragged, ways taken over, files brought in. */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Locator, Page } from 'playwright-core'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { lineLength } from '#core/geo/line-length.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'
import { headerWords } from '#renderer/words/en-header.ts'
import { words } from '#renderer/words/en.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'
import { boardReady, dragBy, savedShoot, soon } from './board.ts'
import { type Opened, open } from './open.ts'

let opened: Opened
beforeAll(async () => {
  opened = await open({ host: 'browser' })
  const { page } = opened
  await boardReady(page)
  await page.getByRole('button', { name: mapWords.collapse }).click()
  await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
  await page.getByText(say.empty).waitFor()
})
afterAll(() => opened.close())

async function saved(): Promise<Shoot> {
  return (await savedShoot(opened.host, 'demo')).shoot
}

async function savedOnce(before: Shoot): Promise<Shoot> {
  await soon(async () => (await saved()).revision > before.revision)
  return saved()
}

/** A place in the map's window, as shares of its width and height. */
async function spot(page: Page, across: number, down: number): Promise<[number, number]> {
  const box = await page.locator('.map-holder').boundingBox()
  if (box === null) throw new Error('the map is not in sight')
  return [box.x + box.width * across, box.y + box.height * down]
}

/** Presses so far apart that no two are a double press. */
async function press(page: Page, ...places: readonly (readonly [number, number])[]): Promise<void> {
  for (const [across, down] of places) {
    // One after the other, as a hand does.
    // oxlint-disable-next-line no-await-in-loop
    await page.mouse.click(...(await spot(page, across, down)))
  }
}

function note(page: Page): Locator {
  return page.locator('.draw-note')
}

function row(page: Page, name: string): Locator {
  return page.getByRole('listitem').filter({ has: page.getByRole('button', { name: new RegExp(`^${name}`, 'u') }) })
}

function handles(page: Page, kind: 'point' | 'leg'): Locator {
  return page.locator(`.grab-drawn-${kind}`)
}

beforeEach(async () => {
  await opened.page.keyboard.press('Escape')
  await note(opened.page).waitFor({ state: 'detached' })
})

describe('by pointer', () => {
  test('a line is drawn point by point, ended by Enter, undone and redone', async () => {
    const { page } = opened
    const before = await saved()
    await page.getByRole('button', { name: say.draw.stopping.line, exact: true }).click()
    await note(page).getByText(say.begin.line).waitFor()
    await press(page, [0.3, 0.35], [0.45, 0.3], [0.5, 0.5], [0.6, 0.45])
    await note(page)
      .getByText(/^4 points, /u)
      .waitFor()
    await page.keyboard.press('Backspace')
    await note(page)
      .getByText(/^3 points, /u)
      .waitFor()
    await page.keyboard.press('Enter')
    const after = await savedOnce(before)
    expect(after.revision).toBe(before.revision + 1)
    const [line] = after.stoppingGround
    expect(line).toMatchObject({ form: 'line', name: '', turn: 'either-way' })
    expect(line?.points).toHaveLength(3)
    await row(page, say.unnamed.stopping(1)).getByText(say.turns['either-way']).first().waitFor()
    await expect.poll(() => handles(page, 'point').count()).toBe(3)
    await page.keyboard.press('Control+z')
    await soon(async () => (await saved()).stoppingGround.length === 0)
    await page.getByText(say.empty).waitFor()
    await page.keyboard.press('Control+Shift+z')
    await soon(async () => (await saved()).stoppingGround.length === 1)
  })

  test('an area that crosses itself is refused with a sentence, mended and ended by a double press, and the map stays', async () => {
    const { page } = opened
    const before = await saved()
    const scale = (): Promise<string | null> => page.locator('.scale-bar').first().getAttribute('aria-label')
    const here = await scale()
    await page.getByRole('button', { name: mapWords.farther, exact: true }).click()
    await soon(async () => (await scale()) !== here)
    const farther = await scale()
    await page.getByRole('button', { name: mapWords.nearer, exact: true }).click()
    await soon(async () => (await scale()) === here)
    await page.getByRole('button', { name: say.draw.stopping.area, exact: true }).click()
    await press(page, [0.15, 0.2], [0.3, 0.32], [0.3, 0.2], [0.15, 0.32])
    await page.keyboard.press('Enter')
    await note(page).getByRole('alert').getByText(say.faults['crosses-itself'].area).waitFor()
    await note(page).getByRole('button', { name: say.takeBack }).click()
    await note(page).getByRole('button', { name: say.takeBack }).click()
    await note(page)
      .getByText(/^2 points/u)
      .waitFor()
    await page.mouse.dblclick(...(await spot(page, 0.2, 0.38)))
    const after = await savedOnce(before)
    expect(after.revision).toBe(before.revision + 1)
    expect(after.stoppingGround.at(-1)).toMatchObject({ form: 'area', turn: 'free' })
    expect(after.stoppingGround.at(-1)?.points).toHaveLength(3)
    // Had the double press brought the map nearer, one step back would not lead farther than before.
    await page.getByRole('button', { name: mapWords.farther, exact: true }).click()
    await soon(async () => (await scale()) === farther)
    await page.getByRole('button', { name: mapWords.nearer, exact: true }).click()
    await soon(async () => (await scale()) === here)
  })

  test('an outline is closed by a press on its first corner', async () => {
    const { page } = opened
    const before = await saved()
    await page.getByRole('button', { name: say.draw['keep-out'].area, exact: true }).click()
    await press(page, [0.15, 0.2], [0.3, 0.25], [0.2, 0.4])
    const [x, y] = await spot(page, 0.15, 0.2)
    await page.mouse.click(x + 4, y + 3)
    const after = await savedOnce(before)
    expect(after.keepOuts.at(-1)?.points).toHaveLength(3)
    await page.keyboard.press('Control+z')
    await soon(async () => (await saved()).keepOuts.length === before.keepOuts.length)
  })

  test('too few points save nothing, and Escape gives up', async () => {
    const { page } = opened
    const before = await saved()
    await page.getByRole('button', { name: say.draw['keep-out'].area, exact: true }).click()
    await press(page, [0.15, 0.2], [0.3, 0.32])
    await note(page).getByRole('button', { name: say.finish }).click()
    await note(page).getByRole('alert').getByText(say.faults['too-few'].area).waitFor()
    await page.keyboard.press('Escape')
    await note(page).waitFor({ state: 'detached' })
    expect(await saved()).toEqual(before)
  })
})

describe('the chosen one', () => {
  test('has its points dragged, one more put in and taken out, each as one edit that is undone', async () => {
    const { page } = opened
    await row(page, say.unnamed.stopping(1)).getByRole('button').first().click()
    await expect.poll(() => handles(page, 'point').count()).toBe(3)
    const before = await saved()
    const pointsBefore = before.stoppingGround[0]?.points ?? []
    await dragBy(page, handles(page, 'point').first(), -30, 40)
    const dragged = await savedOnce(before)
    const pointsDragged = dragged.stoppingGround[0]?.points ?? []
    expect(pointsDragged.slice(1)).toEqual(pointsBefore.slice(1))
    expect(pointsDragged[0]).not.toEqual(pointsBefore[0])
    await dragBy(page, handles(page, 'leg').first(), 0, 50)
    const longer = await savedOnce(dragged)
    expect(longer.stoppingGround[0]?.points).toHaveLength(4)
    expect(lineLength(longer.stoppingGround[0]?.points ?? [])).toBeGreaterThan(lineLength(pointsDragged))
    await handles(page, 'point').nth(1).focus()
    await page.keyboard.press('Delete')
    const shorter = await savedOnce(longer)
    expect(shorter.stoppingGround[0]?.points).toEqual(pointsDragged)
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await expect.poll(async () => (await saved()).stoppingGround[0]?.points, { timeout: 30_000 }).toEqual(pointsBefore)
  })

  test('is chosen on the map too, opens in the list, and is turned about and named', async () => {
    const { page } = opened
    const list = row(page, say.unnamed.stopping(1))
    const head = list.getByRole('button').first()
    if ((await head.getAttribute('aria-expanded')) === 'true') await head.click()
    await page.getByRole('button', { name: new RegExp(`^${say.unnamed.stopping(1)}, line`, 'u') }).focus()
    await page.keyboard.press('Enter')
    await soon(async () => (await head.getAttribute('aria-expanded')) === 'true')
    const before = await saved()
    await list.getByRole('combobox', { name: say.turn }).selectOption('along')
    const along = await savedOnce(before)
    await list.getByRole('button', { name: say.reverseSpoken(say.unnamed.stopping(1)) }).click()
    const reversed = await savedOnce(along)
    expect(reversed.stoppingGround[0]?.points).toEqual(along.stoppingGround[0]?.points.toReversed())
    await list.getByRole('textbox', { name: say.name }).fill('Gravel lay-by')
    await page.keyboard.press('Enter')
    await row(page, 'Gravel lay-by').waitFor()
    expect((await savedOnce(reversed)).stoppingGround[0]?.name).toBe('Gravel lay-by')
  })

  test('whose outline a hand makes cross itself is put back', async () => {
    const { page } = opened
    await row(page, say.unnamed.stopping(2)).getByRole('button').first().click()
    const before = await saved()
    await handles(page, 'leg').first().focus()
    await page.keyboard.press('Enter')
    const more = await savedOnce(before)
    const corners = handles(page, 'point')
    await expect.poll(() => corners.count()).toBe(4)
    const [from, over] = [await corners.nth(0).boundingBox(), await corners.nth(2).boundingBox()]
    if (from === null || over === null) throw new Error('the corners are in sight')
    // Far over the side that lies opposite.
    await dragBy(page, corners.nth(1), (over.x - from.x) * 3, (over.y - from.y) * 6)
    await page.getByText(new RegExp(say.notKept, 'u')).waitFor()
    expect(await saved()).toEqual(more)
    await expect.poll(() => corners.count()).toBe(4)
  })
})

test('by keys alone a keep-out line is drawn: arrows move the map, Space sets points, Enter ends', async () => {
  const { page } = opened
  const before = await saved()
  await page.getByRole('combobox', { name: say.nextKind }).selectOption('rail')
  await page.getByRole('button', { name: say.draw['keep-out'].line, exact: true }).focus()
  await page.keyboard.press('Space')
  await note(page).getByText(say.keysHint).waitFor()
  await page.keyboard.press('Space')
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Space')
  await note(page)
    .getByText(/^2 points, /u)
    .waitFor()
  await page.keyboard.press('Enter')
  const [line] = (await savedOnce(before)).keepOuts
  expect(line).toMatchObject({ kind: 'rail', form: 'line', width: 12, whom: 'both', noCrossing: true })
  const [from, to] = line?.points ?? []
  if (from === undefined || to === undefined) throw new Error('the line has two ends')
  expect(to.lon).toBeGreaterThan(from.lon)
  expect(to.lat).toBeLessThan(from.lat)
  // 160 pixels to the right and 8 down.
  const [east, south] = [
    geodesicDistance(from, { ...to, lat: from.lat }),
    geodesicDistance(from, { ...from, lat: to.lat }),
  ]
  expect(east / south).toBeCloseTo(20, 0)
  const button = page.getByRole('button', { name: say.draw['keep-out'].line, exact: true })
  await soon(() => button.evaluate((element) => element === document.activeElement))
})

test('a keep-out says what it is, how wide, whom it keeps out and whether anybody steps across', async () => {
  const { page } = opened
  const list = row(page, say.unnamed['keep-out'](1))
  await list.getByRole('combobox', { name: say.kind }).selectOption('fence')
  await soon(async () => (await saved()).keepOuts[0]?.width === 0.5)
  await list.getByRole('textbox', { name: new RegExp(`^${say.width}`, 'u') }).fill('-3')
  await page.keyboard.press('Enter')
  await list.getByRole('alert').getByText(/./u).waitFor()
  await list.getByRole('textbox', { name: new RegExp(`^${say.width}`, 'u') }).fill('1.2')
  await page.keyboard.press('Enter')
  await list.getByRole('combobox', { name: say.whom }).selectOption('camera')
  await list.getByRole('checkbox', { name: say.noCrossing }).uncheck()
  await soon(async () => {
    const [one] = (await saved()).keepOuts
    return one?.width === 1.2 && one.whom === 'camera' && !one.noCrossing && one.kind === 'fence'
  })
})

describe('taken from the sketch map', () => {
  test('a road becomes stopping ground with a press, and nothing is taken where nothing is', async () => {
    const { page } = opened
    await page.getByRole('button', { name: mapWords.fitPlan }).click()
    const before = await saved()
    await page.getByRole('button', { name: say.takeSpoken.stopping }).click()
    await note(page).getByText(say.pressWay.stopping).waitFor()
    // The parking of the demo's spot lies where its track leaves the road; the road goes on from there both ways.
    const parking = await page.getByRole('button', { name: mapWords.parkingNamed }).boundingBox()
    if (parking === null) throw new Error('the parking is in sight')
    await page.mouse.click(...(await spot(page, 0.75, 0.6)))
    await note(page).getByRole('alert').getByText(say.nothingThere).waitFor()
    const [x, y] = [parking.x + parking.width / 2, parking.y + parking.height / 2]
    await page.mouse.move(x, y)
    await page.locator('.draw-preview .draw-line').waitFor({ state: 'attached' })
    await page.mouse.click(x, y)
    const after = await savedOnce(before)
    expect(after.stoppingGround).toHaveLength(before.stoppingGround.length + 1)
    const taken = after.stoppingGround.at(-1)
    expect([say.taken['road'], say.taken['track'], say.taken['minor']]).toContain(taken?.name)
    expect(lineLength(taken?.points ?? [])).toBeGreaterThan(50)
    await note(page).getByRole('button', { name: say.enough }).click()
    await note(page).waitFor({ state: 'detached' })
  })

  test('what is taken too long is cut off at one of its points', async () => {
    const { page } = opened
    const before = await saved()
    const points = before.stoppingGround.at(-1)?.points ?? []
    const inner = handles(page, 'point').nth(2)
    const name = (await inner.getAttribute('aria-label')) ?? ''
    const [, number = 0] = (/(\d+)/u.exec(name) ?? []).map(Number)
    await inner.focus()
    await page.getByRole('button', { name: say.cutBeyond }).click()
    const shorter = await savedOnce(before)
    expect(shorter.stoppingGround.at(-1)?.points).toEqual(points.slice(0, number))
    await page.keyboard.press('Control+z')
    await expect.poll(async () => (await saved()).stoppingGround.at(-1)?.points, { timeout: 30_000 }).toEqual(points)
  })

  test('by keys alone: the map is moved until a way lies under the cross-hair, Space takes it', async () => {
    const { page } = opened
    const before = await saved()
    await page.getByRole('button', { name: say.takeSpoken['keep-out'] }).focus()
    await page.keyboard.press('Enter')
    await note(page).getByText(say.keysTake).waitFor()
    const under = page.locator('.draw-preview .draw-line')
    for (let step = 0; step < 60 && (await under.count()) === 0; step++) await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Space')
    const after = await savedOnce(before)
    expect(after.keepOuts).toHaveLength(before.keepOuts.length + 1)
    expect(Object.values(say.taken)).toContain(after.keepOuts.at(-1)?.name)
    await page.keyboard.press('Escape')
    await note(page).waitFor({ state: 'detached' })
  })
})

describe('a GeoJSON file', () => {
  const bring = (page: Page, name: string, text: string): Promise<void> =>
    page
      .getByLabel(say.fileSpoken['keep-out'])
      .setInputFiles({ name, mimeType: 'application/geo+json', buffer: Buffer.from(text) })

  test('is brought in as one edit, with its names, and tells what it left out', async () => {
    const { page } = opened
    const before = await saved()
    const [here] = before.stoppingGround[0]?.points ?? []
    if (here === undefined) throw new Error('something is drawn')
    const at = (east: number, north: number): [number, number] => [here.lon + east / 1e5, here.lat + north / 1e5]
    const ring = [at(0, 0), at(90, 0), at(90, 60), at(0, 60), at(0, 0)]
    const feature = (type: string, coordinates: unknown, properties: object = {}): object => ({
      type: 'Feature',
      properties,
      geometry: { type, coordinates },
    })
    const features = [
      feature('Polygon', [ring], { name: 'Barley' }),
      feature('LineString', ring.slice(0, 2)),
      feature('Point', at(0, 0)),
    ]
    await page.getByRole('combobox', { name: say.nextKind }).selectOption('crops')
    await bring(page, 'fields.geojson', JSON.stringify({ type: 'FeatureCollection', features }))
    await page.getByText(`${say.readFile('fields.geojson', 2)} ${say.notes.points(1)}`).waitFor()
    const after = await savedOnce(before)
    expect(after.keepOuts.slice(before.keepOuts.length)).toMatchObject([
      { name: 'Barley', kind: 'crops', form: 'area' },
      { name: '', kind: 'crops', form: 'line', width: 10 },
    ])
    await row(page, 'Barley').waitFor()
    await page.getByRole('button', { name: words.board.undo, exact: true }).last().click()
    await soon(async () => (await saved()).keepOuts.length === before.keepOuts.length)
  })

  test.each([
    ['letter.geojson', 'Dear all,', /is not GeoJSON/u],
    [
      'metres.geojson',
      '{"type":"LineString","coordinates":[[649000,5254000],[649100,5254000]]}',
      /perhaps metres of a map/u,
    ],
  ])('that is broken says how: %s', async (name, text, sentence) => {
    const { page } = opened
    const before = await saved()
    await bring(page, name, text)
    await page.getByText(new RegExp(`${say.fileFault(name, '')}.*${sentence.source}`, 'u')).waitFor()
    expect(await saved()).toEqual(before)
  })

  /** Teeth one above the other, far more than an area may have corners: over 3 MB. */
  const comb = (): string => {
    const teeth = Array.from({ length: 42_000 }, (_, tooth) => {
      const lat = 46 + tooth * 1e-6
      return [
        [-33.6, lat],
        [-33.59, lat],
        [-33.59, lat + 5e-7],
        [-33.599_999, lat + 5e-7],
      ]
    }).flat()
    const around = [[-33.61, 46.05], [-33.61, 45.9999], [-33.6, 45.9999], teeth[0]]
    return JSON.stringify({ type: 'Polygon', coordinates: [[...teeth, ...around]] })
  }

  test('of a hundred thousand teeth leaves the page free, and is read', async () => {
    const { page } = opened
    const before = await saved()
    // The longest that the page gave no turn to anything else.
    await page.evaluate(() => {
      let last = performance.now()
      const meter = globalThis as unknown as { longestStop: number }
      meter.longestStop = 0
      const turn = (): void => {
        const now = performance.now()
        meter.longestStop = Math.max(meter.longestStop, now - last)
        last = now
        setTimeout(turn, 0)
      }
      turn()
    })
    const text = comb()
    expect(text.length).toBeGreaterThan(3_000_000)
    // From the disk: handed over as bytes, the test itself would keep the page busy.
    const path = join(temporaryFolder(), 'comb.geojson')
    writeFileSync(path, text)
    await page.getByLabel(say.fileSpoken['keep-out']).setInputFiles(path)
    await page.getByText(new RegExp(say.readFile('comb.geojson', 1), 'u')).waitFor()
    const longest = await page.evaluate(() => (globalThis as unknown as { longestStop: number }).longestStop)
    expect(longest).toBeLessThan(1_500)
    await page.getByRole('button', { name: words.board.undo, exact: true }).last().click()
    await soon(async () => (await saved()).keepOuts.length === before.keepOuts.length)
  })

  test('can be stopped while it is read, and nothing comes of it', async () => {
    const { page } = opened
    const before = await saved()
    // The worker is begun, but never gets its script: a reading without an end.
    await page.route(/geojson-worker/u, () => undefined)
    await bring(page, 'endless.geojson', '{}')
    await page.getByText(say.reading('endless.geojson')).waitFor()
    await page.getByRole('button', { name: say.stopReadingSpoken('endless.geojson') }).click()
    await page.getByText(say.stoppedReading('endless.geojson')).waitFor()
    expect(await page.getByText(say.reading('endless.geojson')).count()).toBe(0)
    await page.unroute(/geojson-worker/u)
    expect(await saved()).toEqual(before)
  })

  test('that is too large is not even read', async () => {
    const { page } = opened
    await bring(page, 'large.geojson', ' '.repeat(5_000_001))
    await page.getByText(say.tooLarge('large.geojson')).waitFor()
  })
})

test('nothing drawn is on the map once the panel is closed, and a drawing under way is dropped', async () => {
  const { page } = opened
  const before = await saved()
  await page.getByRole('button', { name: say.draw.stopping.line, exact: true }).click()
  await press(page, [0.3, 0.35])
  await page.getByRole('button', { name: headerWords.board, exact: true }).click()
  await page.getByRole('heading', { name: words.answers.whichLens }).waitFor()
  await note(page).waitFor({ state: 'detached' })
  expect(await page.locator('.drawn-pick').count()).toBe(0)
  expect(await saved()).toEqual(before)
})
