/** The picture through the lens as plain data: horizon, ground, landmark and subject as filled paths, and how soft each is. */
import type { View } from '#core/frame/projection.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import type { Sky } from '#core/light/exposure.ts'
import { blurDisc, blurDiscAtInfinity } from '#core/optics/depth-of-field.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { lensOn } from '#core/plan/ground-reading.ts'
import type { Plan } from '#core/plan/plan.ts'
import { groundLines, horizonLine } from './ground-lines.ts'
import type { Footing } from './ground-bands.ts'
import { groundLooks } from './ground-looks.ts'
import { type GroundPicture, type GroundThings, groundPicture } from './ground-picture.ts'
import { landmarkReach } from './ground-reach.ts'
import { contactPatch, landmarkShadowShapes, subjectShadowShapes } from './ground-shadows.ts'
import { type Layer, layersOf } from './layers.ts'
import { type Lighting, lightingOf } from './lighting.ts'
import { type SeenPart, paintOrder } from './painter.ts'
import type { Sheet } from './pen.ts'
import { obstructionStrips } from './obstruction-strips.ts'
import { type See, seer } from './camera-transform.ts'
import { type SkyBody, moonInPicture, sunInPicture } from './sky-bodies.ts'
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
  /** Apparent, degrees: what the hour's light goes by. */
  readonly sunAltitude: number
  readonly sky: Sky
  /** Null when down or nowhere near the picture. */
  readonly sun: SkyBody | null
  readonly moon: SkyBody | null
  /** How soft sun and moon are: like all that is infinitely far. */
  readonly skyDeviation: number
  /** The true ground; null without elevations: then it is level. */
  readonly ground: GroundPicture | null
  readonly groundLines: string
  /** Shadows on the ground; empty where the sun casts none. */
  readonly subjectShadow: string
  readonly landmarkShadow: string
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

/**
 * Null when nothing can be framed. `width` is in the drawing's units, usually screen pixels. `moving` while the standpoint is dragged:
 * the ground is then looked at less finely.
 */
export function pictureOf(plan: Plan, assessment: Assessment, width: number, moving = false): Picture | null {
  const { view, levels, light } = assessment
  if (view === null) return null
  const height = (width * view.frameHeight) / view.frameWidth
  const sheet = sheetOf(view, width, height)
  const { spot, shoot } = plan
  const aboveStop = levels.standpoint + spot.standpoint.lensHeight - levels.stop
  // Where the subject stands above the lens, its ground can't be seen: then the ground is the one the camera stands on.
  const below = aboveStop > 0.05 ? aboveStop : spot.standpoint.lensHeight
  const landmarkDepth = assessment.landmarkExtent?.near ?? Infinity
  const see = seer(view, localFrame(spot.stop.at, levels.stop), spot.stop.heading)
  const lighting = lightingOf(view, light, shoot.sky)
  const landmarkBefore = landmarkDepth < (assessment.subjectExtent?.near ?? 0)
  return {
    width,
    height,
    horizon: horizonLine(view, sheet),
    sunAltitude: light.sun.apparent,
    sky: shoot.sky,
    sun: sunInPicture(view, sheet, light),
    moon: moonInPicture(view, sheet, light),
    skyDeviation: skyDeviation(assessment, view, sheet),
    ground: groundOf(plan, assessment, { view, sheet, landmarkBefore, moving }),
    groundLines: groundLines(view, sheet, below, assessment.toSubject.distance),
    subjectShadow: subjectShadowShapes(plan, assessment, see, sheet),
    landmarkShadow: landmarkShadowShapes(plan, assessment, view, sheet),
    contact: contactPatch(plan, see, sheet),
    landmark: landmarkLayers(plan, assessment, view, sheet),
    landmarkBefore,
    subject: subjectLayers(plan, assessment, { view, sheet, see, lighting }),
  }
}

interface GroundStand {
  readonly view: View
  readonly sheet: Sheet
  readonly landmarkBefore: boolean
  readonly moving: boolean
}

/** Softness of the ground goes in so many steps up to that of what is infinitely far. */
const GROUND_STEPS = 4

