/** What of a plan's things the camera sees, and the stage that the light windows are reckoned on. */
import { framePlanes } from '#core/frame/frame-planes.ts'
import type { View } from '#core/frame/projection.ts'
import { type SeenFace, seenFaces } from '#core/frame/seen-faces.ts'
import { type LocalFrame, type LocalPoint, localFrame, turnedInto } from '#core/geo/local-frame.ts'
import type { LightStage, StagedSide, StagedSkylines } from '#core/light/light-stage.ts'
import { type PlacedFaces, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Levels, Plan } from './plan.ts'

const placedFaces = new WeakMap<Landmark, { readonly base: number; readonly placed: PlacedFaces | null }>()

/** The landmark's faces, cut once for as long as it stays as it is. */
export function facesOf(landmark: Landmark, base: number): PlacedFaces | null {
  const known = placedFaces.get(landmark)
  if (known !== undefined && known.base === base) return known.placed
  const placed = landmarkFaces(landmark, base)
  placedFaces.set(landmark, { base, placed })
  return placed
}

/** What was found of a plan that its light depends on. */
interface Found {
  readonly view: View | null
  readonly levels: Levels
  readonly toSubject: number | null
}

export interface SeenThings {
  readonly ground: LocalFrame
  readonly subject: readonly SeenFace[]
  readonly placed: PlacedFaces | null
  readonly landmark: readonly SeenFace[]
}

export function seenThings(plan: Plan, { view, levels }: Pick<Found, 'view' | 'levels'>): SeenThings {
  const { stop } = plan.spot
  const ground = localFrame(stop.at, levels.stop)
  const placed = plan.landmark === null ? null : facesOf(plan.landmark, levels.landmark)
  const { refraction } = plan.shoot
  return {
    ground,
    placed,
    subject: view === null ? [] : seenFaces(view, ground, subjectFaces(plan.shoot.subject, stop.heading), refraction),
    landmark: view === null || placed === null ? [] : seenFaces(view, placed.frame, placed.faces, refraction),
  }
}

function staged(seen: readonly SeenFace[], turn: (normal: LocalPoint) => LocalPoint): StagedSide[] {
  const upright = seen.filter(({ face }) => face.upright)
  const whole = upright.reduce((sum, { share }) => sum + share, 0)
  if (whole <= 0) return []
  return upright
    .map(({ face, share }) => ({ normal: turn(face.normal), part: share / whole }))
    .toSorted((one, other) => other.part - one.part)
}

/** What the light windows need of a plan; `found` is its assessment, `skylines` what the ground makes of the horizon. */
export function lightStage(
  plan: Plan,
  found: Pick<Found, 'view' | 'levels' | 'toSubject'>,
  skylines: StagedSkylines,
): LightStage {
  const { ground, subject, placed, landmark } = seenThings(plan, found)
  return {
    at: plan.spot.stop.at,
    toSubject: found.toSubject,
    subject: staged(subject, (normal) => normal),
    landmark: placed === null ? [] : staged(landmark, (normal) => turnedInto(placed.frame, ground, normal)),
    frame: found.view === null ? null : { borders: framePlanes(found.view) },
    skylines,
  }
}
