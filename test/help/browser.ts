/** Finds the browser of the end-to-end tests, and poppler for the PDF ones, or fails with a sentence. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { electronBinary } from '#app/electron-binary.ts'
import { installDebian, isProgram, onPath } from './found.ts'

export interface Found {
  readonly kind: 'electron' | 'browser'
  readonly path: string
}

/** The engine alone, which comes first: without the browser's own windows and pages each test has more of the machine. */
const ENGINE = 'chromium-headless-shell'

const NAMES = [
  'google-chrome',
  'google-chrome-stable',
  'chromium',
  'chromium-browser',
  'microsoft-edge',
  'microsoft-edge-stable',
]

const MAC_PATHS = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
]

const WINDOWS_PATHS = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe']

/** Electron's own binary first, since it is the product; then what is installed; then what can be fetched. */
export function findHost(): Found {
  const electron = electronBinary()
  return electron === null ? { kind: 'browser', path: findBrowser() } : { kind: 'electron', path: electron }
}

export function findBrowser(): string {
  return (namedOne() === null ? onPath(ENGINE) : null) ?? findWholeBrowser()
}

/** One with all that a user's has, such as a history of its own. */
export function findWholeBrowser(): string {
  const found = installed() ?? playwrights() ?? fetched() ?? debians()
  if (found !== null) return found
  throw new Error(
    'The end-to-end tests need a browser and none could be had. Install Chromium, Chrome or Edge, ' +
      'or name its program in the environment variable STANDPOINT_BROWSER.',
  )
}

function namedOne(): string | null {
  const named = process.env['STANDPOINT_BROWSER']
  return named === undefined || named === '' ? null : named
}

function installed(): string | null {
  const named = namedOne()
  if (named !== null) return isProgram(named) ? named : null
  for (const name of NAMES) {
    const path = onPath(name)
    if (path !== null) return path
  }
  const windows = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((variable) =>
    WINDOWS_PATHS.map((path) => join(process.env[variable] ?? '', path)),
  )
  const places = process.platform === 'darwin' ? MAC_PATHS : process.platform === 'win32' ? windows : []
  return places.find(isProgram) ?? null
}

/** The browser Playwright itself would use, where it was fetched before. */
function playwrights(): string | null {
  const path = chromium.executablePath()
  return existsSync(path) && starts(path) ? path : null
}

function fetched(): string | null {
  process.stdout.write('No browser is installed: asking Playwright to fetch one …\n')
  const tool = resolve(import.meta.dirname, '../../node_modules/playwright-core/cli.js')
  const run = spawnSync(process.execPath, [tool, 'install', 'chromium'], { stdio: 'ignore', timeout: 300_000 })
  return run.status === 0 ? playwrights() : null
}

function debians(): string | null {
  return installDebian('chromium') ? onPath('chromium') : null
}

/** A fetched browser may lack the system's libraries. */
function starts(path: string): boolean {
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 30_000 }).status === 0
}

/** Path of one of poppler's programs, which read back the printed sheet. */
export function findPoppler(name: 'pdftoppm' | 'pdftotext' | 'pdfinfo'): string {
  const path = onPath(name) ?? (installDebian('poppler-utils') ? onPath(name) : null)
  if (path !== null) return path
  throw new Error(`The tests of the printed sheet need ${name}. Install poppler (Debian: the package poppler-utils).`)
}
