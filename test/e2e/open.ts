/** Opens the program for an end-to-end test: the loopback host in a browser, or Electron where its binary is. */
import { resolve } from 'node:path'
import {
  _electron,
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core'
import { expect, inject } from 'vitest'
import { findHost } from '#test/help/browser.ts'
import { type RunningHost, startHost, temporaryData } from '#test/help/host.ts'
import { library } from './library.ts'
import { USUAL_WINDOW } from './one-browser.ts'

const ROOT = resolve(import.meta.dirname, '../..')

export interface OpenOptions {
  /** A data folder to go on with; without it the test gets one of its own, removed in the end. */
  readonly data?: string
  /** `browser` even where Electron is there: for what only the loopback host does. */
  readonly host?: 'any' | 'browser'
  readonly viewport?: { readonly width: number; readonly height: number }
  readonly colorScheme?: 'light' | 'dark'
  readonly locale?: string
  readonly environment?: Readonly<Record<string, string>>
  /** The answers that stand open, by their ids, where not the first alone; for the loopback host. */
  readonly answers?: readonly string[]
  /** Puts things into the library before the page opens it, which spares a reload; for the loopback host alone. */
  readonly prepare?: (host: RunningHost) => Promise<unknown>
}

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  readonly data: string
  /** Null on Electron. */
  readonly host: RunningHost | null
  /** Page errors, console errors (content policy violations land there) and requests that left the program. */
  readonly troubles: string[]
  /** Another window on the same host. */
  readonly another: () => Promise<Page>
  /** Closes everything and asserts that there was no trouble. */
  readonly close: () => Promise<void>
}

export async function open(options: OpenOptions = {}): Promise<Opened> {
  const temporary = options.data === undefined ? await temporaryData() : null
  const data = options.data ?? temporary?.folder ?? ''
  const clean = async (): Promise<void> => temporary?.remove()
  const found = options.host === 'browser' ? null : findHost()
  return found?.kind === 'electron' ? openElectron(found.path, data, options, clean) : openBrowser(data, options, clean)
}

async function openBrowser(data: string, options: OpenOptions, clean: () => Promise<void>): Promise<Opened> {
  const host = await startHost(data, options.environment)
  if (options.answers !== undefined) await library(host, 'settings.set', { openAnswers: options.answers })
  await options.prepare?.(host)
  const context = await newContext({
    ...USUAL_WINDOW,
    viewport: options.viewport ?? USUAL_WINDOW.viewport,
    colorScheme: options.colorScheme ?? USUAL_WINDOW.colorScheme,
    locale: options.locale ?? USUAL_WINDOW.locale,
    acceptDownloads: true,
  })
  const troubles: string[] = []
  await context.route('**', async (route) => {
    const url = route.request().url()
    if (new URL(url).origin === host.origin || url.startsWith('data:') || url.startsWith('blob:'))
      return route.continue()
    troubles.push(`left the program: ${url}`)
    return route.abort()
  })
  const another = async (): Promise<Page> => {
    const page = await context.newPage()
    listen(page, troubles)
    await page.goto(await host.address())
    return page
  }
  const page = await another()
  return {
    page,
    context,
    data,
    host,
    troubles,
    another,
    close: async () => {
      // What a page says while it is being taken away is no trouble of the program.
      const found = [...troubles]
      await context.close()
      await host.stop()
      await clean()
      expect(found, found.join('\n')).toEqual([])
    },
  }
}

let browser: Promise<Browser> | null = null

/** A context of its own for whoever asks: cookies, storage, caches and windows are shared with nobody, the browser with all. */
export async function newContext(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  browser ??= chromium.connect(inject('browser'))
  return (await browser).newContext(options)
}

async function openElectron(
  executablePath: string,
  data: string,
  options: OpenOptions,
  clean: () => Promise<void>,
): Promise<Opened> {
  const env = { ...process.env, ...options.environment, STANDPOINT_DATA: data } as Record<string, string>
  const program = await _electron.launch({ executablePath, args: [ROOT], env })
  const troubles: string[] = []
  const page = await program.firstWindow()
  listen(page, troubles)
  await page.setViewportSize(options.viewport ?? { width: 1440, height: 900 })
  await page.emulateMedia({ colorScheme: options.colorScheme ?? 'light' })
  return {
    page,
    context: program.context(),
    data,
    host: null,
    troubles,
    another: () => Promise.reject(new Error('The Electron shell has one window.')),
    close: async () => {
      await program.close()
      await clean()
      expect(troubles).toEqual([])
    },
  }
}

function listen(page: Page, troubles: string[]): void {
  page.on('pageerror', (error) => troubles.push(`page error: ${error.message}`))
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(`console: ${message.text()}`)
  })
}
