/** The page's end of the picture's worker: hands it a canvas, sends what changed, and tells when it is lost. */
import type { Plan } from '#core/plan/plan.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { ringSender } from '#renderer/job/sent-rings.ts'
import { type FromLensWorker, type LensRequest, type ToLensWorker, shootSender } from './lens-request.ts'
import type { StrokePart } from './stroke.ts'

export interface LensArtist {
  readonly draw: (plan: Plan, request: Omit<LensRequest, 'say' | 'turn' | 'spot' | 'pins'>) => void
  readonly stop: () => void
}

interface Hearer {
  /** The newest picture asked for is on the canvas, with these parts in it. */
  readonly drawn: (parts: readonly StrokePart[]) => void
  /** The worker is lost, or can't draw: another pen must. */
  readonly lost: (why: string) => void
}

/** Milliseconds without an answer after which a worker counts as lost. A picture takes a few of them. */
const PATIENCE = 60_000

/** Whether a worker can draw on a canvas of the page in this browser. */
export function canvasInWorker(): boolean {
  return typeof OffscreenCanvas === 'function' && 'transferControlToOffscreen' in HTMLCanvasElement.prototype
}

/** Takes the canvas over for good: another artist needs another one. */
export function startArtist(canvas: HTMLCanvasElement, hearer: Hearer): LensArtist {
  const worker = new Worker(new URL('./lens-worker.ts', import.meta.url), { type: 'module' })
  let turn = 0
  const changedOf = shootSender()
  let ground: ElevationGrid | null | undefined
  const ringsToSend = ringSender()
  let timer: ReturnType<typeof setTimeout> | null = null
  let over = false

  const send = (message: ToLensWorker, transfer: Transferable[] = []): void => worker.postMessage(message, transfer)

  function wait(): void {
    timer ??= setTimeout(() => lose('it did not answer'), PATIENCE)
  }

  function rest(): void {
    if (timer !== null) clearTimeout(timer)
    timer = null
  }

  function end(): void {
    over = true
    rest()
    worker.terminate()
  }

  function lose(why: string): void {
    if (over) return
    end()
    hearer.lost(why)
  }

  worker.addEventListener('message', ({ data }: MessageEvent<FromLensWorker>) => {
    if (over) return
    rest()
    // An answer to an older picture: the worker lives, and the newest is still to come.
    if (data.turn !== turn) return wait()
    if (data.say === 'failed') lose(data.message)
    else hearer.drawn(data.parts)
  })
  worker.addEventListener('error', (event) => lose(event.message))
  worker.addEventListener('messageerror', () => lose('an answer could not be read'))
  const offscreen = canvas.transferControlToOffscreen()
  send({ say: 'canvas', canvas: offscreen }, [offscreen])

  return {
    draw(plan, request) {
      if (over) return
      const changed = changedOf(plan.shoot)
      if (changed !== null) send({ say: 'shoot', changed })
      if (plan.terrain !== ground) {
        ground = plan.terrain
        const { rings, transfer } = ringsToSend(ground)
        send({ say: 'ground', rings }, transfer)
      }
      turn += 1
      wait()
      send({ say: 'draw', turn, spot: plan.spot, pins: plan.pins, ...request })
    },
    stop: end,
  }
}
