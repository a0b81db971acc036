/** What the README shows: the demo in three states, each as a user would bring it about. */
import type { Page } from 'playwright-core'
import type { Change } from '#app/contract/library.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { savedShoot } from '#test/e2e/board.ts'
import { library } from '#test/e2e/library.ts'
import { demoTrack } from '#test/e2e/demo-track.ts'
import { goToPage } from '#test/e2e/pages.ts'
import type { RunningHost } from '#test/help/host.ts'
import type { LookState } from './states.ts'

/** Milliseconds for what takes the longest: a scan of the track on a busy machine. */
const PATIENCE = 120_000

const LIGHT = { width: 1440, height: 900, scale: 1, theme: 'light' } as const

async function scanTrack(page: Page): Promise<void> {
  await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
  const part = page.getByRole('region', { name: scanWords.whereAlong })
  await part.locator('.scan-button').click()
  await part.getByRole('progressbar').waitFor()
  await part.getByRole('progressbar').waitFor({ state: 'detached', timeout: PATIENCE })
  await part.getByRole('heading', { name: scanWords.whereAlong }).evaluate((heading) => heading.scrollIntoView())
}

export const README_STATES: readonly LookState[] = [
  { ...LIGHT, name: 'board', go: () => Promise.resolve() },
  { ...LIGHT, name: 'scan', go: scanTrack },
  { ...LIGHT, name: 'sheet', width: 1000, height: 1260, go: (page) => goToPage(page, 'sheet') },
]

/** The track on which the demo's first spot stops lies ready to be scanned; a board without the scan looks as ever. */
export async function layTrack(host: RunningHost): Promise<void> {
  const { shoot } = await savedShoot(host, 'demo')
  const record = { ...shoot, stoppingGround: [await demoTrack(host)] }
  await library(host, 'library.apply', {
    changes: [{ kind: 'shoot', id: shoot.id, before: shoot.revision, record } as Change],
  })
}
