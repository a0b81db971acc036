/** By how much each light wish is met at an instant: a value that is not below zero while it holds and changes without leaps. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { RADIANS_PER_DEGREE, turnBetween } from '#core/units/angle.ts'
import { BEHIND_FROM } from './direction.ts'
import { RAKING_FROM, sunDirection } from './incidence.ts'
import type { LightScene, FrameBorders, SeenSide } from './light-scene.ts'
import { HORIZON_REFRACTION, SUN_RISE_ALTITUDE } from './day-events.ts'
import { type LightWishes, SOFT_ENDS, type WishKind } from './light-wish.ts'
import { apparentAltitude } from './refraction.ts'
import { overSkyline } from './over-skyline.ts'
import { SUN_RADIUS, moonAt, sunAt } from './sky.ts'

/** The sun as wishes ask for it. */
export interface SunLook {
  readonly azimuth: number
  /** Degrees, airless. */
  readonly altitude: number
  /** Degrees, as it appears. */
  readonly apparent: number
  /** Unit vector toward where it appears. */
  readonly direction: LocalPoint
}

export function lookAtSun(at: LatLon, instant: number): SunLook {
  const { azimuth, altitude } = sunAt(at, instant)
  const apparent = apparentAltitude(altitude)
  return { azimuth, altitude, apparent, direction: sunDirection(azimuth, apparent) }
}

export type SunLooker = (instant: number) => SunLook

/** Instants remembered of one place: a day's looks many times over. */
const MOST_REMEMBERED = 20_000

/** The sun at the instants asked for, each worked out once: every wish and every face looks at the same ones first. */
export function rememberingSun(at: LatLon): SunLooker {
  const known = new Map<number, SunLook>()
  return (instant) => {
    const before = known.get(instant)
    if (before !== undefined) return before
    if (known.size >= MOST_REMEMBERED) known.clear()
    const look = lookAtSun(at, instant)
    known.set(instant, look)
    return look
  }
}

/** A side counts as lit when half of what is seen of the thing is; as in shade when no more than a tenth of it is lit. */
export const LIT_FROM = 0.5
export const SHADE_UNTIL = 0.1

function dot(one: LocalPoint, other: LocalPoint): number {
  return one.east * other.east + one.north * other.north + one.up * other.up
}

/**
 * The cosine of incidence that the best-lit sides of together `part` of the seen area all reach. It goes up and down without
 * leaps as the sun moves, and is above zero just when so much of the area is lit. Null when nothing is seen.
 */
export function cosineReached(sides: readonly SeenSide[], direction: LocalPoint, part: number): number | null {
  const first = sides[0]
  if (first === undefined) return null
  if (sides.length === 1) return dot(first.normal, direction)
  const struck = sides.map((side) => ({ cosine: dot(side.normal, direction), part: side.part }))
  struck.sort((one, other) => other.cosine - one.cosine)
  let sum = 0
  let reached = struck[0]?.cosine ?? 0
  for (const side of struck) {
    reached = side.cosine
    sum += side.part
    // Rounding in the parts must not ask for one side more.
    if (sum >= part - 1e-9) break
  }
  return reached
}

const NEVER = -1

/** Degrees by which the sun's upper edge stands over what bounds the sky of each thing, where that is known beforehand. */
export interface SunOver {
  readonly subject: number
  readonly landmark: number
  readonly lens: number
}

function sidesMargin(
  sides: readonly SeenSide[],
  over: number,
  wish: 'lit' | 'raking' | 'in-shade',
  sun: SunLook,
): number {
  const up = over * RADIANS_PER_DEGREE
  const reached = cosineReached(sides, sun.direction, wish === 'in-shade' ? SHADE_UNTIL + 1e-6 : LIT_FROM)
  if (reached === null) return NEVER
  if (wish === 'in-shade') {
    // By day: turned away from the sun, or behind the ground while the sun is above the level horizon.
    const byDay = (sun.altitude - SUN_RISE_ALTITUDE) * RADIANS_PER_DEGREE
    return Math.min(byDay, Math.max(-reached, -up))
  }
  if (wish === 'lit') return Math.min(up, reached)
  return Math.min(up, reached, Math.cos(RAKING_FROM * RADIANS_PER_DEGREE) - reached)
}

