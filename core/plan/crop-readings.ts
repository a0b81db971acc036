/** Every crop of the shoot in both ways to hold the camera: how much of it subject and landmark fill. */
import { type Plan } from './plan.ts'
import { type SetUp, setUp } from '#core/frame/set-up.ts'
import { settingOf, type PlanScene } from './plan-scene.ts'
import { extentOf, type Extent, framingOf, type Framing } from '#core/frame/framing.ts'
import { cropSize, type Crop } from '#core/frame/crop.ts'

export interface CropReading {
  readonly crop: Crop
  readonly orientation: 'lying' | 'upright'
  readonly subject: Framing
  readonly landmark: Framing | null
}

export function cropReadings(plan: Plan, found: PlanScene, made: SetUp, landmark: Extent | null): CropReading[] {
  const own = plan.spot.shot.orientation
  const readings: CropReading[] = []
  for (const orientation of ['lying', 'upright'] as const) {
    const turned = orientation === own ? made : setUp(found.scene, settingOf(plan, orientation), made.focalLength, made)
    if (turned === null) continue
    const boundingPoints = found.landmarkBoundingPoints
    const behind =
      orientation === own ? landmark : boundingPoints === null ? null : extentOf(turned.view, boundingPoints)
    for (const crop of plan.shoot.crops) {
      const { width, height } = cropSize(crop, turned.view.frameWidth, turned.view.frameHeight)
      readings.push({
        crop,
        orientation,
        subject: framingOf(turned.subject, width, height),
        landmark: behind === null ? null : framingOf(behind, width, height),
      })
    }
  }
  return readings
}
