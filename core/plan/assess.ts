/** The assessment: all that is computed for one spot, as one plain object that screen, comparison and sheet read alike. */
import { answerLens } from './lens-answer.ts'
import { type Problem } from './problem.ts'
import { type CropReading, cropReadings } from './crop-readings.ts'
import { type Framing, type Extent, extentOf, framingOf } from '#core/frame/framing.ts'
import { imageSize } from '#core/frame/fill.ts'
import { type LensOffer } from '#core/frame/lens-choice.ts'
import type { View } from '#core/frame/projection.ts'
import { type SetUp } from '#core/frame/set-up.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import { type LocalPoint, localFrame, toLocal } from '#core/geo/local-frame.ts'
import { angleOfView } from '#core/optics/angle-of-view.ts'
import { type Lens, reaches } from '#core/optics/lens.ts'
import { type Camera, circleOfConfusion } from '#core/optics/sensor.ts'
import { type Sharpness, sharpness } from '#core/optics/sharpness.ts'
import { subjectSides } from '#core/scene/box.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import type { Subject } from '#core/scene/subject.ts'
import { degrees, turnBetween } from '#core/units/angle.ts'
import { type GroundReading, groundReading } from './ground-reading.ts'
import { type GroundUnderThings, groundUnder } from './ground-under.ts'
import { type LightReading, lightReading } from './light-reading.ts'
import type { Levels, Plan } from './plan.ts'
import { type PlanScene, sceneOf, settingOf } from './plan-scene.ts'
import { landmarkShareHere } from './stand.ts'
import type { Spot } from '#core/record/spot.ts'

export interface SightlineReading {
  /** Metres along the ground (WGS84 geodesic). */
  readonly distance: number
  /** True bearing 0..360; null when it has no meaning (same place, pole). */
  readonly bearing: number | null
  /** Degrees above the level horizon from lens to the target's middle, as it appears; null between things other than the lens. */
  readonly altitude: number | null
}

export interface Assessment {
  readonly problems: readonly Problem[]
  readonly levels: Levels
  readonly toSubject: SightlineReading
  readonly toLandmark: SightlineReading | null
  readonly subjectToLandmark: SightlineReading | null
  /** Degrees the camera stands off the subject's side: 0 square to its side, 90 before its front or rear; null at the same place. */
  readonly offSide: number | null
  /** Millimetres for the wished fill; null when none does it. */
  readonly wantedFocalLength: number | null
  readonly offers: readonly LensOffer[]
  /** The lens taken; null when the bag is empty. */
  readonly lens: LensOffer | null
  /** Millimetres in use; null when nothing can be framed. */
  readonly focalLength: number | null
  readonly view: View | null
  readonly angleWide: number | null
  readonly angleHigh: number | null
  readonly subject: Framing | null
  readonly landmark: Framing | null
  readonly landmarkExtent: Extent | null
  readonly subjectExtent: Extent | null
  /** Landmark's image size over the subject's, each on its wished side; null without both. */
  readonly proportion: number | null
  readonly crops: readonly CropReading[]
  readonly sharp: Sharpness | null
  /** What is known of the ground under each thing, with elevations or without. */
  readonly under: GroundUnderThings
  /** What the ground allows; null without elevations. */
  readonly ground: GroundReading | null
  /** The light at the spot's instant. */
  readonly light: LightReading
}

/** Nearer than this, metres, lens and subject count as one place. */
const ONE_PLACE = 0.05

/** Relative miss of a held proportion from which it is told: where it can be kept it is kept far closer. */
const PROPORTION_KEPT = 1e-6

function altitudeOf(point: LocalPoint): number {
  return degrees(Math.atan2(point.up, Math.hypot(point.east, point.north)))
}

/** Metres along the axis at which the landmark counts as one thing. */
export function landmarkDepth(extent: Extent): number {
  return (extent.near + extent.far) / 2
}

function judgeLandmark(plan: Plan, extent: Extent | null, made: SetUp, problems: Problem[]): void {
  if (plan.landmark === null) problems.push('no-landmark')
  else if (extent === null) problems.push('landmark-behind-camera')
  else {
    if (extent.partlyBehind) problems.push('landmark-partly-behind-camera')
    if (extent.near < made.subject.near) problems.push('landmark-nearer-than-subject')
  }
}

/** The proportion is held at the subject's wished fill: there the landmark must take its own wished share. */
function judgeProportion(plan: Plan, problems: Problem[]): void {
  const share = landmarkShareHere(plan)
  const { landmarkFill } = plan.spot.shot
  if (share === null || Math.abs(share / landmarkFill.share - 1) > PROPORTION_KEPT) problems.push('proportion-not-held')
}

/** How sharp a set-up is with a lens of the bag (null: none of it reaches), at the aperture chosen by hand or the one needed. */
export function sharpnessOf(
  camera: Camera,
  lens: Lens | null,
  chosen: number | null,
  made: SetUp,
  landmark: Extent | null,
): Sharpness {
  return sharpness({
    focalLength: made.focalLength,
    imageDistance: made.view.imageDistance,
    confusion: circleOfConfusion(camera),
    frameWidth: made.view.frameWidth,
    focusDistance: made.focusDistance,
    near: made.subject.near,
    far: made.subject.far,
    landmark: landmark === null ? null : landmarkDepth(landmark),
    lens,
    chosen,
  })
}

