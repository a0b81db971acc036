/** What can be taken hold of on a plan, and what the arrangement becomes when it is put elsewhere. */
import { exhaustive } from '#core/exhaustive.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type LocalFrame, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { spotFollowing, moveBoth, moveStandpoint, moveStop, turnSubject } from './arrange.ts'
import type { Plan } from './plan.ts'
import { planOf } from './plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { type Landmark, landmarkPoints, withLandmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type DrawnGrip, drawnGripPlace, withDrawnGripAt } from './drawn-grip.ts'

export type Grip =
  | { readonly on: 'subject' | 'standpoint' | 'pair' | 'heading' | 'landmark' | 'parking' }
  /** A corner of the landmark. */
  | { readonly on: 'corner'; readonly index: number }
  /** The middle of an edge: taking it makes a new corner after the one named. */
  | { readonly on: 'edge'; readonly index: number }
  /** Trees or a wall of the shoot: one point of its line, or the whole of it when null. */
  | { readonly on: 'obstruction'; readonly index: number; readonly end: number | null }
  | DrawnGrip

/** An arrangement that a hand has changed: the shoot only when its landmark did. */
export interface Moved {
  readonly spot: Spot
  readonly shoot: Shoot
}

/** Written on the drawn part, read back under the pointer. */
export function gripName(grip: Grip): string {
  if ('sort' in grip) return `${grip.on}:${grip.sort}:${grip.index}:${grip.at}`
  if (grip.on === 'obstruction') return `obstruction:${grip.index}${grip.end === null ? '' : `:${grip.end}`}`
  return 'index' in grip ? `${grip.on}:${grip.index}` : grip.on
}

export function readGrip(name: string): Grip | null {
  const [on, index, end, at] = name.split(':')
  if (on === 'drawn-point' || on === 'drawn-leg') {
    return { on, sort: index === 'stopping' ? 'stopping' : 'keep-out', index: Number(end), at: Number(at) }
  }
  if (on === 'obstruction') return { on, index: Number(index), end: end === undefined ? null : Number(end) }
  if (on === 'corner' || on === 'edge') return { on, index: Number(index) }
  if (on === 'subject' || on === 'standpoint' || on === 'pair' || on === 'heading' || on === 'landmark') return { on }
  return on === 'parking' ? { on } : null
}

function edgeMiddle(points: readonly LatLon[], index: number): LatLon | null {
  const from = points[index]
  const to = points[(index + 1) % points.length]
  return from === undefined || to === undefined ? null : landmarkMiddle([from, to])
}

/** The place of a grip, from which a drag or a step starts; null when the plan has no such thing. */
export function gripPlace(plan: Plan, grip: Grip): LatLon | null {
  const { spot, landmark } = plan
  if (grip.on === 'standpoint') return spot.standpoint.at
  if (grip.on === 'subject' || grip.on === 'pair' || grip.on === 'heading') return spot.stop.at
  if (grip.on === 'parking') return spot.access.parking
  if ('sort' in grip) return drawnGripPlace(plan.shoot, grip)
  if (grip.on === 'obstruction') {
    const line = plan.shoot.obstructions[grip.index]?.line ?? []
    return grip.end === null ? landmarkMiddle(line) : (line[grip.end] ?? null)
  }
  if (landmark === null) return null
  const points = landmarkPoints(landmark)
  if (!('index' in grip)) return landmarkMiddle(points)
  return grip.on === 'corner' ? (points[grip.index] ?? null) : edgeMiddle(points, grip.index)
}

/** A place carried along with a frame: the same metres east and north of its new origin. */
function carried(from: LocalFrame, to: LocalFrame, at: LatLon): LatLon {
  const local = toLocal(from, localFrame(at, 0).origin)
  return placeUnder(toEarth(to, local.east, local.north, local.up))
}

function withLandmark(plan: Plan, landmark: Landmark): Moved {
  const landmarks = plan.shoot.landmarks.map((other) => (other.id === landmark.id ? landmark : other))
  const shoot = { ...plan.shoot, landmarks }
  return { shoot, spot: spotFollowing(planOf(shoot, plan.spot, plan.terrain, plan.pins)) }
}

