/** The ground on the map: veils over what is hidden, a preview while things move, the hills' shadow, a map drawn from elevations. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { toMercator } from '#core/geo/web-mercator.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { heightShowing, viewshed } from '#core/ground/viewshed.ts'
import { HIDDEN, SEEN } from '#core/ground/viewshed-request.ts'
import { levelsOf, planOf } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { groundMapWords as say } from '#renderer/words/en-ground-map.ts'
import { boardReady, closePlan, dragBy, savedShoot, soon } from './board.ts'
import { reloadedGround } from './ground.ts'
import { type Opened, open } from './open.ts'

let opened: Opened
let grid: ElevationGrid
beforeAll(async () => {
  opened = await open({ host: 'browser', viewport: { width: 1440, height: 900 } })
  await boardReady(opened.page)
  grid = await reloadedGround(opened)
})
afterAll(() => opened.close())

function legend() {
  return opened.page.getByLabel(say.legend)
}

async function choose(choice: keyof typeof say.choices): Promise<void> {
  const { page } = opened
  await page.getByRole('button', { name: say.show, exact: true }).click()
  await page.getByRole('radio', { name: say.choices[choice] }).check()
  await page.keyboard.press('Escape')
}

/** Share of the veil's pixels, over the whole map, that hold any ink. */
function veiled(): Promise<number> {
  return opened.page.evaluate(() => {
    let [inked, all] = [0, 0]
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('canvas.ground-veil')) {
      const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? []
      for (let at = 3; at < pixels.length; at += 4 * 7) {
        all += 1
        if ((pixels[at] ?? 0) > 0) inked += 1
      }
    }
    return all === 0 ? 0 : inked / all
  })
}

function cellNear(at: LatLon): number {
  const { east, north } = gridPoint(grid, at)
  return Math.round((grid.north - north) / grid.cell) * grid.columns + Math.round((east - grid.west) / grid.cell)
}

function placeOf(column: number, row: number): LatLon {
  return placeOnGrid(grid, grid.west + column * grid.cell, grid.north - row * grid.cell)
}

/** Cells near the window's middle that have a value, as have all within two of them. */
function cellsWithin(found: Uint8Array, value: number): { column: number; row: number }[] {
  const middle = (grid.columns - 1) / 2
  const cells: { column: number; row: number }[] = []
  for (let row = middle - 60; row <= middle + 60; row++)
    for (let column = middle - 60; column <= middle + 60; column++) {
      let agree = true
      for (let off = 0; off < 25; off++)
        agree &&= found[(row - 2 + Math.floor(off / 5)) * grid.columns + column - 2 + (off % 5)] === value
      if (agree) cells.push({ column, row })
    }
  return cells
}

/** Where places fall on the screen: the map is Mercator, and two marks on it tell where it looks and how near. */
async function places({ stop, access }: Spot): Promise<(at: LatLon) => { x: number; y: number }> {
  const markAt = async (mark: string): Promise<{ x: number; y: number }> => {
    const box = await opened.page.locator(`.plan-things ${mark}`).first().boundingBox()
    if (box === null) throw new Error(`${mark} is not in sight`)
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }
  if (access.parking === null) throw new Error('the demo has a parking point')
  const [one, other] = [toMercator(stop.at), toMercator(access.parking)]
  const [from, to] = [await markAt('.pair-ring'), await markAt('.parking-mark')]
  const scale = Math.hypot(to.x - from.x, to.y - from.y) / Math.hypot(other.east - one.east, other.north - one.north)
  return (at) => {
    const { east, north } = toMercator(at)
    return { x: from.x + (east - one.east) * scale, y: from.y - (north - one.north) * scale }
  }
}

/** Opacity of the veil at points of the screen, 0..255; null where the map shows nothing of it. */
function inkAt(points: readonly { readonly x: number; readonly y: number }[]): Promise<(number | null)[]> {
  return opened.page.evaluate((wanted) => {
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.ground-veil')
    const pen = canvas?.getContext('2d')
    const map = document.querySelector('.map-holder')?.getBoundingClientRect()
    if (canvas === null || !pen || map === undefined) return []
    const { left, top, width } = canvas.getBoundingClientRect()
    const scale = canvas.width / width
    return wanted.map(({ x, y }) => {
      if (x < map.left || x > map.right || y < map.top || y > map.bottom) return null
      return pen.getImageData(Math.floor((x - left) * scale), Math.floor((y - top) * scale), 1, 1).data[3] ?? null
    })
  }, points)
}

