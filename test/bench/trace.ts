/** Where the main thread's time goes between two marks of a page: read off a trace, by the thread's own clock, so that a busy machine counts little. */
import type { Browser, Page } from 'playwright-core'

/** Milliseconds of the main thread, and what of them was script, style and layout, and painting (layers and commit included). */
export interface MainTime {
  readonly all: number
  readonly script: number
  readonly style: number
  readonly paint: number
}

interface TraceEvent {
  readonly name: string
  readonly cat: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  /** Microseconds. */
  readonly ts: number
  readonly dur?: number
  /** Of the thread's own clock, which stands while other programs have the processor. */
  readonly tdur?: number
}

const CATEGORIES = ['toplevel', 'devtools.timeline', 'blink.user_timing']
const BEGIN = 'bench-begin'
const END = 'bench-end'

/** What Chromium calls its work; work by any other name counts with what it is done for. */
const PART_OF: Readonly<Record<string, Exclude<keyof MainTime, 'all'>>> = {
  EventDispatch: 'script',
  FireAnimationFrame: 'script',
  FunctionCall: 'script',
  EvaluateScript: 'script',
  RunMicrotasks: 'script',
  TimerFire: 'script',
  MinorGC: 'script',
  MajorGC: 'script',
  UpdateLayoutTree: 'style',
  Layout: 'style',
  HitTest: 'style',
  PrePaint: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
  UpdateLayer: 'paint',
  CompositeLayers: 'paint',
}

/** Runs work that ends by itself and tells what the page's main thread did meanwhile. */
export async function traced<T>(browser: Browser, page: Page, work: () => Promise<T>): Promise<[T, MainTime]> {
  await browser.startTracing(page, { categories: CATEGORIES })
  await page.evaluate((name) => performance.mark(name), BEGIN)
  const result = await work()
  await page.evaluate((name) => performance.mark(name), END)
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: readonly TraceEvent[] }
  return [result, mainTime(trace.traceEvents)]
}

function mark(events: readonly TraceEvent[], name: string): TraceEvent {
  const found = events.find((event) => event.name === name && event.cat.includes('blink.user_timing'))
  if (found === undefined) throw new Error(`the trace lacks the mark ${name}`)
  return found
}

export function mainTime(events: readonly TraceEvent[]): MainTime {
  const [begin, end] = [mark(events, BEGIN), mark(events, END)]
  const own = events
    .filter(
      ({ ph, pid, tid, ts }) => ph === 'X' && pid === begin.pid && tid === begin.tid && ts > begin.ts && ts < end.ts,
    )
    .toSorted((one, other) => one.ts - other.ts || (other.dur ?? 0) - (one.dur ?? 0))
  const sums = { all: 0, script: 0, style: 0, paint: 0 }
  const open: { readonly until: number; readonly part: keyof MainTime }[] = []
  for (const event of own) {
    const took = (event.tdur ?? event.dur ?? 0) / 1000
    while ((open.at(-1)?.until ?? Infinity) <= event.ts) open.pop()
    const around = open.at(-1)
    const part = PART_OF[event.name] ?? around?.part ?? 'all'
    if (around === undefined) sums.all += took
    // Its time is its own and no longer of what it lies in.
    if (around !== undefined && around.part !== 'all') sums[around.part] -= took
    if (part !== 'all') sums[part] += took
    open.push({ until: event.ts + (event.dur ?? 0), part })
  }
  return sums
}
