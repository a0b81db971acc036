/** The page's end of the picture's worker: hands it a canvas, sends what changed, and tells when it is lost. */
import type { Plan } from '#core/plan/plan.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { ringSender } from '#renderer/job/sent-rings.ts'
import { type FromLensWorker, type LensRequest, type ToLensWorker, shootInPicture } from './lens-request.ts'
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
  let shoot: Shoot | null = null
  let ground: ElevationGrid | null | undefined
  const ringsToSend = ringSender()
  let timer: ReturnType<typeof setTimeout> | null = null
  let over = false

  const send = (message: ToLensWorker, transfer: Transferable[] = []): void => worker.postMessage(message, transfer)

  function end(): void {
    over = true
    if (timer !== null) clearTimeout(timer)
    timer = null
    worker.terminate()
  }

  function lose(why: string): void {
    if (over) return
    end()
    hearer.lost(why)
  }

  worker.addEventListener('message', ({ data }: MessageEvent<FromLensWorker>) => {
    if (over || data.turn !== turn) return
    if (timer !== null) clearTimeout(timer)
    timer = null
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
      if (plan.shoot !== shoot) {
        shoot = plan.shoot
        send({ say: 'shoot', shoot: shootInPicture(shoot) })
      }
      if (plan.terrain !== ground) {
        ground = plan.terrain
        const { rings, transfer } = ringsToSend(ground)
        send({ say: 'ground', rings }, transfer)
      }
      turn += 1
      timer ??= setTimeout(() => lose('it did not answer'), PATIENCE)
      send({ say: 'draw', turn, spot: plan.spot, pins: plan.pins, ...request })
    },
    stop: end,
  }
}
