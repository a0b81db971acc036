/** The light of one instant as shapes on a surface: shadows on the ground, sides lit and in shade, the way the light comes. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, type LocalPoint, localFrame, placeUnder, toEarth } from '#core/geo/local-frame.ts'
import type { Sky } from '#core/light/exposure.ts'
import { SHADE_FROM, incidence, sunDirection } from '#core/light/incidence.ts'
import { shadowOf } from '#core/light/shadow.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { turnedInto } from '#core/geo/local-frame.ts'
import { facesOf } from '#core/plan/seen-sides.ts'
import type { Plan } from '#core/plan/plan.ts'
import { boxCorners, subjectPoint } from '#core/scene/box.ts'
import { convexParts } from '#core/scene/convex-parts.ts'
import { type PlacedFaces, type ThingFace, subjectFaces } from '#core/scene/face.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { pointMoved, toward } from './plan-drawing.ts'
import { type Box, type PlanView, type Point, distanceBetween } from './plan-view.ts'
import { linePath } from '#renderer/text/path-text.ts'
import { boxAround } from './pixel-lines.ts'

/** The sun as the drawing needs it. */
export interface SunNow {
  /** Where the subject stops, at its ground; `direction` is told there. */
  readonly ground: LocalFrame
  readonly azimuth: number
  readonly up: boolean
  /** Unit, toward the sun where it appears. */
  readonly direction: LocalPoint
  /** Whether the sky lets things cast a shadow. */
  readonly casts: boolean
}

export function skyCasts(sky: Sky): boolean {
  return sky !== 'overcast' && sky !== 'open-shade'
}

export function sunNow(plan: Plan, { levels, light }: Assessment): SunNow {
  const { azimuth, apparent, up } = light.sun
  return {
    ground: localFrame(plan.spot.stop.at, levels.stop),
    azimuth,
    up,
    direction: sunDirection(azimuth, apparent),
    casts: up && skyCasts(plan.shoot.sky),
  }
}

function pointOf(frame: LocalFrame, view: PlanView, { east, north, up }: LocalPoint): Point {
  return view.toPoint(placeUnder(toEarth(frame, east, north, up)))
}

/** The subject's shadow on level ground; null when it casts none or it reaches too far to be told. */
export function subjectShadow(plan: Plan, sun: SunNow, view: PlanView): readonly Point[] | null {
  if (!sun.casts) return null
  const outline = shadowOf(boxCorners(plan.shoot.subject, plan.spot.stop.heading), sun.direction)
  return outline?.map((point) => pointOf(sun.ground, view, point)) ?? null
}

/** The landmark's shadow as one outline for each of its parts; none of it is told when a part of it reaches too far. */
export function landmarkShadow(landmark: Landmark, base: number, sun: SunNow, view: PlanView): readonly Point[][] {
  const placed = sun.casts ? convexParts(landmark, base) : null
  if (placed === null) return []
  const direction = turnedInto(sun.ground, placed.frame, sun.direction)
  const outlines: Point[][] = []
  for (const part of placed.parts) {
    const outline = shadowOf(part, direction)
    if (outline === null) return []
    outlines.push(outline.map((point) => pointOf(placed.frame, view, point)))
  }
  return outlines
}

/** A side as a stroke along its foot. */
export interface SideStroke {
  readonly id: string
  readonly lit: boolean
  readonly line: readonly Point[]
}

/** Pixels between a side and its stroke. */
const STROKE_OFF = 3.2
/** How near two directions of a line may come to opposite ones (0 is opposite) before its corner stands out no farther. */
const SHARPEST = 1 / 3

