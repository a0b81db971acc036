/** What darkens the ground in the picture: the subject's shadow, the landmark's, and the patch where the subject touches down. */
import type { View } from '#core/frame/projection.ts'
import { type LocalPoint, localFrame } from '#core/geo/local-frame.ts'
import { sunDirection } from '#core/light/incidence.ts'
import { shadowOf } from '#core/light/shadow.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { turnedInto } from '#core/geo/local-frame.ts'
import type { Plan } from '#core/plan/plan.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { convexParts } from '#core/scene/convex-parts.ts'
import { castOf } from './cast-shadow.ts'
import { castsLight } from './lighting.ts'
import { type Sheet, areasPath } from './pen.ts'
import { type See, seer } from './camera-transform.ts'
import { solidOfSubject } from './solids.ts'

/** A shadow of something thinner than this many units can't be seen. */
const THINNEST = 0.4
/** Metres by which a landmark's foot may lie off the ground that is drawn and yet stand on it. */
const SAME_LEVEL = 1
/** Metres: from so low over the ground, or under it, nothing that lies on it is seen. */
const LEAST_ABOVE = 0.05

/** Toward the sun in the east, north and up of the place where the subject stops; null when it casts no shadows. */
function sunOverStop(plan: Plan, { light }: Assessment, reaches = light.sunOnSubject): LocalPoint | null {
  return castsLight(light, plan.shoot.sky, reaches) ? sunDirection(light.sun.azimuth, light.sun.apparent) : null
}

/** A direction told ahead (north) and to the right (east) of a heading. */
function turnedTo(heading: number, { east, north, up }: LocalPoint): LocalPoint {
  const [sin, cos] = [Math.sin(heading * RADIANS_PER_DEGREE), Math.cos(heading * RADIANS_PER_DEGREE)]
  return { east: cos * east - sin * north, north: sin * east + cos * north, up }
}

export function subjectShadowShapes(plan: Plan, assessment: Assessment, see: See, sheet: Sheet): string {
  const { spot, shoot } = plan
  const sun = sunOverStop(plan, assessment)
  const { levels } = assessment
  if (sun === null || levels.standpoint + spot.standpoint.lensHeight - levels.stop < LEAST_ABOVE) return ''
  const depth = see({ east: 0, north: 0, up: 0 }).depth
  const least = depth > 0 ? (THINNEST * depth) / sheet.scale : 0
  const parts = castOf(solidOfSubject(shoot.subject), turnedTo(spot.stop.heading, sun))
  const areas = parts.filter(({ thick }) => thick === null || thick >= least).map(({ shade }) => shade.map(see))
  return areasPath(areas, sheet)
}

/** Empty unless the landmark stands on the ground that is drawn. */
export function landmarkShadowShapes(plan: Plan, assessment: Assessment, view: View, sheet: Sheet): string {
  const sun = sunOverStop(plan, assessment, assessment.light.sunOnLandmark)
  const { levels } = assessment
  if (sun === null || plan.landmark === null || Math.abs(levels.landmark - levels.stop) > SAME_LEVEL) return ''
  if (levels.standpoint + plan.spot.standpoint.lensHeight - levels.landmark < LEAST_ABOVE) return ''
  const placed = convexParts(plan.landmark, levels.landmark)
  if (placed === null) return ''
  const direction = turnedInto(localFrame(plan.spot.stop.at, levels.stop), placed.frame, sun)
  const see = seer(view, placed.frame)
  const shades = placed.parts.map((corners) => shadowOf(corners, direction))
  if (shades.some((shade) => shade === null)) return ''
  return areasPath(
    shades.map((shade) => (shade ?? []).map(see)),
    sheet,
  )
}

/** A neutral patch where the subject touches the ground, whatever the light. */
export function contactPatch(plan: Plan, see: See, sheet: Sheet): string {
  const { length, width } = plan.shoot.subject
  const corners = Array.from({ length: 32 }, (_, index) => {
    const turn = (index / 32) * 2 * Math.PI
    return see({ east: (width / 2) * 0.85 * Math.cos(turn), north: (length / 2) * 0.98 * Math.sin(turn), up: 0 })
  })
  return areasPath([corners], sheet)
}