beforeEach(async () => {
  await opened.page.keyboard.press('Escape')
})

describe('where the landmark shows', () => {
  test('veils what the exact viewshed hides, and says how it was found', async () => {
    await choose('landmark')
    await legend().getByText(say.exact).waitFor()
    const { shoot, spots } = await savedShoot(opened.host, 'demo')
    const [spot] = spots
    if (spot === undefined) throw new Error('no spot')
    const plan = planOf(shoot, spot, grid)
    const middle = plan.landmark === null ? null : landmarkMiddle(landmarkPoints(plan.landmark))
    if (plan.landmark === null || middle === null) throw new Error('no landmark')
    const seen = viewshed(grid, {
      ...gridPoint(grid, middle),
      height: heightShowing(levelsOf(plan).landmark, plan.landmark.height, 0.5),
      targetHeight: spot.standpoint.lensHeight,
      refraction: shoot.refraction,
      radius: null,
    })
    const screenOf = await places(spot)
    const [at] = await inkAt([screenOf(spot.standpoint.at)])
    expect(seen[cellNear(spot.standpoint.at)]).toBe(SEEN)
    expect(at).toBe(0)
    // Every cell in sight that agrees with all about it, so that no edge comes near.
    for (const value of [SEEN, HIDDEN]) {
      const cells = cellsWithin(seen, value)
      const ink = await inkAt(cells.map(({ column, row }) => screenOf(placeOf(column, row))))
      const inSight = ink.filter((found) => found !== null)
      expect(inSight.length).toBeGreaterThan(40)
      expect(inSight.filter((found) => found > 0 !== (value === HIDDEN))).toEqual([])
    }
  })

  test('is called a preview while a thing moves, and exact once it stands', async () => {
    const { page } = opened
    await choose('standpoint')
    await legend().getByText(say.exact).waitFor()
    const standpoint = closePlan(page).getByRole('button', { name: /^Standpoint/u })
    await dragBy(page, standpoint, -24, 18, async () => {
      await legend()
        .getByText(/preview/u)
        .waitFor()
    })
    await legend().getByText(say.exact).waitFor()
    await page.keyboard.press('Control+z')
  })
})

describe('the hills’ shadow', () => {
  test('covers more ground under a low sun than at noon', async () => {
    const { page } = opened
    await choose('shade')
    /** Hours by the line's own keys, until the clock says so. */
    const shaded = async (key: 'PageUp' | 'PageDown', clock: string): Promise<number> => {
      const line = page.getByRole('slider', { name: /time/iu })
      const there = legend().getByText(say.shade(clock).veiled)
      await line.focus()
      for (let hour = 0; hour < 12 && !(await there.isVisible()); hour++) await line.press(key)
      await there.waitFor()
      await legend().getByText(say.shadeDone).waitFor()
      return veiled()
    }
    const noon = await shaded('PageDown', '12:30')
    const evening = await shaded('PageUp', '19:30')
    expect(evening).toBeGreaterThan(noon + 0.02)
  })
})

describe('a map drawn from the elevations', () => {
  test('is chosen among the map sources and is drawn with its own ink', async () => {
    const { page } = opened
    await choose('none')
    await page.keyboard.press('Control+,')
    await page.getByText(say.source, { exact: true }).first().click()
    await page.getByRole('button', { name: sheetWords.back }).click()
    await boardReady(page)
    await soon(() =>
      page.evaluate(() => {
        const colours = new Set<string>()
        for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.board-map canvas.base-fine')) {
          if (canvas.width === 0 || canvas.height === 0) continue
          const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? []
          for (let at = 0; at < pixels.length; at += 4096)
            colours.add(`${pixels[at]} ${pixels[at + 1]} ${pixels[at + 2]}`)
        }
        return colours.size > 20
      }),
    )
  })
})
