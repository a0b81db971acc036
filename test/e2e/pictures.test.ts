/** The README's pictures show the program as it is: each is taken again and held against the one that is there. */
import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { PNG } from 'pngjs'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { type RunningHost, startHost, temporaryData } from '#test/help/host.ts'
import { temporaryFolder } from '#test/help/temporary-folder.ts'
import { README_STATES, layTrack } from '#test/look/readme-states.ts'
import { difference, take } from '#test/look/take.ts'

const SHOWN = resolve(import.meta.dirname, '../../app/resources/pictures')
/** Share of a picture that other fonts' edges and a word or two may change; a moved column changes more. */
const SAME = 0.02

let host: RunningHost
let data: Awaited<ReturnType<typeof temporaryData>>
beforeAll(async () => {
  data = await temporaryData()
  host = await startHost(data.folder)
  await layTrack(host)
})
afterAll(async () => {
  await host.stop()
  await data.remove()
})

// The scan's takes a scan's time; its panel has tests of its own.
test.each(README_STATES.filter(({ name }) => name !== 'scan'))('$name', async (state) => {
  const browser = await chromium.connect(inject('browser'))
  const folder = temporaryFolder()
  await take(browser, host, state, folder)
  const [before, now] = [SHOWN, folder].map((where) => PNG.sync.read(readFileSync(join(where, `${state.name}.png`))))
  if (before === undefined || now === undefined) throw new Error('no picture')
  expect(difference(before, now), 'npm run pictures takes them again').toBeLessThan(SAME)
})
