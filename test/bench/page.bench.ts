/** The page in a real browser: script per drag frame, the cold start to a usable map, and the size of the first view. */
import { readFileSync, readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { CDPSession, Page } from 'playwright-core'
import { boardReady, closePlan } from '#test/e2e/board.ts'
import { open } from '#test/e2e/open.ts'
import { type BenchRow, median } from './measure.ts'

const BUILT = resolve(import.meta.dirname, '../../out/page')
const FRAMES = 120

async function scriptSeconds(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return metrics.find((metric) => metric.name === 'ScriptDuration')?.value ?? 0
}

/** Drags the standpoint round in the close plan, one move a frame; milliseconds of script a frame and frames a second. */
async function dragCost(page: Page): Promise<{ script: number; rate: number }> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const box = await closePlan(page)
    .getByRole('button', { name: /^Standpoint/ })
    .boundingBox()
  if (box === null) throw new Error('the standpoint is not in sight')
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(middle.x, middle.y)
  await page.mouse.down()
  await page.mouse.move(middle.x + 4, middle.y)
  const before = await scriptSeconds(session)
  const spent = await page.evaluate(
    async ([frames, x, y]) => {
      // Moves come from within the page, one each frame: sent from outside they would arrive in bunches.
      const target = document.elementFromPoint(x, y)
      const nextFrame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done))
      const start = await nextFrame()
      for (let frame = 0; frame < frames; frame++) {
        const turn = (frame / frames) * 2 * Math.PI
        const init = {
          bubbles: true,
          pointerId: 1,
          isPrimary: true,
          buttons: 1,
          clientX: x + 14 * Math.sin(turn),
          clientY: y + 14 * Math.cos(turn),
        }
        target?.dispatchEvent(new PointerEvent('pointermove', init))
        await nextFrame()
      }
      return (await nextFrame()) - start
    },
    [FRAMES, middle.x, middle.y] as const,
  )
  const after = await scriptSeconds(session)
  await page.mouse.up()
  return { script: ((after - before) * 1000) / FRAMES, rate: (FRAMES * 1000) / spent }
}

/** What the first view fetches: the page's own entry with everything it imports at once, its style, compressed. */
export function firstViewBytes(): number {
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

async function coldStart(): Promise<number> {
  const begun = performance.now()
  const opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  await opened.page.waitForFunction(
    () => document.querySelectorAll('.leaflet-tile-loaded, .leaflet-tile-pane canvas').length > 3,
  )
  const spent = performance.now() - begun
  await opened.close()
  return spent
}

export async function benchPage(): Promise<BenchRow[]> {
  const opened = await open({ host: 'browser' })
  await boardReady(opened.page)
  const drags: { script: number; rate: number }[] = []
  for (let round = 0; round < 5; round++) drags.push(await dragCost(opened.page))
  await opened.close()
  const starts: number[] = []
  for (let round = 0; round < 3; round++) starts.push(await coldStart())
  const script = median(drags.map((drag) => drag.script))
  const rate = median(drags.map((drag) => drag.rate))
  const start = median(starts)
  const bytes = firstViewBytes()
  const files = readdirSync(join(BUILT, 'assets')).length
  return [
    {
      name: 'script per drag frame in the close plan',
      ours: `${script.toFixed(2)} ms`,
      anchor: '4 ms',
      ratio: script / 4,
      aim: '4 ms or less',
    },
    { name: 'frames a second while dragging', ours: rate.toFixed(0), anchor: '60', ratio: rate / 60, aim: '60' },
    {
      name: 'cold start, host and browser, to a usable map',
      ours: `${(start / 1000).toFixed(2)} s`,
      anchor: '1.5 s',
      ratio: start / 1500,
      aim: '1.5 s',
    },
    {
      name: `first view, compressed (of ${files} files built)`,
      ours: `${(bytes / 1000).toFixed(0)} kB`,
      anchor: '400 kB',
      ratio: bytes / 400_000,
      aim: '400 kB or less',
    },
  ]
}
