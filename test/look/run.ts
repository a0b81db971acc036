/**
 * `npm run look -- before` takes pictures of every state into test/shots/before; `npm run look -- before after` says how two such
 * folders differ, picture by picture; `npm run pictures` takes the README's.
 */
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { PNG } from 'pngjs'
import { buildParts } from '#app/build.ts'
import { launchOptions } from '#test/e2e/one-browser.ts'
import { type RunningHost, startHost, temporaryData } from '#test/help/host.ts'
import { README_STATES, layTrack } from './readme-states.ts'
import { type LookState, STATES } from './states.ts'
import { difference, take } from './take.ts'

const README_PICTURES = resolve(import.meta.dirname, '../../app/resources/pictures')
const SHOTS = resolve(import.meta.dirname, '../shots')
/** Share of a picture that may differ by more than painting again makes it. */
const SAME_PICTURE = 0.002

interface Album {
  readonly folder: string
  readonly states: readonly LookState[]
  /** What lies in the library beside the demo. */
  readonly prepare?: (host: RunningHost) => Promise<void>
}

async function takeAll({ folder, states, prepare }: Album): Promise<void> {
  await buildParts('stale')
  mkdirSync(folder, { recursive: true })
  const data = await temporaryData()
  const host = await startHost(data.folder)
  await prepare?.(host)
  const browser = await chromium.launch(launchOptions())
  // oxlint-disable-next-line no-await-in-loop -- one after the other, so that none waits for another's processor
  for (const state of states) await take(browser, host, state, folder)
  await browser.close()
  await host.stop()
  await data.remove()
  process.stdout.write(`${states.length} pictures in ${folder}\n`)
}

function compareAll(one: string, other: string): boolean {
  const read = (folder: string, name: string): PNG => PNG.sync.read(readFileSync(join(SHOTS, folder, name)))
  const names = readdirSync(join(SHOTS, one)).filter((name) => name.endsWith('.png'))
  const lines = names.map((name) => ({ name, share: difference(read(one, name), read(other, name)) }))
  for (const { name, share } of lines.toSorted((a, b) => b.share - a.share))
    process.stdout.write(
      `${(share * 100).toFixed(2).padStart(6)} % ${share > SAME_PICTURE ? 'differs' : 'agrees '} ${name}\n`,
    )
  writeFileSync(join(SHOTS, 'difference.json'), JSON.stringify(lines, null, 1))
  return lines.every(({ share }) => share <= SAME_PICTURE)
}

const [first, second] = process.argv.slice(2)
if (first === undefined) process.stdout.write('Name a folder to take pictures into, or two to compare.\n')
else if (first === '--readme') await takeAll({ folder: README_PICTURES, states: README_STATES, prepare: layTrack })
else if (second === undefined) await takeAll({ folder: join(SHOTS, first), states: STATES })
else process.exitCode = compareAll(first, second) ? 0 : 1
