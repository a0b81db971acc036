/** The work on the ground, cut into steps of some milliseconds, so that a newer question need not wait for an older one. */
import { exhaustive } from '#core/exhaustive.ts'
import { contourStep } from '#core/ground/contour-step.ts'
import { IN_SHADE, SHADE_UNKNOWN, hillShadow } from '#core/ground/hill-shadow.ts'
import { beginViewshed, viewshedRows } from '#core/ground/viewshed.ts'
import { HIDDEN, UNKNOWN } from '#core/ground/viewshed-request.ts'
import { viewshedPreview } from '#core/ground/viewshed-preview.ts'
import type { Step } from '#renderer/job/messages.ts'
import { ringKeeper } from '#renderer/job/sent-rings.ts'
import { DARK_PALETTE, LIGHT_PALETTE } from '#renderer/view/sketch/sketch-palette.ts'
import { contourBuffers, contourDrawing, pixelsPerMetre } from './contour-drawing.ts'
import {
  type ContoursJob,
  type ExactJob,
  type GroundJob,
  type GroundTold,
  type GroundUpdate,
  type PreviewJob,
  type ReliefJob,
  type ShadeJob,
  WINDOWS_KEPT,
} from './ground-job.ts'
import { type LaidGrid, laidGrid } from './map-raster.ts'
import { type Masks, masksOf } from './masks.ts'
import { beginRelief, reliefRows } from './relief-pictures.ts'
import { type Seas, waterOf } from './water.ts'

/** Cells looked at in one step of the exact viewshed: some ten milliseconds. */
const CELLS_A_STEP = 16_000
/** Rows of pixels painted in one step. */
const ROWS_A_STEP = 128
/** What is left after the last row: turning it into pictures. */
const ROWS_SHARE = 0.97

const SIGHT = { veiled: HIDDEN, unknown: UNKNOWN } as const
const SHADE = { veiled: IN_SHADE, unknown: SHADE_UNKNOWN } as const

interface Known {
  readonly laid: LaidGrid
  /** Made at the first question. */
  readonly water: (seas: Seas) => Uint8Array
}

type GroundStep = Step<GroundUpdate>

/** Takes windows and answers jobs on them. */
export function groundWork(): {
  readonly take: (message: GroundTold) => void
  readonly stepsOf: (job: GroundJob) => Iterator<GroundStep>
} {
  const windows = new Map<number, Known>()
  const groundOf = ringKeeper(WINDOWS_KEPT)
  return {
    take({ ground, rings }) {
      const grid = groundOf(rings)
      if (grid === null) throw new RangeError(`no elevation data came by the number ${ground}`)
      const laid = laidGrid(grid)
      let water: Uint8Array | null = null
      windows.set(ground, { laid, water: (seas) => (water ??= waterOf(laid, seas)) })
      for (const oldest of windows.keys()) {
        if (windows.size <= WINDOWS_KEPT) break
        windows.delete(oldest)
      }
    },
    stepsOf(job) {
      const known = windows.get(job.ground)
      if (known === undefined) throw new RangeError(`no elevation data by the number ${job.ground} were handed over`)
      switch (job.kind) {
        case 'exact':
          return exactSteps(job, known.laid)
        case 'preview':
          return previewSteps(job, known.laid)
        case 'shade':
          return shadeSteps(job, known.laid)
        case 'relief':
          return reliefSteps(job, known)
        case 'contours':
          return contourSteps(job, known)
        default:
          return exhaustive(job)
      }
    },
  }
}

function* exactSteps({ request }: ExactJob, laid: LaidGrid): Generator<GroundStep> {
  const { columns, rows } = laid.grid
  const state = beginViewshed(laid.grid, request)
  const rowsAStep = Math.max(1, Math.floor(CELLS_A_STEP / columns))
  for (let row = 0; row < rows; row += rowsAStep) {
    viewshedRows(state, row, row + rowsAStep)
    const share = (Math.min(rows, row + rowsAStep) / rows) * ROWS_SHARE
    yield { share, update: { kind: 'exact', masks: null } }
  }
  yield { share: 1, update: { kind: 'exact', masks: masksOf(laid, state.seen, SIGHT) } }
}

function* previewSteps({ request }: PreviewJob, laid: LaidGrid): Generator<GroundStep> {
  yield { share: 1, update: { kind: 'preview', masks: masksOf(laid, viewshedPreview(laid.grid, request), SIGHT) } }
}

function* shadeSteps({ sun, refraction }: ShadeJob, laid: LaidGrid): Generator<GroundStep> {
  yield { share: 1, update: { kind: 'shade', masks: masksOf(laid, hillShadow(laid.grid, sun, refraction), SHADE) } }
}

function* reliefSteps({ light, palette, seas }: ReliefJob, { laid, water }: Known): Generator<GroundStep> {
  const wet = water(seas)
  yield { share: 0.2, update: { kind: 'relief', pictures: null } }
  const relief = beginRelief(laid, wet, light, palette === 'dark' ? DARK_PALETTE : LIGHT_PALETTE)
  const { rows } = laid.raster
  for (let row = 0; row < rows; row += ROWS_A_STEP) {
    yield { share: 0.4 + (0.5 * row) / rows, update: { kind: 'relief', pictures: null } }
    reliefRows(relief, row, row + ROWS_A_STEP)
  }
  yield { share: 1, update: { kind: 'relief', pictures: relief.pictures } }
}

function* contourSteps({ cells, zoom, seas }: ContoursJob, { laid, water }: Known): Generator<GroundStep> {
  // By the whole window, so that the step does not change while one pans.
  const step = contourStep(laid.grid, pixelsPerMetre(laid.grid, zoom))
  const drawing = step === null ? null : contourDrawing(laid, water(seas), cells, step, zoom)
  yield { share: 1, update: { kind: 'contours', drawing } }
}

function maskBuffers(masks: Masks | null): ArrayBufferLike[] {
  if (masks === null) return []
  return masks.unknown === null ? [masks.veiled.buffer] : [masks.veiled.buffer, masks.unknown.buffer]
}

/** Buffers that an update hands over instead of copying them. */
export function groundBuffers(update: GroundUpdate): ArrayBufferLike[] {
  switch (update.kind) {
    case 'relief':
      return update.pictures === null ? [] : [update.pictures.ground.buffer, update.pictures.light.buffer]
    case 'contours':
      return update.drawing === null ? [] : contourBuffers(update.drawing)
    default:
      return maskBuffers(update.masks)
  }
}
