/** The light at a spot's instant: sun and moon, which seen sides are lit and how, shadow, exposure, and what is in the frame. */
import { type SeenFace, seenFaces } from '#core/frame/seen-faces.ts'
import { type View, projectLocal, toCamera } from '#core/frame/projection.ts'
import { type LocalFrame, type LocalPoint, between, localFrame } from '#core/geo/local-frame.ts'
import { type LightFrom, lightFrom } from '#core/light/direction.ts'
import {
  type AgainstCamera,
  type ExpectedEv,
  type Sky,
  expectedEv,
  exposureAgainstCamera,
  shutterTime,
} from '#core/light/exposure.ts'
import { tableValue } from '#core/light/exposure-table.ts'
import { type Strike, incidence, strikeOf, sunDirection } from '#core/light/incidence.ts'
import type { LightStage, StagedFrame, StagedSide, StagedSkylines } from '#core/light/light-stage.ts'
import { HORIZON_REFRACTION, SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { shadowLength } from '#core/light/shadow.ts'
import { type MoonPhase, SUN_RADIUS, moonAt, moonPhase, sunAt } from '#core/light/sky.ts'
import { withinFrame } from '#core/light/wish-margin.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { type PlacedFaces, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import { wrapBearing } from '#core/units/angle.ts'
import type { Levels, Plan } from './plan.ts'
import { edgeTowards } from './sky-edges.ts'

export interface SideLight {
  readonly id: string
  /** Bearing it looks toward; null for one that looks up. */
  readonly bearing: number | null
  readonly upright: boolean
  /** Its part of all that is seen of the thing, 0..1. */
  readonly share: number
  /** Degrees between the side's normal and the sun, 0..180. */
  readonly incidence: number
  /** In shade also while the sun is down. */
  readonly strike: Strike
}

export interface ThingLight {
  /** The sides that the camera sees in the frame, the largest first; none when nothing of the thing is in it. */
  readonly sides: readonly SideLight[]
  /** Share of the seen area that the sun reaches; null when nothing is seen. */
  readonly lit: number | null
  /** The upright side of which most is seen. */
  readonly main: SideLight | null
}

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

/** Where something that throws light back would stand: before the shaded side that is seen. */
export interface FillHint {
  /** Bearing from the subject. */
  readonly bearing: number
  /** As the photographer sees it. */
  readonly hand: 'left' | 'right'
  /** Stops between a side in the sun and one in open shade, by the daylight table. */
  readonly stops: number
}

export interface LightReading {
  readonly instant: number
  readonly sun: BodyReading
  readonly moon: BodyReading & { readonly phase: MoonPhase }
  readonly subject: ThingLight
  /** Whether direct sun reaches the subject, and the landmark: it is up, and no ground stands before it. */
  readonly sunOnSubject: boolean
  readonly sunOnLandmark: boolean
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

/** An estimate from a published table, to be metered on the day. */
export interface ExposureReading {
  readonly expected: ExpectedEv
  /** Seconds at the aperture in use and the shoot's ISO; null when either side is unknown. */
  readonly seconds: number | null
  readonly against: AgainstCamera | null
}

const placedFaces = new WeakMap<Landmark, { readonly base: number; readonly placed: PlacedFaces | null }>()

/** The landmark's faces, cut once for as long as it stays as it is. */
export function facesOf(landmark: Landmark, base: number): PlacedFaces | null {
  const known = placedFaces.get(landmark)
  if (known !== undefined && known.base === base) return known.placed
  const placed = landmarkFaces(landmark, base)
  placedFaces.set(landmark, { base, placed })
  return placed
}

/** A direction told in another place's east, north and up. */
export function turnedInto(from: LocalFrame, to: LocalFrame, direction: LocalPoint): LocalPoint {
  const tip = between(from, to, direction.east, direction.north, direction.up)
  const foot = between(from, to, 0, 0, 0)
  return { east: tip.east - foot.east, north: tip.north - foot.north, up: tip.up - foot.up }
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

/** Unit inward normals of the planes through the lens and the frame's borders, in the lens's east, north and up. */
export function framePlanes(view: View): StagedFrame {
  const { imageDistance, frameWidth, frameHeight } = view
  // A point at (right, up, depth) is left of the right border when right < depth (W / 2) / v.
  const camera = (right: number, up: number, depth: number): LocalPoint => {
    const length = Math.hypot(right, up, depth)
    const ahead = (view.cosPitch * depth - view.sinPitch * up) / length
    const aside = right / length
    return {
      east: view.sinBearing * ahead + view.cosBearing * aside,
      north: view.cosBearing * ahead - view.sinBearing * aside,
      up: (view.sinPitch * depth + view.cosPitch * up) / length,
    }
  }
  return {
    borders: [
      camera(imageDistance, 0, frameWidth / 2),
      camera(-imageDistance, 0, frameWidth / 2),
      camera(0, imageDistance, frameHeight / 2),
      camera(0, -imageDistance, frameHeight / 2),
    ],
  }
}

function inFrame(view: View | null, planes: StagedFrame | null, direction: LocalPoint): BodyInFrame | null {
  if (view === null || planes === null) return null
  const at = toCamera(view, direction).depth > 0 ? projectLocal(view, direction) : null
  return { at: at === null ? null : { x: at.x, y: at.y }, within: withinFrame(planes, direction) }
}

/** A fill belongs before the largest seen upright side that the sun misses while it reaches another. */
function fillHint(subject: ThingLight, toSubject: number | null, stops: number): FillHint | null {
  if (toSubject === null || subject.lit === null || stops <= 0) return null
  const upright = subject.sides.filter((side) => side.upright)
  const shaded = upright.find((side) => side.strike === 'in-shade')
  const anyLit = subject.sides.some((side) => side.strike !== 'in-shade')
  if (shaded?.bearing === undefined || shaded.bearing === null || !anyLit) return null
  const off = wrapBearing(shaded.bearing - (toSubject + 180))
  // Seen from the camera, a side that looks clockwise of the line back to the camera looks to the left.
  return { bearing: shaded.bearing, hand: off < 180 ? 'left' : 'right', stops }
}

/** Stops between things in the sun and things in open shade, by the daylight table; none where the sky casts no shadows. */
function contrastStops(sky: Sky): number {
  const line = { clear: 'sun', hazy: 'hazy-sun', 'cloudy-bright': 'cloudy-bright' } as const
  return sky === 'overcast' || sky === 'open-shade' ? 0 : tableValue(line[sky]) - tableValue('open-shade')
}

function exposureReading(plan: Plan, aperture: number | null, expected: ExpectedEv): ExposureReading {
  if (aperture === null || expected.ev === null) return { expected, seconds: null, against: null }
  const { fastestShutter: fastest, slowestShutter: slowest } = plan.shoot.bag.camera
  const seconds = shutterTime(expected.ev, aperture, plan.shoot.iso)
  return { expected, seconds, against: exposureAgainstCamera(seconds, { fastest, slowest }) }
}

interface Found {
  readonly view: View | null
  readonly levels: Levels
  readonly toSubject: number | null
  /** f-number in use; null when nothing can be framed. */
  readonly aperture: number | null
}

interface SeenThings {
  readonly ground: LocalFrame
  readonly subject: readonly SeenFace[]
  readonly placed: PlacedFaces | null
  readonly landmark: readonly SeenFace[]
}

function seenThings(plan: Plan, { view, levels }: Pick<Found, 'view' | 'levels'>): SeenThings {
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

export function lightReading(plan: Plan, found: Found): LightReading {
  const { stop, when } = plan.spot
  const { view, toSubject } = found
  const { ground, subject: seenSubject, placed, landmark: seenLandmark } = seenThings(plan, found)
  const sun = sunAt(stop.at, when)
  const apparent = apparentAltitude(sun.altitude)
  const direction = sunDirection(sun.azimuth, apparent)
  const up = sun.altitude > SUN_RISE_ALTITUDE
  const planes = view === null ? null : framePlanes(view)
  const moon = moonAt(stop.at, when)
  const moonApparent = apparentAltitude(moon.altitude)
  const edge = edgeTowards(plan, found.levels, sun.azimuth)
  const clears = (ground: number | null): boolean => (ground === null ? up : apparent + SUN_RADIUS > ground)
  const [sunOnSubject, sunOnLandmark] = [clears(edge.subject), clears(edge.landmark)]
  const moonEdge = edgeTowards(plan, found.levels, moon.azimuth).lens
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
      behindGround: up && !clears(edge.lens),
      inFrame: inFrame(view, planes, direction),
    },
    moon: {
      azimuth: moon.azimuth,
      altitude: moon.altitude,
      apparent: moonApparent,
      radius: moon.radius,
      up: moonUp,
      behindGround: moonUp && moonEdge !== null && moonApparent + moon.radius <= moonEdge,
      inFrame: inFrame(view, planes, sunDirection(moon.azimuth, moonApparent)),
      phase,
    },
    subject,
    sunOnSubject,
    sunOnLandmark,
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
    frame: found.view === null ? null : framePlanes(found.view),
    skylines,
  }
}
