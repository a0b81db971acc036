/** The scene before the lens of a plan, and the camera's setting: what every question asked of the plan begins with. */
import { apparent } from '#core/frame/projection.ts'
import type { Scene, Setting } from '#core/frame/set-up.ts'
import { type LocalPoint, localFrame, toEarth } from '#core/geo/local-frame.ts'
import { boxCorners, subjectPoint } from '#core/scene/box.ts'
import { landmarkShell } from '#core/scene/shell.ts'
import { type Levels, type Plan, levelsOf } from './plan.ts'

/** The scene of a plan before its lens; shared by every question asked of the plan. */
export interface PlanScene {
  readonly scene: Scene
  readonly levels: Levels
  readonly landmarkShell: readonly LocalPoint[] | null
}

export function sceneOf(plan: Plan): PlanScene {
  const { spot, shoot, landmark } = plan
  const levels = levelsOf(plan)
  const { refraction } = shoot
  const frame = localFrame(spot.standpoint.at, levels.standpoint + spot.standpoint.lensHeight)
  const ground = localFrame(spot.stop.at, levels.stop)
  const see = (point: LocalPoint): LocalPoint =>
    apparent(frame, toEarth(ground, point.east, point.north, point.up), refraction)
  const { subject } = shoot
  const middle = subject.height / 2
  const ahead = subject.length / 2 - Math.min(spot.shot.focus.behindFront, subject.length)
  const scene: Scene = {
    frame,
    corners: boxCorners(subject, spot.stop.heading).map(see),
    centre: see({ east: 0, north: 0, up: middle }),
    feature: see(subjectPoint(spot.stop.heading, ahead, 0, middle)),
    refraction,
  }
  const shell =
    landmark === null
      ? null
      : landmarkShell(landmark, levels.landmark).map((point) => apparent(frame, point, refraction))
  return { scene, levels, landmarkShell: shell }
}

/** The camera's setting of a plan, in the orientation asked for. */
export function settingOf(plan: Plan, orientation: 'lying' | 'upright'): Setting {
  const { sensorWidth, sensorHeight } = plan.shoot.bag.camera
  const long = Math.max(sensorWidth, sensorHeight)
  const short = Math.min(sensorWidth, sensorHeight)
  const { placement, focus } = plan.spot.shot
  return orientation === 'lying'
    ? { frameWidth: long, frameHeight: short, placement, focus }
    : { frameWidth: short, frameHeight: long, placement, focus }
}
