/** The worker of the benches: sends back what it is sent, and fills rows of a viewshed in shared memory. */
import { type TransferListItem, parentPort } from 'node:worker_threads'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { ViewshedRequest } from '#core/ground/viewshed-request.ts'
import { beginViewshed, viewshedRows } from '#core/ground/viewshed.ts'

export type ToBenchWorker =
  | { readonly do: 'echo'; readonly cells: ArrayBuffer }
  | { readonly do: 'echo-text'; readonly text: string }
  | {
      readonly do: 'rows'
      readonly grid: ElevationGrid
      readonly request: ViewshedRequest
      readonly seen: SharedArrayBuffer
      /** Every so many strips of rows from one on. */
      readonly from: number
      readonly of: number
    }

/** Answers; a worker's port has no target origin, but it has a list of what moves, empty for most. */
function answer(found: unknown, moved: readonly TransferListItem[] = []): void {
  parentPort?.postMessage(found, moved)
}

/** Rows in one strip: the two workers take them in turn, so that both have near and far ground. */
const STRIP = 16

parentPort?.on('message', (asked: ToBenchWorker) => {
  if (asked.do === 'echo') answer(asked.cells, [asked.cells])
  else if (asked.do === 'echo-text') {
    const cells = JSON.parse(asked.text) as number[]
    answer(JSON.stringify(Array.from(Float32Array.from(cells))))
  } else {
    const state = beginViewshed(asked.grid, asked.request, new Uint8Array(asked.seen))
    for (let row = asked.from * STRIP; row < asked.grid.rows; row += asked.of * STRIP)
      viewshedRows(state, row, row + STRIP)
    answer('done')
  }
})
