/** What of a plan's things the camera sees, and the scene that the light windows are reckoned on. */
import { framePlanes } from '#core/frame/frame-planes.ts'
import type { View } from '#core/frame/projection.ts'
import { type SeenFace, seenFaces } from '#core/frame/seen-faces.ts'
import { type LocalFrame, type LocalPoint, localFrame, turnedInto } from '#core/geo/local-frame.ts'
import type { LightScene, SeenSide, PlanSkylines } from '#core/light/light-scene.ts'
import { type PlacedFaces, type ThingFace, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Subject } from '#core/scene/subject.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { keptWith } from '#core/kept-with.ts'
import type { Levels, Plan } from './plan.ts'
import type { Stop } from '#core/record/spot.ts'

/** The landmark's faces, cut once for as long as it stays as it is. */
export const facesOf = keptWith(landmarkFaces)

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

/** The faces of subject and landmark where they stand: what doesn't change as the camera goes about them. */
export interface FacedThings {
  readonly ground: LocalFrame
  readonly subject: readonly ThingFace[]
  readonly placed: PlacedFaces | null
}

export function facedThings(subject: Subject, stop: Stop, landmark: Landmark | null, levels: Levels): FacedThings {
  return {
    ground: localFrame(stop.at, levels.stop),
    subject: subjectFaces(subject, stop.heading),
    placed: landmark === null ? null : facesOf(landmark, levels.landmark),
  }
}

/** What of them a view has in its frame. */
export function seenOf({ ground, subject, placed }: FacedThings, view: View | null, refraction: number): SeenThings {
  return {
    ground,
    placed,
    subject: view === null ? [] : seenFaces(view, ground, subject, refraction),
    landmark: view === null || placed === null ? [] : seenFaces(view, placed.frame, placed.faces, refraction),
  }
}

export function seenThings(plan: Plan, { view, levels }: Pick<Found, 'view' | 'levels'>): SeenThings {
  const { subject, refraction } = plan.shoot
  return seenOf(facedThings(subject, plan.spot.stop, plan.landmark, levels), view, refraction)
}

function sideParts(seen: readonly SeenFace[], turn: (normal: LocalPoint) => LocalPoint): SeenSide[] {
  const upright = seen.filter(({ face }) => face.upright)
  const whole = upright.reduce((sum, { share }) => sum + share, 0)
  if (whole <= 0) return []
  return upright
    .map(({ face, share }) => ({ normal: turn(face.normal), part: share / whole }))
    .toSorted((one, other) => other.part - one.part)
}

/** The scene of things as a view has them; `at` is where the subject stops, `toSubject` the bearing from the camera to it. */
export function sceneOfThings(
  { ground, subject, placed, landmark }: SeenThings,
  view: View | null,
  at: LatLon,
  toSubject: number | null,
  skylines: PlanSkylines,
): LightScene {
  return {
    at,
    toSubject,
    subject: sideParts(subject, (normal) => normal),
    landmark: placed === null ? [] : sideParts(landmark, (normal) => turnedInto(placed.frame, ground, normal)),
    frame: view === null ? null : { borders: framePlanes(view) },
    skylines,
  }
}

/** What the light windows need of a plan; `found` is its assessment, `skylines` what the ground makes of the horizon. */
export function lightScene(
  plan: Plan,
  found: Pick<Found, 'view' | 'levels' | 'toSubject'>,
  skylines: PlanSkylines,
): LightScene {
  return sceneOfThings(seenThings(plan, found), found.view, plan.spot.stop.at, found.toSubject, skylines)
}
