/** Frames while something is dragged, panned or zoomed on the board, against a bare Leaflet map in the same browser and the same rounds. */
import type { Browser, Page } from 'playwright-core'
import { openAnchor, anchorHandle } from './anchor-page.ts'
import { openBoard, startBrowser, usualContext } from './bench-window.ts'
import {
  type BoardGesture,
  FROM_AFAR,
  FROM_NEAR,
  ZOOM_IN,
  ZOOM_OUT,
  comeNear,
  fitMap,
  gestureOn,
} from './board-gestures.ts'
import { calm, perform, FRAMES } from './gestures.ts'
import { type BenchRow, median } from './measure.ts'
import { writeRealGround } from './real-ground.ts'
import { demoMiddle, prepareScan, startScan } from './running-scan.ts'
import { type MainTime, traced } from './trace.ts'

const ROUNDS = 3
/** By so much the same code differs from run to run. */
const NOISE = 0.15

/** One gesture in one round. */
interface Taken {
  readonly main: MainTime
  readonly frames: readonly number[]
}

type Round = ReadonlyMap<string, Taken>

async function anchorRound(browser: Browser, page: Page): Promise<Taken> {
  await page.bringToFront()
  await calm(page)
  const at = await anchorHandle(page)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  const [frames, main] = await traced(browser, page, () => perform(page, at, { by: 'move', size: 14 }))
  await page.mouse.move(at.x, at.y)
  await page.mouse.up()
  return { main, frames }
}

async function boardRound(
  browser: Browser,
  page: Page,
  gestures: readonly BoardGesture[],
  over: string,
): Promise<[string, Taken][]> {
  const taken: [string, Taken][] = []
  await fitMap(page)
  for (const gesture of gestures) {
    if (FROM_NEAR.includes(gesture)) await comeNear(page)
    const [frames, main] = await gestureOn(page, gesture, (work) => traced(browser, page, work))
    taken.push([`${gesture.name}, ${over}`, { frames, main }])
  }
  return taken
}

const ALL: readonly BoardGesture[] = [...FROM_AFAR, ZOOM_IN, ...FROM_NEAR, ZOOM_OUT]
const DURING_SCAN = FROM_AFAR.filter(({ name }) => name.startsWith('standpoint') || name.startsWith('pan'))

export async function benchFrames(): Promise<BenchRow[]> {
  const browser = await startBrowser()
  try {
    const hills = await openBoard(browser)
    const middle = await demoMiddle(hills.host)
    const real = await openBoard(browser, { files: (folder) => writeRealGround(folder, middle) })
    const scan = await openBoard(browser, { records: prepareScan })
    const box = await hills.page.locator('.map-holder').boundingBox()
    const anchor = await openAnchor(await usualContext(browser), box?.width ?? 828, box?.height ?? 720)
    const rounds: { anchor: Taken[]; board: Round }[] = []
    for (let round = 0; round < ROUNDS; round++) {
      const anchors = [await anchorRound(browser, anchor)]
      const overHills = await boardRound(browser, hills.page, ALL, 'demo hills')
      anchors.push(await anchorRound(browser, anchor))
      const overReal = await boardRound(browser, real.page, ALL, '2,000 x 2,000 cells')
      anchors.push(await anchorRound(browser, anchor))
      const stop = await startScan(scan.page)
      const duringScan = await boardRound(browser, scan.page, DURING_SCAN, 'a scan running')
      await stop()
      rounds.push({ anchor: anchors, board: new Map([...overHills, ...overReal, ...duringScan]) })
    }
    for (const opened of [hills, real, scan]) await opened.close()
    const names = [...(rounds[0]?.board.keys() ?? [])]
    return [
      row(
        'the anchor',
        rounds.flatMap((round) => round.anchor),
        1,
      ),
      ...names.map((name) => {
        const taken = rounds.flatMap(({ board }) => board.get(name) ?? [])
        const ratios = rounds.map((round) => (round.board.get(name)?.main.all ?? Number.NaN) / floorOf(round.anchor))
        return { ...row(name, taken, median(ratios)), gate: { better: 'less', noise: NOISE } as const }
      }),
    ]
  } finally {
    await browser.close()
  }
}

function floorOf(anchors: readonly Taken[]): number {
  return median(anchors.map(({ main }) => main.all))
}

function row(name: string, taken: readonly Taken[], ratio: number): BenchRow {
  const part = (of: keyof MainTime): string => (median(taken.map(({ main }) => main[of])) / FRAMES).toFixed(1)
  const frames = taken.flatMap((one) => one.frames).toSorted((one, other) => one - other)
  const at = (share: number): number => frames[Math.min(frames.length - 1, Math.floor(share * frames.length))] ?? 0
  const total = frames.reduce((sum, frame) => sum + frame, 0)
  return {
    name: `main a frame: ${name}`,
    ours: `${part('all')} ms (script ${part('script')}, style ${part('style')}, paint ${part('paint')})`,
    anchor: `${((frames.length * 1000) / total).toFixed(0)}/s (median ${at(0.5).toFixed(0)}, 95 % ${at(0.95).toFixed(0)}, worst ${at(1).toFixed(0)} ms)`,
    ratio,
    aim: '3.5 times the anchor; 60/s, worst 50 ms',
  }
}
