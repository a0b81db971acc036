/** What axe-core finds wrong with the page as it stands, in words short enough to read in a report. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/**
 * Every rule that axe has on. It runs in the page itself: its other way gathers the findings of each frame in a second page, and
 * carrying over the thousands of places that are well costs four times the judging. So there must be one frame alone.
 */
export async function axeFindings(page: Page, within?: string): Promise<string[]> {
  expect(page.frames()).toHaveLength(1)
  const builder = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] })
  const { violations } = await (within === undefined ? builder : builder.include(within)).analyze()
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes.map((node) => `${node.target.join(' ')} (${node.any[0]?.message ?? ''})`).join('; ')}`,
  )
}
