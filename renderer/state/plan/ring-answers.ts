/** Owns what came of asking for windows of ground: each asked once, the newest of each kind kept, those left behind given up. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { MOST_COMPARED } from '#core/plan/compare.ts'
import type { Result } from '#core/result.ts'
import { type GroundWindowFound, fetchWindow } from '#renderer/host/ground-windows.ts'
import { gatherer } from '#renderer/job/gatherer.ts'
import { type RingKind, type RingWindow, serves } from './ring-plan.ts'

/** Windows kept of each kind: no fewer than can be wanted at once, by the spots side by side and by the board, else each that comes would drive out another that is asked for again. Of the fine ones the board's before as well. */
export const RINGS_KEPT: Readonly<Record<RingKind['name'], number>> = {
  close: MOST_COMPARED + 2,
  near: MOST_COMPARED + 2,
  landmark: MOST_COMPARED + 2,
  middle: MOST_COMPARED + 1,
  far: MOST_COMPARED + 1,
}

/** Milliseconds that a window which has come waits for the others of its sort. */
const FINE_WAIT = 150
const WIDE_WAIT = 2_000

/** What is wanted around a place: the finest window first. */
export type WantedRings = readonly RingWindow[]

/** What came of asking: a window, or why there is none. */
export interface RingAnswer extends RingWindow {
  readonly found: GroundWindowFound | null
  readonly trouble: string | null
}

/** Newest first. */
const ringAnswersSignal = signal<readonly RingAnswer[]>([])
export const ringAnswers: ReadonlySignal<readonly RingAnswer[]> = ringAnswersSignal

interface Asking extends RingWindow {
  readonly stop: AbortController
  readonly forBoard: boolean
}

let asking: readonly Asking[] = []

/** Whether the map's window is all there is of ground: nothing lies beyond it. */
export function wholeAmong(parts: readonly (RingAnswer | undefined)[]): boolean {
  return parts.some((part) => part?.kind.name === 'near' && part.found?.whole === true)
}

/** Asks for those windows of a place that are neither known nor on their way. */
export async function askRings(wanted: WantedRings, forBoard: boolean): Promise<void> {
  const missing = wanted.filter((window) => ![...ringAnswers.peek(), ...asking].some((other) => serves(other, window)))
  const mine = missing.map((window): Asking => ({ ...window, forBoard, stop: new AbortController() }))
  asking = [...asking, ...mine]
  // Fine ones first and together; the wide ones one after the other, so that finer ones for a place moved meanwhile need not wait.
  const isWide = ({ kind }: RingWindow): boolean => kind.stray === Infinity
  const fine = mine.filter((one) => !isWide(one))
  const takeFine = gatherer(fine.length, FINE_WAIT)
  await Promise.all(
    fine.map(async (one) => {
      const answer = await askOne(one)
      takeFine(() => take(one, answer))
    }),
  )
  if (wholeAmong(ringAnswers.peek().filter((answer) => wanted.some((window) => serves(answer, window))))) {
    asking = asking.filter((other) => !mine.includes(other))
    return
  }
  const wide = mine.filter(isWide)
  const takeWide = gatherer(wide.length, WIDE_WAIT)
  for (const one of wide) {
    // oxlint-disable-next-line no-await-in-loop -- in order
    const answer = await askOne(one)
    takeWide(() => take(one, answer))
  }
}

/** Null for what was given up meanwhile. */
async function askOne({ plane, kind, east, north, stop }: Asking): Promise<Result<GroundWindowFound> | null> {
  if (stop.signal.aborted) return null
  const on = { east, north, peaks: kind.peaks }
  return fetchWindow(plane, kind.cell, Math.ceil(kind.reach / kind.cell), stop.signal, on)
}

function take(mine: Asking, answer: Result<GroundWindowFound> | null): void {
  const { plane, kind, east, north, stop } = mine
  asking = asking.filter((other) => other !== mine)
  if (answer === null || stop.signal.aborted) return
  const [found, trouble] = answer.ok ? [answer.value, answer.value.trouble] : [null, answer.fault.message]
  const others = ringAnswers.peek()
  const kept = others.filter((other) => other.kind === kind).slice(0, RINGS_KEPT[kind.name] - 1)
  ringAnswersSignal.value = [
    { plane, kind, east, north, found, trouble },
    ...others.filter((other) => other.kind !== kind || kept.includes(other)),
  ]
}

/** Gives up what was on its way for where the board was before. */
export function leaveRings(wanted: WantedRings): void {
  const left = asking.filter((other) => other.forBoard && !wanted.some((window) => serves(other, window)))
  asking = asking.filter((other) => !left.includes(other))
  for (const { stop } of left) stop.abort()
}

/** Forgets all that came and gives up the rest: what is known is of other sources. */
export function forgetRings(): void {
  for (const other of asking) other.stop.abort()
  asking = []
  ringAnswersSignal.value = []
}
