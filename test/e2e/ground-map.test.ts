/** The ground on the map: veils over what is hidden, a preview while things move, the hills' shadow, a map drawn from elevations. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { HIDDEN, SEEN, heightShowing, viewshed } from '#core/ground/viewshed.ts'
import { levelsOf, planOf } from '#core/plan/plan.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/shell.ts'
import { sheetWords } from '#renderer/words/en-sheet.ts'
import { groundMapWords as say } from '#renderer/words/en-ground-map.ts'
import { boardReady, closePlan, dragBy, savedShoot, soon } from './board.ts'
import { reloadedGround } from './ground.ts'
import { type Opened, open } from './open.ts'
import { changeSaved } from './shelf.ts'

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

beforeEach(async () => {
  await opened.page.keyboard.press('Escape')
})

describe('where the landmark shows', () => {
  test('veils what the exact viewshed hides, and says how it was found', async () => {
    await choose('landmark')
    await legend().getByText(say.exact).waitFor()
    expect(await veiled()).toBeGreaterThan(0.02)
    // The engine agrees that this spot sees its landmark, and that the far side of the hill does not.
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
    const at = gridPoint(grid, spot.standpoint.at)
    const cell =
      Math.round((grid.north - at.north) / grid.cell) * grid.columns + Math.round((at.east - grid.west) / grid.cell)
    expect(seen[cell]).toBe(SEEN)
    expect(seen.filter((one) => one === HIDDEN).length).toBeGreaterThan(1000)
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
    await choose('none')
    const shaded = async (hour: number): Promise<number> => {
      // By the island's clock, two hours behind UTC.
      const when = Date.UTC(2027, 5, 14, hour + 2)
      await changeSaved(opened.host, 0, { when })
      await page.reload()
      await boardReady(page)
      await choose('shade')
      await legend().getByText(say.shadeDone).waitFor()
      return veiled()
    }
    const noon = await shaded(12)
    const evening = await shaded(19)
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
        for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.board-map canvas.ground-tile')) {
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