/** A line shifted to its right as one walks along it on the surface, which is outward along a side's foot. */
export function besideLine(line: readonly Point[], by: number): Point[] {
  const directions = line.slice(1).map((to, index) => {
    const from = line[index] ?? to
    const length = distanceBetween(from, to)
    return length === 0 ? null : { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
  })
  return line.map((point, index) => {
    const before = directions[index - 1] ?? directions[index] ?? null
    const after = directions[index] ?? before
    if (before === null || after === null) return point
    const stretch = 1 / Math.max(SHARPEST, 1 + before.x * after.x + before.y * after.y)
    return pointMoved(point, { x: -(before.y + after.y) * stretch, y: (before.x + after.x) * stretch }, by)
  })
}

function isLit(face: ThingFace, direction: LocalPoint, up: boolean): boolean {
  return up && incidence(face.normal, direction) < SHADE_FROM
}

interface Foot {
  readonly face: ThingFace
  readonly from: LatLon
  readonly to: LatLon
}

const feetKnown = new WeakMap<PlacedFaces, readonly Foot[]>()

/** The two ends of each upright side's foot, left to right as seen from outside: a face's first two corners. */
function feetOf(placed: PlacedFaces): readonly Foot[] {
  const known = feetKnown.get(placed)
  if (known !== undefined) return known
  const place = ({ east, north, up }: LocalPoint): LatLon => placeUnder(toEarth(placed.frame, east, north, up))
  const feet = placed.faces.flatMap((face): Foot[] => {
    const [from, to] = face.corners
    return !face.upright || from === undefined || to === undefined ? [] : [{ face, from: place(from), to: place(to) }]
  })
  feetKnown.set(placed, feet)
  return feet
}

/** Every upright side of the landmark, segment by segment. */
export function landmarkStrokes(landmark: Landmark, base: number, sun: SunNow, view: PlanView): SideStroke[] {
  const placed = facesOf(landmark, base)
  if (placed === null) return []
  const direction = turnedInto(sun.ground, placed.frame, sun.direction)
  return feetOf(placed).map(({ face, from, to }) => ({
    id: face.id,
    lit: isLit(face, direction, sun.up),
    line: besideLine([view.toPoint(from), view.toPoint(to)], STROKE_OFF),
  }))
}

/** The subject's four sides; the front's goes round the notch. */
export function subjectStrokes(plan: Plan, sun: SunNow, view: PlanView): SideStroke[] {
  const { subject } = plan.shoot
  const { heading } = plan.spot.stop
  const tip = subjectPoint(heading, subject.length / 2 + subject.width * 0.6, 0, 0)
  return subjectFaces(subject, heading).flatMap((face): SideStroke[] => {
    const [from, to] = face.corners
    if (!face.upright || from === undefined || to === undefined) return []
    const line = face.id === 'front' ? [from, tip, to] : [from, to]
    return [
      {
        id: face.id,
        lit: isLit(face, sun.direction, sun.up),
        line: besideLine(
          line.map((point) => pointOf(sun.ground, view, point)),
          STROKE_OFF,
        ),
      },
    ]
  })
}

/** Strokes as one path for the lit sides and one for those in shade. */
export function strokePaths(strokes: readonly SideStroke[]): { readonly lit: string; readonly shade: string } {
  const path = (lit: boolean): string =>
    strokes
      .filter((stroke) => stroke.lit === lit)
      .map(({ line }) => linePath(line, false))
      .join('')
  return { lit: path(true), shade: path(false) }
}

/** Pixels: length of the middle ray, of those beside it, how far apart, size of the head. */
export const RAY_LENGTH = 17
const SIDE_RAY = 9
const APART = 5.5
const HEAD = 4.5

/** Three short strokes on the sun's side, pointing toward a place; their tip lies so many pixels from it. */
export function lightRays(at: Point, azimuth: number, gap: number): string {
  const out = toward(azimuth)
  const aside = { x: -out.y, y: out.x }
  const tip = pointMoved(at, out, gap)
  const stroke = (off: number, length: number): string => {
    const from = pointMoved(pointMoved(tip, aside, off), out, off === 0 ? 0 : 7)
    return linePath([pointMoved(from, out, length), from], false)
  }
  const wing = (side: 1 | -1): Point => pointMoved(pointMoved(tip, out, HEAD), aside, side * HEAD * 0.7)
  return (
    stroke(0, RAY_LENGTH) +
    stroke(APART, SIDE_RAY) +
    stroke(-APART, SIDE_RAY) +
    linePath([wing(1), tip, wing(-1)], false)
  )
}

/** What the rays take on the surface. */
export function raysBox(at: Point, azimuth: number, gap: number): Box {
  const side = RAY_LENGTH + 4
  return boxAround(pointMoved(at, toward(azimuth), gap + RAY_LENGTH / 2), side, side)
}

/**
 * The lit part of the moon's disc around 0, 0, its lit limb upward: a half circle and the half ellipse of the terminator.
 * `lit` is the share of the disc.
 */
export function litMoon(radius: number, lit: number): string {
  const half = Math.abs(1 - 2 * lit) * radius
  const sweep = lit > 0.5 ? 1 : 0
  return `M${-radius},0A${radius},${radius} 0 0 1 ${radius},0A${radius},${half} 0 0 ${sweep} ${-radius},0Z`
}
