/** The light at a spot's instant: sun and moon, which seen sides are lit and how, shadow, exposure, and what is in the frame. */
import { type ThingLight, type SideLight } from './thing-light.ts'
import { framePlanes } from '#core/frame/frame-planes.ts'
import { type View, projectLocal, toCamera } from '#core/frame/projection.ts'
import type { SeenFace } from '#core/frame/seen-faces.ts'
import { type LocalPoint, turnedInto } from '#core/geo/local-frame.ts'
import { HORIZON_REFRACTION, SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { type LightFrom, lightFrom } from '#core/light/direction.ts'
import { expectedEv } from '#core/light/exposure.ts'
import { incidence, strikeOf, sunDirection } from '#core/light/incidence.ts'
import { type FrameBorders, type LightSkyline } from '#core/light/light-scene.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { shadowLength } from '#core/light/shadow.ts'
import { behindGround, overSkyline, unknownBefore } from '#core/light/over-skyline.ts'
import { type MoonPhase, SUN_RADIUS, moonAt, moonPhase, sunAt } from '#core/light/sky.ts'
import { withinFrame } from '#core/light/wish-margin.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { type ExposureReading, type FillHint, contrastStops, exposureReading, fillHint } from './light-hints.ts'
import { seenThings } from './seen-sides.ts'
import type { Levels, Plan } from './plan.ts'
import { type SkyEyes, skylineToward, skyEyes } from './plan-skylines.ts'

export interface BodyInFrame {
  /** Place of its centre in the frame, shares from the middle; null when it stands behind the lens's plane. */
  readonly at: { readonly x: number; readonly y: number } | null
  /** Degrees of its centre within the nearest border of the frame; negative outside. */
  readonly within: number
}

export interface BodyReading {
  readonly azimuth: number
  /** Degrees, airless. */
  readonly altitude: number
  /** Degrees as it appears: with refraction above the horizon, airless below -6. */
  readonly apparent: number
  /** Degrees, angular radius. */
  readonly radius: number
  /** Whether a part of it is above the level horizon. */
  readonly up: boolean
  /** True while it is up but the ground hides it from the lens. */
  readonly behindGround: boolean
  /** Null when nothing can be framed. */
  readonly inFrame: BodyInFrame | null
}

export interface LightReading {
  readonly instant: number
  readonly sun: BodyReading
  readonly moon: BodyReading & { readonly phase: MoonPhase }
  readonly subject: ThingLight
  /** Whether direct sun reaches the subject, and the landmark: it is up, and no ground stands before it. */
  readonly sunOnSubject: boolean
  readonly sunOnLandmark: boolean
  /** Metres to unknown ground that may hide a sun that else reaches the subject, and the landmark; null where none may. */
  readonly sunOnSubjectUnsure: number | null
  readonly sunOnLandmarkUnsure: number | null
  /** Null without a landmark. */
  readonly landmark: ThingLight | null
  /** False for a landmark whose points bound no face. */
  readonly landmarkHasFaces: boolean
  /** Where the light comes from as the camera looks at the subject; null while the sun is down or at the same place. */
  readonly from: LightFrom | null
  /** Metres of the subject's and the landmark's shadow on level ground; null when the sun is down or they run out of sight. */
  readonly subjectShadow: number | null
  readonly landmarkShadow: number | null
  /** Bearing toward which shadows fall. */
  readonly shadowBearing: number
  readonly fill: FillHint | null
  readonly exposure: ExposureReading
}

const NOTHING_SEEN: ThingLight = { sides: [], lit: null, main: null }

function thingLight(seen: readonly SeenFace[], direction: LocalPoint, sunUp: boolean): ThingLight {
  if (seen.length === 0) return NOTHING_SEEN
  let lit = 0
  const sides = seen.map(({ face, share }): SideLight => {
    const angle = incidence(face.normal, direction)
    const strike = sunUp ? strikeOf(angle) : 'in-shade'
    if (strike !== 'in-shade') lit += share
    return { id: face.id, bearing: face.bearing, upright: face.upright, share, incidence: angle, strike }
  })
  sides.sort((one, other) => other.share - one.share)
  return { sides, lit: Math.min(1, lit), main: sides.find((side) => side.upright) ?? null }
}

function inFrame(view: View | null, planes: FrameBorders | null, direction: LocalPoint): BodyInFrame | null {
  if (view === null || planes === null) return null
  const at = toCamera(view, direction).depth > 0 ? projectLocal(view, direction) : null
  return { at: at === null ? null : { x: at.x, y: at.y }, within: withinFrame(planes, direction) }
}

interface Found {
  readonly view: View | null
  readonly levels: Levels
  readonly toSubject: number | null
  /** f-number in use; null when nothing can be framed. */
  readonly aperture: number | null
}

export function lightReading(plan: Plan, found: Found): LightReading {
  const { stop, when } = plan.spot
  const { view, toSubject } = found
  const { ground, subject: seenSubject, placed, landmark: seenLandmark } = seenThings(plan, found)
  const sun = sunAt(stop.at, when)
  const apparent = apparentAltitude(sun.altitude)
  const direction = sunDirection(sun.azimuth, apparent)
  const up = sun.altitude > SUN_RISE_ALTITUDE
  const planes = view === null ? null : { borders: framePlanes(view) }
  const moon = moonAt(stop.at, when)
  const moonApparent = apparentAltitude(moon.altitude)
  const grid = plan.terrain
  const eyes = grid === null ? null : skyEyes(plan, found.levels, grid)
  const skyline = (from: keyof SkyEyes, azimuth: number): LightSkyline | null =>
    grid === null || eyes === null ? null : skylineToward(grid, eyes[from], plan.shoot, azimuth)
  const [subjectSkyline, landmarkSkyline] = [skyline('subject', sun.azimuth), skyline('landmark', sun.azimuth)]
  const sunOnSubject = overSkyline(subjectSkyline, sun) > 0
  const sunOnLandmark = overSkyline(landmarkSkyline, sun) > 0
  const unsure = (of: LightSkyline | null, shows: boolean): number | null =>
    shows && of !== null ? unknownBefore(of, sun) : null
  const moonUp = moon.altitude + moon.radius + HORIZON_REFRACTION > 0
  const subject = thingLight(seenSubject, direction, sunOnSubject)
  const from = up && toSubject !== null ? lightFrom(sun.azimuth, toSubject, apparent) : null
  const phase = moonPhase(stop.at, when)
  return {
    instant: when,
    sun: {
      ...sun,
      apparent,
      radius: SUN_RADIUS,
      up,
      behindGround: up && !(overSkyline(skyline('lens', sun.azimuth), sun) > 0),
      inFrame: inFrame(view, planes, direction),
    },
    moon: {
      azimuth: moon.azimuth,
      altitude: moon.altitude,
      apparent: moonApparent,
      radius: moon.radius,
      up: moonUp,
      behindGround: moonUp && behindGround(skyline('lens', moon.azimuth), moon) === 'behind',
      inFrame: inFrame(view, planes, sunDirection(moon.azimuth, moonApparent)),
      phase,
    },
    subject,
    sunOnSubject,
    sunOnLandmark,
    sunOnSubjectUnsure: unsure(subjectSkyline, sunOnSubject),
    sunOnLandmarkUnsure: unsure(landmarkSkyline, sunOnLandmark),
    landmark:
      placed === null ? null : thingLight(seenLandmark, turnedInto(ground, placed.frame, direction), sunOnLandmark),
    landmarkHasFaces: placed !== null && placed.faces.length > 0,
    from,
    subjectShadow: sunOnSubject ? shadowLength(plan.shoot.subject.height, apparent) : null,
    landmarkShadow: sunOnLandmark && plan.landmark !== null ? shadowLength(plan.landmark.height, apparent) : null,
    shadowBearing: wrapBearing(sun.azimuth + 180),
    fill: sunOnSubject ? fillHint(subject, toSubject, contrastStops(plan.shoot.sky)) : null,
    exposure: exposureReading(
      plan,
      found.aperture,
      expectedEv(plan.shoot.sky, sun.altitude, from?.side ?? 'front', { altitude: moonApparent, lit: phase.lit }),
    ),
  }
}
