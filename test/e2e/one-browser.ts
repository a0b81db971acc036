/** Starts the one browser of all end-to-end tests before the first of them and ends it after the last; tests take a context each. */
import { chromium } from 'playwright-core'
import type { TestProject } from 'vitest/node'
import { findBrowser } from '#test/help/browser.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the running browser is reached. */
    readonly browser: string
  }
}

/**
 * Off by a flag, of which Chromium takes the last alone: so first what Playwright turns off by the same and matters here, then the
 * browser's own surfaces, whose pages would be loaded and painted beside every page of ours, unseen.
 */
const OFF = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
  'SpareRendererForSitePerProcess',
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxFullPopup',
]

export const BROWSER_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${OFF.join(',')}`,
]

/** The window of a page that nothing else is asked of. */
export const USUAL_WINDOW = {
  viewport: { width: 1440, height: 900 },
  colorScheme: 'light',
  locale: 'en-GB',
  timezoneId: 'UTC',
} as const

/** How a browser of ours is started, by the tests as by the bench. */
export function launchOptions(): { executablePath: string; headless: boolean; args: string[] } {
  return { executablePath: findBrowser(), headless: true, args: BROWSER_FLAGS }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await chromium.launchServer(launchOptions())
  project.provide('browser', server.wsEndpoint())
  return () => server.close()
}
