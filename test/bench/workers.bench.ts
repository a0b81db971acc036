/** Work handed to workers, by the clock: a grid there and back against its text, and a viewshed by two against one. */
import { Worker } from 'node:worker_threads'
import { elevationAt, type ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { mountains } from '#test/help/terrain.ts'
import type { ToBenchWorker } from './bench-worker.ts'
import { type BenchRow, median } from './measure.ts'

const ROUNDS = 5

async function answerOf(worker: Worker, asked: ToBenchWorker, moved: readonly ArrayBuffer[] = []): Promise<unknown> {
  return new Promise((done, failed) => {
    worker.once('message', done)
    worker.once('error', failed)
    worker.postMessage(asked, [...moved])
  })
}

async function clock(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now()
  await work()
  return performance.now() - began
}

async function interleaved(
  ours: () => Promise<unknown>,
  anchor: () => Promise<unknown>,
): Promise<{ ours: number; anchor: number; ratio: number }> {
  await ours()
  await anchor()
  const pairs: { anchor: number; ours: number }[] = []
  for (let round = 0; round < ROUNDS; round++) pairs.push({ anchor: await clock(anchor), ours: await clock(ours) })
  return {
    ours: median(pairs.map((pair) => pair.ours)),
    anchor: median(pairs.map((pair) => pair.anchor)),
    ratio: median(pairs.map((pair) => pair.ours / pair.anchor)),
  }
}

async function handOver(worker: Worker): Promise<BenchRow> {
  const { heights } = mountains(1000)
  let cells = Float32Array.from(heights).buffer
  const took = await interleaved(
    async () => {
      cells = (await answerOf(worker, { do: 'echo', cells }, [cells])) as ArrayBuffer
    },
    async () => {
      const text = JSON.stringify(Array.from(new Float32Array(cells)))
      const back = (await answerOf(worker, { do: 'echo-text', text })) as string
      return Float32Array.from(JSON.parse(back) as number[])
    },
  )
  return {
    name: 'a grid of 1e6 cells to a worker and back, against its JSON (by the clock)',
    ours: `${took.ours.toFixed(2)} ms`,
    anchor: `${took.anchor.toFixed(0)} ms`,
    ratio: took.ratio,
    aim: 'ratio 1/1000, gate 1/300',
  }
}

/** The grid with its heights in shared memory, so that no worker has a copy. */
function shared(grid: ElevationGrid): ElevationGrid {
  const heights = new Float32Array(new SharedArrayBuffer(grid.heights.length * 4))
  heights.set(grid.heights)
  return { ...grid, heights }
}

async function twoWorkers(workers: readonly [Worker, Worker]): Promise<BenchRow> {
  const grid = shared(mountains(3000))
  const request: ViewshedRequest = {
    east: 0,
    north: 0,
    height: (elevationAt(grid, 0, 0) ?? 0) + 1.6,
    targetHeight: 0,
    refraction: 0.13,
    radius: null,
    obstructions: [],
  }
  const seen = new SharedArrayBuffer(grid.columns * grid.rows)
  const [one, other] = workers
  const took = await interleaved(
    async () =>
      Promise.all([
        answerOf(one, { do: 'rows', grid, request, seen, from: 0, of: 2 }),
        answerOf(other, { do: 'rows', grid, request, seen, from: 1, of: 2 }),
      ]),
    async () => answerOf(one, { do: 'rows', grid, request, seen, from: 0, of: 1 }),
  )
  return {
    name: 'viewshed, exact, 9e6 cells, two workers against one (by the clock)',
    ours: `${took.ours.toFixed(0)} ms`,
    anchor: `${took.anchor.toFixed(0)} ms`,
    ratio: took.ratio,
    aim: 'ratio 0.55, gate 0.75',
  }
}

export async function benchWorkers(): Promise<BenchRow[]> {
  const start = (): Worker => new Worker(new URL('bench-worker.ts', import.meta.url))
  const workers = [start(), start()] as const
  const rows = [await handOver(workers[0]), await twoWorkers(workers)]
  await Promise.all(workers.map(async (worker) => worker.terminate()))
  return rows
}