/** Degrees from behind the subject: the sun's bearing against the line from the camera through the subject. */
function backLitMargin(scene: LightScene, over: number, sun: SunLook): number {
  const up = over * RADIANS_PER_DEGREE
  if (scene.toSubject === null) return NEVER
  const off = Math.abs(turnBetween(scene.toSubject, sun.azimuth))
  return Math.min(up, (180 - BEHIND_FROM - off) * RADIANS_PER_DEGREE)
}

/** Degrees that a direction lies within the frame's borders; negative outside, by the border it is farthest beyond. */
export function withinFrame(frame: FrameBorders, direction: LocalPoint): number {
  let least = 90
  for (const border of frame.borders) {
    const inside = Math.asin(Math.max(-1, Math.min(1, dot(border, direction)))) / RADIANS_PER_DEGREE
    if (inside < least) least = inside
  }
  return least
}

function framedMargin(frame: FrameBorders | null, up: number, wish: 'in-frame' | 'out-of-frame', sun: SunLook): number {
  if (frame === null) return NEVER
  const within = withinFrame(frame, sun.direction)
  // In the frame: its centre is. Out of it: not even its edge is, or it is down.
  return wish === 'in-frame' ? Math.min(up, within) : Math.max(-up, -within - SUN_RADIUS)
}

/** Whether soft light is the morning's or the evening's: the sun rises in the eastern half of the sky. */
function softMargin(wish: 'evening' | 'morning' | 'either', sun: SunLook): number {
  const band = Math.min(sun.altitude - SOFT_ENDS, SUN_RISE_ALTITUDE - sun.altitude)
  if (wish === 'either') return band
  const west = -Math.sin(sun.azimuth * RADIANS_PER_DEGREE) * 90
  return Math.min(band, wish === 'evening' ? west : -west)
}

/** Degrees that the moon's upper edge stands above the level horizon, by 34' of refraction (USNO). */
export function moonAbove(at: LatLon, instant: number): number {
  const { altitude, radius } = moonAt(at, instant)
  return altitude + radius + HORIZON_REFRACTION
}

/**
 * The margin of one wish. Hours by the clock are no matter of the sky and have none here. `over` spares the look at the scene's
 * skylines where many instants were looked at before.
 */
export function wishMargin(
  kind: Exclude<WishKind, 'hours'>,
  wishes: LightWishes,
  scene: LightScene,
  instant: number,
  sun: SunLook,
  over: SunOver | null = null,
): number {
  if (kind === 'moonUp') return moonAbove(scene.at, instant)
  const { skylines } = scene
  if (kind === 'subject') {
    const up = over === null ? overSkyline(skylines.subject, sun) : over.subject
    if (wishes.subject === 'back-lit') return backLitMargin(scene, up, sun)
    return sidesMargin(scene.subject, up, wishes.subject ?? 'lit', sun)
  }
  if (kind === 'landmark') {
    const up = over === null ? overSkyline(skylines.landmark, sun) : over.landmark
    return sidesMargin(scene.landmark, up, wishes.landmark ?? 'lit', sun)
  }
  if (kind === 'sun') {
    const up = over === null ? overSkyline(skylines.lens, sun) : over.lens
    return framedMargin(scene.frame, up, wishes.sun ?? 'in-frame', sun)
  }
  if (kind === 'soft') return softMargin(wishes.soft ?? 'either', sun)
  const { altitude } = wishes
  return altitude === null ? 0 : Math.min(sun.apparent - altitude.least, altitude.most - sun.apparent)
}
