/** The cold start: from the host's start and from the page's opening to pins and to a painted map, and how much the first view fetches. */
import { readFileSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Browser } from 'playwright-core'
import { startHost, temporaryData } from '#test/help/host.ts'
import { openAnchor } from './anchor-page.ts'
import { startBrowser, usualContext } from './bench-window.ts'
import { type BenchRow, median } from './measure.ts'
import { MILESTONES, type Milestone, markMilestones } from './milestones.ts'

const BUILT = resolve(import.meta.dirname, '../../out/page')
const ROUNDS = 5

/** What the first view fetches: the page's own entry with everything it imports at once, its style, compressed. */
function firstViewBytes(): number {
  const html = readFileSync(join(BUILT, 'index.html'), 'utf8')
  const wanted = [...html.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/gu)].map((found) => found[1] ?? '')
  const seen = new Set<string>()
  const follow = (name: string): void => {
    if (seen.has(name)) return
    seen.add(name)
    const text = readFileSync(join(BUILT, name), 'utf8')
    for (const found of text.matchAll(/(?:^|;|\}|\n)import(?:[^'"();]*from)?["']\.\/([^'"]+\.js)["']/gu))
      follow(`assets/${found[1]}`)
  }
  for (const name of wanted) follow(name)
  return [...seen].reduce((sum, name) => sum + gzipSync(readFileSync(join(BUILT, name))).length, 0)
}

/** Milliseconds until the host gives an address, and from there, in a browser that runs and knows nothing of us, to each milestone. */
interface Start {
  readonly host: number
  readonly milestones: Readonly<Record<Milestone, number>>
}

async function coldStart(browser: Browser): Promise<Start> {
  const data = await temporaryData()
  const begun = performance.now()
  const host = await startHost(data.folder)
  const started = performance.now() - begun
  const context = await usualContext(browser)
  const page = await context.newPage()
  await page.addInitScript(markMilestones, MILESTONES)
  await page.goto(await host.address())
  await page.waitForFunction(
    (names) => names.every((name) => performance.getEntriesByName(name).length > 0),
    MILESTONES,
  )
  const at = await page.evaluate(
    (names) => names.map((name) => performance.getEntriesByName(name)[0]?.startTime ?? Number.NaN),
    MILESTONES,
  )
  await context.close()
  await host.stop()
  await data.remove()
  const milestones = { pins: at[0] ?? Number.NaN, map: at[1] ?? Number.NaN }
  return { host: started, milestones }
}

/** A bare Leaflet page, from nothing to its wedge drawn. */
async function bareStart(browser: Browser): Promise<number> {
  const context = await usualContext(browser)
  const begun = performance.now()
  const page = await openAnchor(context, 828, 720)
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)))
  const took = performance.now() - begun
  await context.close()
  return took
}

export async function benchStart(): Promise<BenchRow[]> {
  const browser = await startBrowser()
  const rounds: { ours: Start; anchor: number }[] = []
  try {
    for (let round = 0; round < ROUNDS; round++)
      rounds.push({ anchor: await bareStart(browser), ours: await coldStart(browser) })
  } finally {
    await browser.close()
  }
  const bytes = firstViewBytes()
  const files = readdirSync(join(BUILT, 'assets')).length
  const row = (name: string, of: (start: Start) => number, aim: string): BenchRow => ({
    name,
    ours: milliseconds(median(rounds.map(({ ours }) => of(ours)))),
    anchor: milliseconds(median(rounds.map(({ anchor }) => anchor))),
    ratio: median(rounds.map(({ ours, anchor }) => of(ours) / anchor)),
    aim,
    gate: { better: 'less', noise: 0.25 },
  })
  return [
    row('host, until it answers', ({ host }) => host, ''),
    row('host to pins', ({ host, milestones }) => host + milestones.pins, '500 ms'),
    row('host to painted map', ({ host, milestones }) => host + milestones.map, '900 ms'),
    row('page opened to pins', ({ milestones }) => milestones.pins, ''),
    row('page opened to painted map', ({ milestones }) => milestones.map, ''),
    {
      name: `first view, compressed`,
      ours: `${(bytes / 1000).toFixed(0)} kB (of ${files} files built)`,
      anchor: '400 kB',
      ratio: bytes / 400_000,
      aim: '400 kB or less',
      gate: { better: 'less', noise: 0.02 },
    },
  ]
}

function milliseconds(took: number): string {
  return `${took.toFixed(0)} ms`
}
