/** Who draws the picture through the lens: a worker, the next one when it is lost, and the page itself where there can be none. */
import { afterEach, expect, test } from 'vitest'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { boardReady } from './board.ts'
import { type Opened, open } from './open.ts'

let opened: Opened | null = null

afterEach(async () => {
  const now = opened
  opened = null
  await now?.close()
})

/** Lost workers are told on the console by the browser itself; nothing else may be. */
function forgiveLostWorkers({ troubles }: Opened): void {
  const others = troubles.filter((trouble) => !/Failed to load resource|lens-worker/u.test(trouble))
  expect(others).toEqual([])
  troubles.length = 0
}

test('a worker draws it, and the page learns what is in it', async () => {
  opened = await open({ host: 'browser' })
  const { page } = opened
  await boardReady(page)
  await page.locator('canvas.lens-canvas[data-parts~="landmark"][data-parts~="subject"]').waitFor()
  expect(await page.locator('svg.lens-canvas').count()).toBe(0)
})

test('a browser without canvases in workers gets it drawn on the page', async () => {
  opened = await open({ host: 'browser' })
  const { page, context } = opened
  await boardReady(page)
  await context.addInitScript(() => Reflect.deleteProperty(globalThis, 'OffscreenCanvas'))
  await page.reload()
  await boardReady(page)
  await page.locator('svg.lens-canvas [data-part="landmark"]').first().waitFor()
  await page.locator('svg.lens-canvas [data-part="subject"]').first().waitFor()
  expect(await page.locator('canvas.lens-canvas').count()).toBe(0)
})

test('a worker that is lost is followed by another', async () => {
  opened = await open({ host: 'browser' })
  const { page } = opened
  await boardReady(page)
  let lost = 0
  await page.route('**/lens-worker-*.js', (route) => (lost++ === 0 ? route.abort() : route.fallback()))
  await page.reload()
  await boardReady(page)
  await page.locator('canvas.lens-canvas[data-parts~="subject"]').waitFor()
  expect(lost).toBe(2)
  expect(await page.getByText(lensViewWords.drawnOnPage).count()).toBe(0)
  forgiveLostWorkers(opened)
})

test('when that is lost too, the page draws, and a line says so', async () => {
  opened = await open({ host: 'browser' })
  const { page } = opened
  await boardReady(page)
  await page.route('**/lens-worker-*.js', (route) => route.abort())
  await page.reload()
  await boardReady(page)
  await page.getByText(lensViewWords.drawnOnPage).waitFor()
  await page.locator('svg.lens-canvas [data-part="subject"]').first().waitFor()
  forgiveLostWorkers(opened)
})

test('the picture is the same in the light and in the dark theme, by day and before dawn', async () => {
  opened = await open({ host: 'browser' })
  const { page, context } = opened
  await boardReady(page)
  // By the page's own pen a picture is text, which can be compared whole.
  await context.addInitScript(() => Reflect.deleteProperty(globalThis, 'OffscreenCanvas'))
  await page.reload()
  await boardReady(page)
  const drawn = (): Promise<string> =>
    page.locator('svg.lens-canvas').evaluate((svg) => svg.innerHTML.replaceAll(/\bid="[^"]*"|url\([^)]*\)/gu, ''))
  await page.locator('svg.lens-canvas [data-part="subject"]').first().waitFor()
  const byTheme = async (): Promise<string> => {
    const pictures: string[] = []
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await expect.poll(() => page.evaluate(() => document.documentElement.dataset['theme'])).toBe(colorScheme)
      pictures.push(await drawn())
    }
    expect(pictures[1]).toBe(pictures[0])
    return pictures[0] ?? ''
  }
  const day = await byTheme()
  const time = page.getByRole('slider', { name: /time/iu })
  // An hour before sunrise.
  await time.press('Home')
  await time.press('PageDown')
  await expect.poll(drawn).not.toBe(day)
  expect(await byTheme()).not.toBe(day)
})
