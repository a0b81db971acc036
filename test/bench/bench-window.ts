/** Boards of the bench: one browser for all, a host and a window of its own for each, over the ground and shoot given to it. */
import { type Browser, type BrowserContext, type Page, chromium } from 'playwright-core'
import { boardReady } from '#test/e2e/board.ts'
import { USUAL_WINDOW, launchOptions } from '#test/e2e/one-browser.ts'
import { type RunningHost, startHost, temporaryData } from '#test/help/host.ts'

export function startBrowser(): Promise<Browser> {
  return chromium.launch(launchOptions())
}

export function usualContext(browser: Browser): Promise<BrowserContext> {
  return browser.newContext(USUAL_WINDOW)
}

export interface BoardWindow {
  readonly page: Page
  readonly host: RunningHost
  readonly close: () => Promise<void>
}

export interface Preparation {
  /** Before the host starts: what lies in its data folder. */
  readonly files?: (dataFolder: string) => Promise<unknown>
  /** Before the page opens: what is in the library. */
  readonly records?: (host: RunningHost) => Promise<unknown>
}

export async function openBoard(browser: Browser, { files, records }: Preparation = {}): Promise<BoardWindow> {
  const data = await temporaryData()
  await files?.(data.folder)
  const host = await startHost(data.folder)
  await records?.(host)
  const context = await usualContext(browser)
  const page = await context.newPage()
  await page.goto(await host.address())
  await boardReady(page)
  return {
    page,
    host,
    close: async () => {
      await context.close()
      await host.stop()
      await data.remove()
    },
  }
}