function withPoints(plan: Plan, change: (points: readonly LatLon[]) => readonly LatLon[]): Moved {
  const { landmark } = plan
  if (landmark === null) return { shoot: plan.shoot, spot: plan.spot }
  return withLandmark(plan, withLandmarkPoints(landmark, change(landmarkPoints(landmark))))
}

/** Points moved as a whole: their middle comes to lie at a place, their shape stays in metres. */
function broughtTogether(points: readonly LatLon[], at: LatLon): readonly LatLon[] {
  const middle = landmarkMiddle(points)
  if (middle === null) return points
  const from = localFrame(middle, 0)
  const to = localFrame(at, 0)
  return points.length === 1 ? [at] : points.map((point) => carried(from, to, point))
}

export function moveLandmark(plan: Plan, at: LatLon): Moved {
  return withPoints(plan, (points) => broughtTogether(points, at))
}

/** A landmark by itself, its middle brought to a place. */
export function landmarkAt(landmark: Landmark, at: LatLon): Landmark {
  return withLandmarkPoints(landmark, broughtTogether(landmarkPoints(landmark), at))
}

function moveObstruction({ shoot, spot }: Plan, index: number, end: number | null, at: LatLon): Moved {
  const obstruction = shoot.obstructions[index]
  if (obstruction === undefined) return { shoot, spot }
  const line = end === null ? broughtTogether(obstruction.line, at) : obstruction.line.with(end, at)
  return { shoot: { ...shoot, obstructions: shoot.obstructions.with(index, { ...obstruction, line }) }, spot }
}

function movePair(plan: Plan, at: LatLon): Spot {
  const { stop, standpoint } = plan.spot
  return moveBoth(plan, at, carried(localFrame(stop.at, 0), localFrame(at, 0), standpoint.at))
}

function turnToward(plan: Plan, at: LatLon): Spot {
  const { bearing } = geodesicLine(plan.spot.stop.at, at)
  return bearing === null ? plan.spot : turnSubject(plan, bearing)
}

/** The plan after a grip has been brought to a place. Always reckoned from the plan at the start of the move. */
export function gripBroughtTo(plan: Plan, grip: Grip, at: LatLon): Moved {
  const { shoot, spot } = plan
  switch (grip.on) {
    case 'subject':
      return { shoot, spot: moveStop(plan, at) }
    case 'standpoint':
      return { shoot, spot: moveStandpoint(plan, at) }
    case 'pair':
      return { shoot, spot: movePair(plan, at) }
    case 'heading':
      return { shoot, spot: turnToward(plan, at) }
    case 'parking':
      return { shoot, spot: { ...spot, access: { ...spot.access, parking: at } } }
    case 'landmark':
      return moveLandmark(plan, at)
    case 'corner':
      return withPoints(plan, (points) => points.with(grip.index, at))
    case 'edge':
      return withPoints(plan, (points) => points.toSpliced(grip.index + 1, 0, at))
    case 'obstruction':
      return moveObstruction(plan, grip.index, grip.end, at)
    case 'drawn-point':
    case 'drawn-leg':
      return { shoot: withDrawnGripAt(shoot, grip, at), spot }
    default:
      return exhaustive(grip)
  }
}

/** Fewer corners than this are no landmark of its kind. */
function fewestCorners(landmark: Landmark): number {
  return landmark.kind === 'building' ? 3 : 2
}

export function hasCorners(landmark: Landmark): boolean {
  return landmark.kind === 'span' || landmark.kind === 'building'
}

/** The plan without one corner of its landmark; null when none may go. */
export function withoutCorner(plan: Plan, index: number): Moved | null {
  const { landmark } = plan
  if (landmark === null || !hasCorners(landmark)) return null
  const points = landmarkPoints(landmark)
  if (points[index] === undefined || points.length <= fewestCorners(landmark)) return null
  return withPoints(plan, () => points.toSpliced(index, 1))
}

/** As many corners as a stored landmark may have. */
function mostCorners(landmark: Landmark): number {
  return landmark.kind === 'building' ? 500 : 200
}

/** The index of each edge that may take a new corner. */
export function edgesOf(landmark: Landmark): number[] {
  if (!hasCorners(landmark) || landmarkPoints(landmark).length >= mostCorners(landmark)) return []
  const count = landmarkPoints(landmark).length
  return Array.from({ length: landmark.kind === 'building' ? count : count - 1 }, (_, index) => index)
}
