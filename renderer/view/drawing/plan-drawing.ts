/** One plan as lines and points on a surface, in pixels: computed once per change, drawn by the map and the close plan alike. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import type { Subject } from '#core/scene/subject.ts'
import { recalled } from '#renderer/job/recalled.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { edgesOf, gripPlace, hasCorners } from '#core/plan/grip.ts'
import { landmarkOutline, subjectOutline } from './outline.ts'
import { type Box, type PlanView, type Point, distanceBetween } from './plan-view.ts'
import { linePath } from '#renderer/text/path-text.ts'
import { inset, overlap } from './pixel-lines.ts'
import { sharpBand, wedgeArc, wedgeOf } from './wedge.ts'

/** Smaller than this on the surface, pixels, a thing gets a ring to be grabbed by. */
export const GRAB_SIZE = 26
/** Nearer together than this, pixels, subject and standpoint are one group. */
export const JOINED_BELOW = 44
/** Radius of the group's ring. */
export const GROUP_RADIUS = 15

export function isJoined(view: PlanView, plan: Plan): boolean {
  const { stop, standpoint } = plan.spot
  return distanceBetween(view.toPoint(stop.at), view.toPoint(standpoint.at)) < JOINED_BELOW
}

export interface SubjectDrawing {
  readonly at: Point
  readonly body: string
  readonly notch: string
  /** Pixels along its longer side. */
  readonly size: number
  /** Where the notch is taken to turn it. */
  readonly handle: Point
  readonly heading: number
}

export interface LandmarkDrawing {
  readonly id: string
  readonly name: string
  readonly kind: Landmark['kind']
  readonly at: Point
  readonly outline: string
  readonly ticks: string
  readonly size: number
  readonly box: Box
  readonly corners: readonly Point[]
  /** Where a new corner can be taken from: the edge and its middle. */
  readonly edges: readonly { readonly index: number; readonly at: Point }[]
}

export interface PlanDrawing {
  readonly subject: SubjectDrawing
  readonly standpoint: Point
  readonly aim: number
  readonly wedge: { readonly area: string; readonly left: string; readonly right: string } | null
  /** The sharp stretch of the wedge; null when nothing can be framed. */
  readonly sharp: { readonly area: string; readonly corners: readonly Point[] } | null
  readonly ring: { readonly line: string; readonly points: readonly Point[] } | null
  readonly landmark: LandmarkDrawing | null
  readonly parking: Point | null
}

/** Unit vector on the surface toward a bearing: y points down. */
export function toward(bearing: number): Point {
  const turn = (bearing * Math.PI) / 180
  return { x: Math.sin(turn), y: -Math.cos(turn) }
}

export function pointMoved(from: Point, direction: Point, by: number): Point {
  return { x: from.x + direction.x * by, y: from.y + direction.y * by }
}

function middleOf(one: Point, other: Point): Point {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 }
}

/** Map, close plan and a still map beside them. */
const SURFACES = 3

const drawSubject = recalled(SURFACES, (subject: Subject, stop: Spot['stop'], view: PlanView): SubjectDrawing => {
  const outline = subjectOutline(subject, stop)
  const corners = outline.corners.map((at) => view.toPoint(at))
  const [right, left] = corners
  const tip = view.toPoint(outline.tip)
  const at = view.toPoint(stop.at)
  const scale = view.pixelsPerMetre(stop.at)
  const reach = Math.max(distanceBetween(at, tip) + 9, GRAB_SIZE)
  return {
    at,
    body: linePath(corners, true),
    notch: right === undefined || left === undefined ? '' : linePath([right, tip, left], true),
    size: Math.max(subject.length, subject.width) * scale,
    handle: pointMoved(at, toward(stop.heading), reach),
    heading: stop.heading,
  }
})

export function boxOf(points: readonly Point[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const point of points) {
    left = Math.min(left, point.x)
    right = Math.max(right, point.x)
    top = Math.min(top, point.y)
    bottom = Math.max(bottom, point.y)
  }
  return { left, top, right, bottom }
}

/** Twice the area, positive when the ring runs clockwise on the surface. */
function turnOfRing(ring: readonly Point[]): number {
  let sum = 0
  ring.forEach((point, index) => {
    const next = ring[(index + 1) % ring.length] ?? point
    sum += point.x * next.y - next.x * point.y
  })
  return sum
}

const TICK = 7

