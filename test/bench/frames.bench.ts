/** Frames while something is dragged, panned or zoomed on the board, against a bare Leaflet map in the same browser and the same rounds. */
import type { Browser, Page } from 'playwright-core'
import { openAnchor, anchorHandle } from './anchor-page.ts'
import { type Preparation, openBoard, startBrowser, usualContext } from './bench-window.ts'
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
import { prepareScan, startScan } from './running-scan.ts'
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

/** A board to be measured: how it is opened, and what runs beside each round. */
interface Scene {
  readonly over: string
  readonly gestures: readonly BoardGesture[]
  readonly preparation: Preparation
  readonly beside?: (page: Page) => Promise<() => Promise<void>>
}

const SCENES = {
  hills: { over: 'demo hills', gestures: ALL, preparation: {} },
  real: { over: '2,000 x 2,000 cells', gestures: ALL, preparation: { files: writeRealGround } },
  scan: { over: 'a scan running', gestures: DURING_SCAN, preparation: { records: prepareScan }, beside: startScan },
} as const satisfies Record<string, Scene>

export async function benchFrames(which: keyof typeof SCENES): Promise<BenchRow[]> {
  const { over, gestures, preparation, beside }: Scene = SCENES[which]
  const browser = await startBrowser()
  try {
    const board = await openBoard(browser, preparation)
    const box = await board.page.locator('.map-holder').boundingBox()
    const anchor = await openAnchor(await usualContext(browser), box?.width ?? 828, box?.height ?? 720)
    const rounds: { anchor: Taken[]; board: Round }[] = []
    for (let round = 0; round < ROUNDS; round++) {
      const before = await anchorRound(browser, anchor)
      const end = await beside?.(board.page)
      const taken = await boardRound(browser, board.page, gestures, over)
      await end?.()
      rounds.push({ anchor: [before, await anchorRound(browser, anchor)], board: new Map(taken) })
    }
    await board.close()
    const names = [...(rounds[0]?.board.keys() ?? [])]
    const anchors = rounds.flatMap((round) => round.anchor)
    return [
      row(`the anchor beside ${over}`, anchors, 1),
      ...names.map((name) => {
        const taken = rounds.flatMap((round) => round.board.get(name) ?? [])
        const ratios = rounds.map((round) => (round.board.get(name)?.main.all ?? Number.NaN) / floorOf(round.anchor))
        return { ...row(name, taken, median(ratios)), gate: { better: 'less', noise: NOISE } as const }
      }),
    ]
  } finally {
    await browser.close()
  }
}

function floorOf(anchors: readonly Taken[]): number {
  return anchors.reduce((sum, { main }) => sum + main.all, 0) / anchors.length
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
