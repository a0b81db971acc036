/** The light over the map, computed once per change: shadows, lit sides, the ring of hours and where its words find room. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { coveredBoxes } from './covered.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { GRAB_SIZE, GROUP_RADIUS, type LandmarkDrawing, type PlanDrawing, boxOf } from './plan-drawing.ts'
import { type HourBead, type HourLabel, beadBoxes, placeBeads, placeHourLabels, ringRadius } from './hour-ring.ts'
import {
  type SideStroke,
  type SunNow,
  landmarkShadow,
  landmarkStrokes,
  raysBox,
  subjectShadow,
  subjectStrokes,
} from './light-drawing.ts'
import type { Box, PlanView, Point } from './plan-view.ts'
import { type RingDrawing, ringMarks, ringOf, ringRaysGap } from './ring-marks.ts'
import { boxAround, inset, textWidth } from './pixel-lines.ts'

/** Pixels across from which a shadow is seen. */
const SHADOW_FROM = 10

export interface ThingsLight {
  /** One outline for each part; none where none is told. */
  readonly subjectShadow: readonly (readonly Point[])[]
  readonly landmarkShadow: readonly (readonly Point[])[]
  readonly subjectSides: readonly SideStroke[]
  readonly landmarkSides: readonly SideStroke[]
}

function seenShadow(outlines: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const { left, right, top, bottom } = boxOf(outlines.flat())
  return Math.max(right - left, bottom - top) >= SHADOW_FROM ? outlines : []
}

/**
 * Shadows and sides of the things, each only where it is large enough to be seen: a thing in the ring by which it is grabbed
 * shows no sides. `alone` is a subject drawn by itself, not as a group.
 */
export function thingsLight(
  plan: Plan,
  { levels }: Assessment,
  { subject, landmark }: PlanDrawing,
  sun: SunNow,
  view: PlanView,
  alone: boolean,
): ThingsLight {
  const own = alone ? subjectShadow(plan, sun, view) : null
  const other = plan.landmark
  return {
    subjectShadow: seenShadow(own === null ? [] : [own]),
    landmarkShadow: seenShadow(other === null ? [] : landmarkShadow(other, levels.landmark, sun, view)),
    subjectSides: alone && subject.size >= GRAB_SIZE ? subjectStrokes(plan, sun, view) : [],
    landmarkSides:
      other !== null && landmark !== null && landmark.size >= GRAB_SIZE
        ? landmarkStrokes(other, levels.landmark, sun, view)
        : [],
  }
}

/** Null when the map is too far away for a ring of hours. */
export function hourRing(
  plan: Plan,
  { light }: Assessment,
  { subject }: PlanDrawing,
  beads: readonly HourBead[],
  view: PlanView,
): RingDrawing | null {
  const radius = ringRadius(view.box, view.pixelsPerMetre(plan.spot.stop.at), subject.size)
  return radius === null ? null : ringOf(subject.at, radius, placeBeads(beads, subject.at, radius), light)
}

/** What the plate of the sightline rather leaves free: beads, sun and moon. */
export function ringBoxes(ring: RingDrawing | null): Box[] {
  return ring === null ? [] : [...beadBoxes(ring.beads), ...ringMarks(ring)]
}

const NAME_SIZE = 13

/** Over a long thing's middle, where its tick leaves room; over the whole of one that is as high as wide. */
export function nameLine({ box, at, kind }: LandmarkDrawing): number {
  const high = box.bottom - box.top
  const long = kind === 'span' && box.right - box.left > 2 * high
  return (long ? at.y - 12 : Math.min(box.top, at.y - 15)) - 8
}

function nameBox(landmark: LandmarkDrawing): Box {
  return boxAround(
    { x: landmark.at.x, y: nameLine(landmark) - 4 },
    textWidth(landmarkName(landmark), NAME_SIZE) + 6,
    18,
  )
}

/** The hours' names, clear of the things, the plate and what lies over the map. */
export function hourLabels(
  ring: RingDrawing,
  { light }: Assessment,
  drawing: PlanDrawing,
  plate: Box | null,
  view: PlanView,
): HourLabel[] {
  const { landmark, standpoint, subject, parking } = drawing
  const group = 2 * GROUP_RADIUS + 6
  const clear: Box[] = [
    ...coveredBoxes(view.box),
    ...ringMarks(ring),
    ...(light.sun.up ? [raysBox(ring.middle, light.sun.azimuth, ringRaysGap(ring))] : []),
    boxAround(subject.at, group, group),
    boxAround(standpoint, group, group),
    ...(plate === null ? [] : [plate]),
    ...(parking === null ? [] : [boxAround(parking, 20, 20)]),
    ...(landmark === null ? [] : [nameBox(landmark)]),
  ]
  return placeHourLabels(ring.beads, ring.middle, ring.radius, inset(view.box, 4), clear)
}
