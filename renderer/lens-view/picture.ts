/** The picture through the lens as plain data: horizon, ground, landmark and subject as filled paths, and how soft each is. */
import { type View, apparent, toCamera } from '#core/frame/projection.ts'
import { localFrame, toEarth } from '#core/geo/local-frame.ts'
import { blurDisc } from '#core/optics/depth-of-field.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { subjectPoint } from '#core/scene/box.ts'
import { clipNear } from './clip.ts'
import { groundLines, horizonLine } from './ground-lines.ts'
import { type Layer, type Sheet, layersOf, outlinePath, toSheet } from './layers.ts'
import { type See, type SeenPart, paintOrder } from './painter.ts'
import { solidOfLandmark, solidOfSubject } from './solids.ts'

/** Layers drawn with one softness: the standard deviation of the blur in the drawing's units, 0 for sharp. */
export interface SoftLayers {
  readonly deviation: number
  readonly layers: readonly Layer[]
}

export interface Picture {
  readonly width: number
  readonly height: number
  /** Height of the level horizon in the drawing; may lie outside it. */
  readonly horizon: number
  readonly groundLines: string
  readonly contact: string
  readonly landmark: SoftLayers | null
  /** True when the landmark stands before the subject. */
  readonly landmarkBefore: boolean
  readonly subject: readonly SoftLayers[]
}

/**
 * An even disc of diameter D spreads light with a standard deviation of D / 4 along any line (variance r^2 / 4), so a
 * Gaussian of that deviation softens edges as much as the lens does, though without the disc's hard rim.
 */
const DEVIATION_PER_DISC = 1 / 4
/** Blurs finer than this many units can't be seen and are left sharp, which keeps them crisp in print. */
const FINEST_BLUR = 0.2
const BLUR_STEPS = 4
/** How far beyond the frame things are still drawn, as a part of its longer side. */
const MARGIN = 0.3

function sheetOf(view: View, width: number, height: number): Sheet {
  const margin = Math.max(width, height) * MARGIN
  return {
    middleX: width / 2,
    middleY: height / 2,
    scale: (view.imageDistance / view.frameWidth) * width,
    bounds: { left: -margin, top: -margin, right: width + margin, bottom: height + margin },
    thinnest: 0,
  }
}

/** Null when nothing can be framed. `width` is in the drawing's units, usually screen pixels. */
export function pictureOf(plan: Plan, assessment: Assessment, width: number): Picture | null {
  const { view, levels } = assessment
  if (view === null) return null
  const height = (width * view.frameHeight) / view.frameWidth
  const sheet = sheetOf(view, width, height)
  const { spot } = plan
  const aboveStop = levels.standpoint + spot.standpoint.lensHeight - levels.stop
  // Where the subject stands above the lens, its ground can't be seen: then the ground is the one the camera stands on.
  const below = aboveStop > 0.05 ? aboveStop : spot.standpoint.lensHeight
  const landmarkDepth = assessment.landmarkExtent?.near ?? Infinity
  return {
    width,
    height,
    horizon: horizonLine(view, sheet),
    groundLines: groundLines(view, sheet, below, assessment.toSubject.distance),
    contact: contactPatch(plan, assessment, view, sheet),
    landmark: landmarkLayers(plan, assessment, view, sheet),
    landmarkBefore: landmarkDepth < (assessment.subjectExtent?.near ?? 0),
    subject: subjectLayers(plan, assessment, view, sheet),
  }
}

function seeSubject(plan: Plan, assessment: Assessment, view: View): See {
  const { stop } = plan.spot
  const ground = localFrame(stop.at, assessment.levels.stop)
  return (point) => {
    const turned = subjectPoint(stop.heading, point.north, point.east, point.up)
    return toCamera(view, apparent(view.frame, toEarth(ground, turned.east, turned.north, turned.up), view.refraction))
  }
}

/** A neutral patch on the ground where the subject touches it; the sun's shadow is another matter. */
function contactPatch(plan: Plan, assessment: Assessment, view: View, sheet: Sheet): string {
  const see = seeSubject(plan, assessment, view)
  const { length, width } = plan.shoot.subject
  const corners = Array.from({ length: 32 }, (_, index) => {
    const turn = (index / 32) * 2 * Math.PI
    return see({ east: (width / 2) * 0.85 * Math.cos(turn), north: (length / 2) * 0.98 * Math.sin(turn), up: 0 })
  })
  return outlinePath(
    clipNear(corners).map((point) => toSheet(sheet, point)),
    sheet,
  )
}

function landmarkLayers(plan: Plan, assessment: Assessment, view: View, sheet: Sheet): SoftLayers | null {
  const { landmark } = plan
  if (landmark === null || assessment.landmarkExtent === null) return null
  const placed = solidOfLandmark(landmark, assessment.levels.landmark)
  if (placed === null) return null
  const { frame, solid } = placed
  const see: See = (point) =>
    toCamera(view, apparent(view.frame, toEarth(frame, point.east, point.north, point.up), view.refraction))
  const disc = assessment.sharp?.landmark?.disc ?? 0
  const thin = { ...sheet, thinnest: 0.35 }
  return { deviation: deviationOf(disc, view, sheet), layers: layersOf(paintOrder(solid, see), thin) }
}

/** Units of standard deviation of a blur disc given in millimetres on the sensor. */
function deviationOf(disc: number, view: View, sheet: Sheet): number {
  const unitsPerMillimetre = sheet.scale / view.imageDistance
  const deviation = disc * DEVIATION_PER_DISC * unitsPerMillimetre
  return deviation < FINEST_BLUR ? 0 : deviation
}

function subjectLayers(plan: Plan, assessment: Assessment, view: View, sheet: Sheet): SoftLayers[] {
  const parts = paintOrder(solidOfSubject(plan.shoot.subject), seeSubject(plan, assessment, view))
  const { sharp, focalLength } = assessment
  if (sharp === null || focalLength === null || sharp.endToEnd) {
    return [{ deviation: 0, layers: layersOf(parts, sheet) }]
  }
  const disc = (depth: number): number =>
    depth <= 0 ? 0 : blurDisc(focalLength, sharp.used.exact, sharp.focusDistance, depth)
  const worst = deviationOf(Math.max(disc(sharp.near), disc(sharp.far)), view, sheet)
  const soft = (part: SeenPart): number => {
    const own = disc(part.depth)
    if (own <= sharp.confusion || worst === 0) return 0
    const step = Math.ceil((deviationOf(own, view, sheet) / worst) * BLUR_STEPS)
    return (Math.min(step, BLUR_STEPS) / BLUR_STEPS) * worst
  }
  return runs(parts, soft).map(({ deviation, run }) => ({ deviation, layers: layersOf(run, sheet) }))
}

/** Neighbouring parts of one softness together, in the painter's order. */
function runs(
  parts: readonly SeenPart[],
  soft: (part: SeenPart) => number,
): { readonly deviation: number; readonly run: readonly SeenPart[] }[] {
  const found: { deviation: number; run: SeenPart[] }[] = []
  for (const part of parts) {
    const deviation = soft(part)
    const last = found.at(-1)
    if (last?.deviation === deviation) last.run.push(part)
    else found.push({ deviation, run: [part] })
  }
  return found
}
