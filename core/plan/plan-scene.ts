/** The scene before the lens of a plan, and the camera's setting: what every question asked of the plan begins with. */
import { apparent } from '#core/frame/projection.ts'
import type { Scene, Setting } from '#core/frame/set-up.ts'
import { type EarthPoint, type LocalFrame, type LocalPoint, localFrame, toEarth } from '#core/geo/local-frame.ts'
import { boxCorners, subjectPoint } from '#core/scene/box.ts'
import { landmarkBoundingPoints } from '#core/scene/bounding-points.ts'
import type { Subject } from '#core/scene/subject.ts'
import type { Camera } from '#core/optics/sensor.ts'
import { type Levels, type Plan, levelsOf } from './plan.ts'
import type { Shot } from '#core/record/spot.ts'

/** The scene of a plan before its lens; shared by every question asked of the plan. */
export interface PlanScene {
  readonly scene: Scene
  readonly levels: Levels
  readonly landmarkBoundingPoints: readonly LocalPoint[] | null
}

/** The subject where it stops, earth-centred: what doesn't change as the camera goes about it. */
export interface SubjectPoints {
  readonly corners: readonly EarthPoint[]
  readonly centre: EarthPoint
  readonly feature: EarthPoint
}

/** `ground` is the frame at the ground where it stops; `behindFront` metres behind its front end lies the feature that focus may be on. */
export function subjectPoints(
  subject: Subject,
  heading: number,
  behindFront: number,
  ground: LocalFrame,
): SubjectPoints {
  const place = ({ east, north, up }: LocalPoint): EarthPoint => toEarth(ground, east, north, up)
  const middle = subject.height / 2
  const ahead = subject.length / 2 - Math.min(behindFront, subject.length)
  return {
    corners: boxCorners(subject, heading).map(place),
    centre: place({ east: 0, north: 0, up: middle }),
    feature: place(subjectPoint(heading, ahead, 0, middle)),
  }
}

/** The scene as it appears from a lens. */
export function sceneFrom(frame: LocalFrame, { corners, centre, feature }: SubjectPoints, refraction: number): Scene {
  return {
    frame,
    corners: seenFrom(frame, corners, refraction),
    centre: apparent(frame, centre, refraction),
    feature: apparent(frame, feature, refraction),
    refraction,
  }
}

/** Points as they appear from a lens. */
export function seenFrom(frame: LocalFrame, points: readonly EarthPoint[], refraction: number): LocalPoint[] {
  return points.map((point) => apparent(frame, point, refraction))
}

/** Of the plan asked about last: a move asks for its scene several times, to follow what is held and to assess what came of it. */
let last: { readonly plan: Plan; readonly found: PlanScene } | null = null

/** Whether two plans have the same things before the same lens, whatever else of them differs. */
function sameScene(one: Plan, other: Plan): boolean {
  return (
    one.spot.standpoint === other.spot.standpoint &&
    one.spot.stop === other.spot.stop &&
    one.spot.shot.focus.behindFront === other.spot.shot.focus.behindFront &&
    one.landmark === other.landmark &&
    one.terrain === other.terrain &&
    one.pins === other.pins &&
    one.shoot.subject === other.shoot.subject &&
    one.shoot.refraction === other.shoot.refraction
  )
}

export function sceneOf(plan: Plan): PlanScene {
  if (last === null || !sameScene(last.plan, plan)) last = { plan, found: madeScene(plan) }
  return last.found
}

function madeScene(plan: Plan): PlanScene {
  const { spot, shoot, landmark } = plan
  const levels = levelsOf(plan)
  const { subject, refraction } = shoot
  const frame = localFrame(spot.standpoint.at, levels.standpoint + spot.standpoint.lensHeight)
  const ground = localFrame(spot.stop.at, levels.stop)
  const points = subjectPoints(subject, spot.stop.heading, spot.shot.focus.behindFront, ground)
  return {
    scene: sceneFrom(frame, points, refraction),
    levels,
    landmarkBoundingPoints:
      landmark === null ? null : seenFrom(frame, landmarkBoundingPoints(landmark, levels.landmark), refraction),
  }
}

/** The camera's setting of a plan, in the orientation asked for. */
export function settingOf(plan: Plan, orientation: 'lying' | 'upright'): Setting {
  return settingFor(plan.shoot.bag.camera, plan.spot.shot, orientation)
}

export function settingFor(
  { sensorWidth, sensorHeight }: Pick<Camera, 'sensorWidth' | 'sensorHeight'>,
  { placement, focus }: Pick<Shot, 'placement' | 'focus'>,
  orientation: 'lying' | 'upright',
): Setting {
  const long = Math.max(sensorWidth, sensorHeight)
  const short = Math.min(sensorWidth, sensorHeight)
  return orientation === 'lying'
    ? { frameWidth: long, frameHeight: short, placement, focus }
    : { frameWidth: short, frameHeight: long, placement, focus }
}
