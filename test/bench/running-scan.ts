/** A scan that runs for the length of a measurement: over an area drawn about the demo's first spot. */
import type { Page } from 'playwright-core'
import type { Change } from '#app/contract/library.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { scanRunWords } from '#renderer/words/en-scan-run.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { savedShoot, savedSpot } from '#test/e2e/board.ts'
import { library } from '#test/e2e/library.ts'
import type { RunningHost } from '#test/help/host.ts'

export async function prepareScan(host: RunningHost): Promise<void> {
  const { lat, lon } = (await savedSpot(host, 'demo')).stop.at
  const { shoot } = await savedShoot(host, 'demo')
  const half = 0.001_3
  const points = [
    { lat: lat - half, lon: lon - half },
    { lat: lat - half, lon: lon + half },
    { lat: lat + half, lon: lon + half },
    { lat: lat + half, lon: lon - half },
  ]
  const ground: StoppingGround = { id: 'meadow', name: 'Meadow', form: 'area', points, turn: 'either-way' }
  const record = { ...shoot, stoppingGround: [ground] }
  const changes = [{ kind: 'shoot', id: shoot.id, before: shoot.revision, record } as Change]
  await library(host, 'library.apply', { changes })
}

/** Starts it beside the board. Returns what stops it, and throws if it was over before. */
export async function startScan(page: Page): Promise<() => Promise<void>> {
  await page.bringToFront()
  const part = page.getByRole('region', { name: scanWords.whereAlong })
  if (!(await part.isVisible())) await page.getByRole('button', { name: scanWords.scan, exact: true }).click()
  await part.locator('.scan-button').click()
  await part.getByRole('progressbar').waitFor()
  return async () => {
    if (!(await part.getByRole('progressbar').isVisible())) throw new Error('the scan was over before the measurement')
    await part.getByRole('button', { name: scanRunWords.stop, exact: true }).click()
    await part.getByRole('progressbar').waitFor({ state: 'detached' })
  }
}