/** Beyond the frame the ground is drawn as far as a blur at its edge reaches. */
function groundOf(plan: Plan, assessment: Assessment, stand: GroundStand): GroundPicture | null {
  const { terrain, landmark } = plan
  if (terrain === null) return null
  const { view, sheet, landmarkBefore, moving } = stand
  const { levels, sharp, focalLength, ground } = assessment
  const farthest = skyDeviation(assessment, view, sheet)
  const margin = Math.min(-sheet.bounds.left, 4 + 3 * farthest)
  const seen = groundLooks(plan, levels, view, sheet, margin, moving)
  if (seen === null) return null
  const soft = (distance: number): number => {
    if (farthest === 0 || sharp === null || focalLength === null) return 0
    const own = deviationOf(blurDisc(focalLength, sharp.used.exact, sharp.focusDistance, distance), view, sheet)
    return (Math.min(GROUND_STEPS, Math.round((own / farthest) * GROUND_STEPS)) / GROUND_STEPS) * farthest
  }
  const subjectNear = assessment.subjectExtent?.near ?? 0
  const toSubject = seen.looks.map(() => subjectNear)
  const subjectHidden = (ground?.toSubject.hidden ?? 0) > 0
  const drawn = landmark !== null && assessment.landmarkExtent !== null
  const toLandmark = drawn ? landmarkReach(landmark, levels.landmark, view, seen) : null
  const things: GroundThings = landmarkBefore
    ? { farther: subjectHidden ? toSubject : null, nearer: (ground?.toLandmark?.hidden ?? 0) > 0 ? toLandmark : null }
    : { farther: toLandmark, nearer: subjectHidden ? toSubject : null }
  const footing = footingOf(plan, assessment)
  const [farther, nearer] = landmarkBefore ? [toSubject, toLandmark] : [toLandmark, toSubject]
  const eye = lensOn(terrain, plan, levels)
  const obstructions = obstructionStrips(
    { view, sheet, seen, grid: terrain, eye, footing, soft, farther, nearer },
    plan.shoot.obstructions,
  )
  return groundPicture(seen, { view, sheet, footing, cell: terrain.cell, soft }, things, obstructions)
}

/** Metres of ground drawn behind the subject's feet. */
const BEHIND_FEET = 0.5

function footingOf({ spot }: Plan, { levels, subjectExtent }: Assessment): Footing {
  const { lensHeight } = spot.standpoint
  const aboveStop = levels.standpoint + lensHeight - levels.stop
  const carries = (subjectExtent?.far ?? 0) + BEHIND_FEET
  return { below: lensHeight, carries, slope: -aboveStop / carries }
}

function skyDeviation({ sharp, focalLength }: Assessment, view: View, sheet: Sheet): number {
  if (sharp === null || focalLength === null) return 0
  return deviationOf(blurDiscAtInfinity(focalLength, sharp.used.exact, sharp.focusDistance), view, sheet)
}

/** What overlaps by less than this many units, or than its softness, counts as apart in the far landmark. */
const LEAST_SLACK = 0.4

function landmarkLayers(plan: Plan, assessment: Assessment, view: View, sheet: Sheet): SoftLayers | null {
  const { landmark } = plan
  const { light } = assessment
  if (landmark === null || assessment.landmarkExtent === null) return null
  const placed = solidOfLandmark(landmark, assessment.levels.landmark)
  if (placed === null) return null
  const deviation = deviationOf(assessment.sharp?.landmark?.disc ?? 0, view, sheet)
  const lighting = lightingOf(view, light, plan.shoot.sky, light.sunOnLandmark)
  const parts = paintOrder(placed.solid, seer(view, placed.frame), lighting)
  const thin = { ...sheet, thinnest: 0.35 }
  return { deviation, layers: layersOf(parts, thin, Math.max(LEAST_SLACK, deviation)) }
}

/** Units of standard deviation of a blur disc given in millimetres on the sensor. */
function deviationOf(disc: number, view: View, sheet: Sheet): number {
  const unitsPerMillimetre = sheet.scale / view.imageDistance
  const deviation = disc * DEVIATION_PER_DISC * unitsPerMillimetre
  return deviation < FINEST_BLUR ? 0 : deviation
}

interface Stand {
  readonly view: View
  readonly sheet: Sheet
  readonly see: See
  readonly lighting: Lighting
}

function subjectLayers(plan: Plan, assessment: Assessment, { view, sheet, see, lighting }: Stand): SoftLayers[] {
  const parts = paintOrder(solidOfSubject(plan.shoot.subject), see, lighting)
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