function judgeSharpness(
  plan: Plan,
  made: SetUp,
  extent: Extent | null,
  lensId: string | null,
  problems: Problem[],
): Sharpness {
  const { camera, lenses } = plan.shoot.bag
  const lens = lenses.find((candidate) => candidate.id === lensId && reaches(candidate, made.focalLength)) ?? null
  const sharp = sharpnessOf(camera, lens, plan.spot.shot.aperture, made, extent)
  if (sharp.outsideLens) problems.push('aperture-outside-lens')
  if (!sharp.endToEnd) problems.push('not-sharp-end-to-end')
  if (sharp.diffracted) problems.push('diffraction')
  return sharp
}

/** Whether the camera stands within the outline of the subject's turned box. */
function standsInBox({ length, width }: Subject, { stop, standpoint }: Spot): boolean {
  const camera = toLocal(localFrame(stop.at, 0), localFrame(standpoint.at, 0).origin)
  const { ahead, right } = subjectSides(stop.heading, camera)
  return Math.abs(ahead) < length / 2 && Math.abs(right) < width / 2
}

/** Degrees 0..90 between the camera's direction and the subject's side. */
function offSideOf(bearingFromSubject: number | null, heading: number): number | null {
  if (bearingFromSubject === null) return null
  const offFront = Math.abs(turnBetween(heading, bearingFromSubject))
  return Math.abs(90 - offFront)
}

export function assess(plan: Plan): Assessment {
  const { spot, shoot, landmark } = plan
  const problems: Problem[] = []
  const found = sceneOf(plan)
  const { scene, levels } = found
  const toSubject = geodesicLine(spot.standpoint.at, spot.stop.at)
  const middle = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  const toLandmark = middle === null ? null : geodesicLine(spot.standpoint.at, middle)
  const between = middle === null ? null : geodesicLine(spot.stop.at, middle)
  if (levels.landmarkAssumed) problems.push('landmark-level-assumed')
  const onTop = Math.hypot(scene.centre.east, scene.centre.north) < ONE_PLACE
  const inside = !onTop && standsInBox(shoot.subject, spot)
  if (onTop) problems.push('on-top-of-each-other')
  else if (inside) problems.push('inside-subject')
  const setting = settingOf(plan, spot.shot.orientation)
  const answer = onTop ? null : answerLens(plan, scene, setting, problems)
  const made = answer?.made ?? null
  const extent =
    made === null || found.landmarkBoundingPoints === null ? null : extentOf(made.view, found.landmarkBoundingPoints)
  if (made !== null) judgeLandmark(plan, extent, made, problems)
  if (answer !== null && landmark !== null && spot.hold === 'proportion') judgeProportion(plan, problems)
  const { frameWidth, frameHeight } = setting
  const shot = spot.shot
  const sharp = made === null ? null : judgeSharpness(plan, made, extent, answer?.lens?.lensId ?? null, problems)
  return {
    problems,
    levels,
    toSubject: { ...toSubject, altitude: onTop ? null : altitudeOf(scene.centre) },
    toLandmark: toLandmark === null ? null : { ...toLandmark, altitude: landmarkAltitude(found) },
    subjectToLandmark: between === null ? null : { ...between, altitude: null },
    offSide: offSideOf(toSubject.bearing === null ? null : toSubject.bearing + 180, spot.stop.heading),
    wantedFocalLength: answer?.wanted ?? null,
    offers: answer?.offers ?? [],
    lens: answer?.lens ?? null,
    focalLength: made?.focalLength ?? null,
    view: made?.view ?? null,
    angleWide: made === null ? null : angleOfView(frameWidth, made.view.imageDistance),
    angleHigh: made === null ? null : angleOfView(frameHeight, made.view.imageDistance),
    subject: made === null ? null : framingOf(made.subject, frameWidth, frameHeight),
    landmark: extent === null ? null : framingOf(extent, frameWidth, frameHeight),
    landmarkExtent: extent,
    subjectExtent: made?.subject ?? null,
    proportion:
      made === null || extent === null || extent.partlyBehind
        ? null
        : imageSize(extent, shot.landmarkFill.axis) / imageSize(made.subject, shot.subjectFill.axis),
    crops: made === null ? [] : cropReadings(plan, found, made, extent),
    sharp,
    under: groundUnder(plan, levels),
    ground: groundReading(plan, levels),
    light: lightReading(plan, {
      view: made?.view ?? null,
      levels,
      toSubject: toSubject.bearing,
      aperture: sharp?.used.exact ?? null,
    }),
  }
}

/** Degrees of the landmark's middle height above the level horizon. */
function landmarkAltitude(found: PlanScene): number | null {
  const boundingPoints = found.landmarkBoundingPoints
  if (boundingPoints === null || boundingPoints.length === 0) return null
  let low = Infinity
  let high = -Infinity
  for (const point of boundingPoints) {
    const altitude = altitudeOf(point)
    if (altitude < low) low = altitude
    if (altitude > high) high = altitude
  }
  return (low + high) / 2
}
