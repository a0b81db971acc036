/** The reading of a GeoJSON file beside the page: asked of a worker of its own, which can be stopped, and is when it takes too long. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { DrawnGeojsonReason, DrawnRead } from '#core/exchange/drawn-geojson.ts'
import type { Result } from '#core/result.ts'

export interface GeojsonRequest {
  readonly text: string
  /** Place of the spot at work. */
  readonly near: LatLon | null
  /** How many pieces there is room for. */
  readonly most: number
}

export type GeojsonOutcome = Result<DrawnRead, DrawnGeojsonReason> | 'stopped' | 'too-long' | 'lost'

export interface GeojsonReading {
  readonly outcome: Promise<GeojsonOutcome>
  readonly stop: () => void
}

/** Seconds: the worst file of 5 MB that we know takes a few of them. */
export const LONGEST = 30

/** What is used of a worker. */
export type GeojsonWorker = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>

export function readBeside(
  request: GeojsonRequest,
  open: () => GeojsonWorker = openWorker,
  longest: number = LONGEST,
): GeojsonReading {
  const worker = open()
  const { promise, resolve } = Promise.withResolvers<GeojsonOutcome>()
  const end = (outcome: GeojsonOutcome): void => {
    clearTimeout(timer)
    worker.terminate()
    resolve(outcome)
  }
  const timer = setTimeout(() => end('too-long'), longest * 1000)
  worker.addEventListener('message', (event) => end((event as MessageEvent<GeojsonOutcome>).data))
  worker.addEventListener('error', () => end('lost'))
  worker.postMessage(request, [])
  return { outcome: promise, stop: () => end('stopped') }
}

function openWorker(): Worker {
  return new Worker(new URL('./geojson-worker.ts', import.meta.url), { type: 'module' })
}
