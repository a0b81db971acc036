/** Takes the picture of one state of the program, and says how much of two pictures differs. */
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { PNG } from 'pngjs'
import { glanceWords } from '#renderer/words/en-glance.ts'
import type { RunningHost } from '#test/help/host.ts'
import type { LookState } from './states.ts'

/** Milliseconds without any change on the page after which it counts as still. */
const STILL = 1_500
/** Of 255 in any colour: what anti-aliasing leaves between two paintings of the same. */
const SAME_COLOUR = 32

async function untilStill(page: Page): Promise<void> {
  await page.evaluate(
    (still) =>
      new Promise<void>((resolved) => {
        let timer = setTimeout(resolved, still)
        new MutationObserver(() => {
          clearTimeout(timer)
          timer = setTimeout(resolved, still)
        }).observe(document, { subtree: true, childList: true, attributes: true, characterData: true })
      }),
    STILL,
  )
}

export async function take(browser: Browser, host: RunningHost, state: LookState, folder: string): Promise<void> {
  const { width, height, scale, theme, name, go } = state
  const context = await browser.newContext({
    viewport: { width, height },
    deviceScaleFactor: scale,
    colorScheme: theme,
    locale: 'en-GB',
    timezoneId: 'UTC',
    reducedMotion: 'reduce',
  })
  const page = await context.newPage()
  await page.goto(await host.address())
  // Told once the elevations are there: before it the page may stand still on a busy machine.
  await page.locator('.answer-figure', { hasText: glanceWords.shows('') }).waitFor({ timeout: 60_000 })
  await untilStill(page)
  await go(page)
  await untilStill(page)
  await page.screenshot({ path: join(folder, `${name}.png`) })
  await context.close()
}

/** Share of pixels that differ by more than painting again makes them; 1 for another size. */
export function difference(one: PNG, other: PNG): number {
  if (one.width !== other.width || one.height !== other.height) return 1
  let count = 0
  for (let at = 0; at < one.data.length; at += 4) {
    const most = Math.max(
      ...[0, 1, 2].map((channel) => Math.abs((one.data[at + channel] ?? 0) - (other.data[at + channel] ?? 0))),
    )
    if (most > SAME_COLOUR) count += 1
  }
  return count / (one.width * one.height)
}