/** A stroke outward from the middle of each face. */
function tickPath(ring: readonly Point[], faces: readonly (readonly [number, number])[]): string {
  const side = turnOfRing(ring) >= 0 ? 1 : -1
  return faces
    .map(([from, to]) => {
      const one = ring[from]
      const other = ring[to]
      const length = one === undefined || other === undefined ? 0 : distanceBetween(one, other)
      if (one === undefined || other === undefined || length === 0) return ''
      const outward = { x: (side * (other.y - one.y)) / length, y: (-side * (other.x - one.x)) / length }
      const middle = middleOf(one, other)
      return linePath([middle, pointMoved(middle, outward, TICK)], false)
    })
    .join('')
}

/** Of a shoot's landmarks on all surfaces: one that stays where it is gives the drawing of the frame before. */
export const drawLandmark = recalled(24 * SURFACES, (landmark: Landmark, view: PlanView): LandmarkDrawing | null => {
  const points = landmarkPoints(landmark)
  const middle = landmarkMiddle(points)
  if (middle === null) return null
  const outline = landmarkOutline(landmark)
  const ring = outline.ring.map((at) => view.toPoint(at))
  const box = boxOf(ring)
  const cornered = hasCorners(landmark)
  const corners = cornered ? points.map((at) => view.toPoint(at)) : []
  return {
    id: landmark.id,
    name: landmark.name.trim(),
    kind: landmark.kind,
    at: view.toPoint(middle),
    outline: linePath(ring, true),
    ticks: tickPath(ring, outline.faces),
    size: Math.max(box.right - box.left, box.bottom - box.top),
    box,
    corners,
    edges: edgesOf(landmark).flatMap((index) => {
      const one = corners[index]
      const other = corners[(index + 1) % corners.length]
      return one === undefined || other === undefined || distanceBetween(one, other) < 2 * GRAB_SIZE
        ? []
        : [{ index, at: middleOf(one, other) }]
    }),
  }
})

const drawPlace = recalled(2 * SURFACES, (at: LatLon, view: PlanView): Point => view.toPoint(at))

/** Metres the wedge reaches on the map: past the landmark's farthest point, so that the landmark lies within. */
export function wedgeReach(plan: Plan): number {
  const { stop, standpoint } = plan.spot
  const places: readonly LatLon[] = plan.landmark === null ? [] : landmarkPoints(plan.landmark)
  const here = localFrame(standpoint.at, 0)
  // The straight way through the earth: it is for drawing, and a hundred times as quick as the geodesic.
  const away = (at: LatLon): number => {
    const { east, north, up } = toLocal(here, localFrame(at, 0).origin)
    return Math.hypot(east, north, up)
  }
  const farthest = Math.max(0, ...places.map(away))
  return farthest > 0 ? farthest * 1.06 : Math.max(60, away(stop.at) * 6)
}

function drawView(
  plan: Plan,
  assessment: Assessment,
  view: PlanView,
  reach: number,
): Pick<PlanDrawing, 'wedge' | 'sharp'> {
  const wedge = wedgeOf(assessment)
  if (wedge === null) return { wedge: null, sharp: null }
  const { standpoint } = plan.spot
  const apex = view.toPoint(standpoint.at)
  const arc = wedgeArc(standpoint, wedge, reach).map((at) => view.toPoint(at))
  const limits = assessment.sharp?.limits ?? null
  const far = Math.min(limits?.far ?? reach, reach)
  const corners =
    limits === null || limits.near >= far
      ? null
      : sharpBand(standpoint, wedge, limits.near, far).map((at) => view.toPoint(at))
  const edge = (end: Point | undefined): string => linePath(end === undefined ? [] : [apex, end], false)
  return {
    wedge: { area: linePath([apex, ...arc], true), left: edge(arc[0]), right: edge(arc.at(-1)) },
    sharp: corners === null ? null : { area: linePath(corners, true), corners },
  }
}

export function drawPlan(
  plan: Plan,
  assessment: Assessment,
  ring: readonly LatLon[] | null,
  view: PlanView,
  reach: number,
): PlanDrawing {
  const parking = gripPlace(plan, { on: 'parking' })
  const ringPoints = ring?.map((at) => view.toPoint(at)) ?? null
  return {
    subject: drawSubject(plan.shoot.subject, plan.spot.stop, view),
    standpoint: drawPlace(plan.spot.standpoint.at, view),
    aim: assessment.view?.bearing ?? assessment.toSubject.bearing ?? 0,
    ...drawView(plan, assessment, view, reach),
    ring: ringPoints === null ? null : { line: linePath(ringPoints, true), points: ringPoints },
    landmark: plan.landmark === null ? null : drawLandmark(plan.landmark, view),
    parking: parking === null ? null : drawPlace(parking, view),
  }
}

export function inSight(box: Box, view: PlanView): boolean {
  return overlap(box, inset(view.box, -20))
}
