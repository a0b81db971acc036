/** The worker of the picture: keeps shoot and ground, draws the newest request on the canvas handed over. */
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { newestOnly } from '#renderer/job/newest-only.ts'
import { afterMessages } from '#renderer/job/run-jobs.ts'
import { ringKeeper } from '#renderer/job/sent-rings.ts'
import { type SpareSheet, drawStrokes, softReach, spareSheet } from './canvas-pen.ts'
import { type FromLensWorker, type LensRequest, type ToLensWorker, withChanged } from './lens-request.ts'
import { pictureOf } from './picture.ts'
import { strokesOf } from './strokes.ts'
import { type StrokePart, type Strokes } from './stroke.ts'

let canvas: OffscreenCanvas | null = null
let shoot: Shoot | null = null
let ground: ElevationGrid | null = null
let spare: SpareSheet | null = null
const groundOf = ringKeeper()

function answer(message: FromLensWorker): void {
  postMessage(message)
}

/** Kept from picture to picture while it is large enough. */
function spareFor(width: number, height: number): SpareSheet {
  if (spare === null || spare.canvas.width !== width || spare.canvas.height !== height)
    spare = spareSheet(width, height)
  if (spare === null) throw new Error('This browser gives no second canvas.')
  return spare
}

/** Margins grow in steps, so that a blur that changes with every frame doesn't ask for a new sheet each time. */
const MARGIN_STEP = 64

function paint(on: OffscreenCanvas, strokes: Strokes, pixelRatio: number): void {
  const [width, height] = [strokes.width, strokes.height].map((side) => Math.max(1, Math.round(side * pixelRatio)))
  if (width === undefined || height === undefined) return
  if (on.width !== width || on.height !== height) {
    on.width = width
    on.height = height
  }
  const context = on.getContext('2d')
  if (context === null) throw new Error('This browser draws on no canvas in a worker.')
  const margin = Math.ceil(softReach(strokes, pixelRatio) / MARGIN_STEP) * MARGIN_STEP
  drawStrokes(context, strokes, pixelRatio, spareFor(width + margin * 2, height + margin * 2), margin)
}

function partsOf({ groups }: Strokes): StrokePart[] {
  return [...new Set(groups.flatMap(({ strokes }) => strokes.map(({ part }) => part)))]
}

function draw({ turn, spot, pins, width, pixelRatio, moving }: LensRequest): void {
  if (canvas === null || shoot === null) return
  const plan = planOf(shoot, spot, ground, pins)
  const picture = pictureOf(plan, assess(plan), width, moving)
  if (picture === null) return answer({ say: 'drawn', turn, parts: [] })
  const strokes = strokesOf(picture)
  paint(canvas, strokes, pixelRatio)
  answer({ say: 'drawn', turn, parts: partsOf(strokes) })
}

const hear = newestOnly({ work: draw, failed: answer, later: afterMessages() })

addEventListener('message', ({ data }: MessageEvent<ToLensWorker>) => {
  if (data.say === 'canvas') canvas = data.canvas
  else if (data.say === 'shoot') shoot = withChanged(shoot, data.changed)
  else if (data.say === 'ground') ground = groundOf(data.rings)
  else hear(data)
})
