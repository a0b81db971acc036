/** When sun or moon stands on a landmark as seen from a place: one look a day, and a search only where it can succeed. */
import { type Result, done } from '#core/result.ts'
import { degrees, turnBetween, wrapBearing } from '#core/units/angle.ts'
import { type AlignmentAsk, type AlignmentReason, checkedAsk } from './alignment-ask.ts'
import { type Body, CENTRE, bodyAt, discPlace } from './body.ts'
import { crossings } from './crossing.ts'
import { SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE, type Twilight } from './day-events.ts'
import { hourPlace } from './hour-angle.ts'
import { sunDirection } from './incidence.ts'
import { apparentAltitude, trueAltitude } from './refraction.ts'
import { moonPhase, sunAt } from './sky.ts'

export interface Alignment {
  /** Epoch milliseconds of the closest approach. */
  readonly instant: number
  /** Degrees at that instant between the target and the point of the disc asked for. */
  readonly separation: number
  /** Of the body's centre: true azimuth 0..360, altitude in degrees as it appears. */
  readonly azimuth: number
  readonly altitude: number
  /** Share of the moon's disc that is lit, 0..1, and whether it grows; null for the sun. */
  readonly lit: number | null
  readonly waxing: boolean | null
  /** Degrees of the sun's centre without air. */
  readonly sunAltitude: number
  readonly sky: SkyLight
  /** The whole stretch within the tolerance, which may begin before or end after the time searched. */
  readonly from: number
  readonly until: number
}

/** Day while some of the sun is up by the almanacs' convention, then the twilights, then night. */
export type SkyLight = 'day' | Twilight | 'night'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
/** Milliseconds in which a body comes back to its hour angle: on average, and at the least and most. */
const TURN: Readonly<Record<Body, readonly [mean: number, least: number, most: number]>> = {
  sun: [24 * HOUR, 23.9 * HOUR, 24.1 * HOUR],
  moon: [24 * HOUR + 50.47 * MINUTE, 24.4 * HOUR, 25.4 * HOUR],
}
/** Milliseconds by which a closest approach may miss the moment of equal hour angle; some minutes at the most. */
const ASIDE = HOUR
/** The air narrows what is seen at the horizon to 0.83 of its height, so more than the tolerance of declination can serve. */
const NARROWED = 1.25
/** Degrees that a declination may change between the look and the closest approach. */
const DRIFT = 0.35
/** Half widths of the three parabolas by which the closest approach is found. */
const CLOSING = [12 * MINUTE, MINUTE, 6000]
/** Degrees an hour below which neither body moves, not even where the air narrows its rise. */
const SLOWEST = 10

/** How the body stands to the target at any instant. */
interface Look {
  readonly hourPlaceAt: (instant: number) => { readonly hourAngle: number; readonly declination: number }
  /** Squared chord between target and body on the unit sphere: almost a parabola of time, exact when small. */
  readonly chordAt: (instant: number) => number
}

function lookOf({ at, body, target }: AlignmentAsk): Look {
  const point = target.point ?? CENTRE
  const aimed = sunDirection(target.bearing, target.altitude)
  return {
    hourPlaceAt(instant) {
      const seen = discPlace(bodyAt(body, at, instant), point)
      return hourPlace(at.lat, seen.azimuth, seen.altitude)
    },
    chordAt(instant) {
      const seen = discPlace(bodyAt(body, at, instant), point)
      const toward = sunDirection(seen.azimuth, apparentAltitude(seen.altitude))
      return (toward.east - aimed.east) ** 2 + (toward.north - aimed.north) ** 2 + (toward.up - aimed.up) ** 2
    },
  }
}

function separationOf(chordSquared: number): number {
  return degrees(2 * Math.asin(Math.min(1, Math.sqrt(chordSquared) / 2)))
}

/** The instants of equal hour angle, one a day, at which the body's declination is near enough to the target's. */
function passings(ask: AlignmentAsk, look: Look): number[] {
  const { at, body, target, tolerance } = ask
  const aimed = hourPlace(at.lat, target.bearing, trueAltitude(target.altitude))
  const leeway = NARROWED * tolerance + DRIFT
  const [mean, least, most] = TURN[body]
  const found: number[] = []
  let turn = mean
  let before: number | null = null
  const start = ask.from - ASIDE
  let guess = start + (wrapBearing(aimed.hourAngle - look.hourPlaceAt(start).hourAngle) / 360) * mean
  while (guess < ask.until + ASIDE) {
    const { hourAngle, declination } = look.hourPlaceAt(guess)
    const passing = guess + (turnBetween(hourAngle, aimed.hourAngle) / 360) * turn
    if (Math.abs(declination - aimed.declination) <= leeway) found.push(passing)
    // The moon's pace changes little from one day to the next: the last turn foretells this one.
    if (before !== null) turn = Math.min(Math.max(passing - before, least), most)
    before = passing
    guess = passing + turn
  }
  return found
}

/** Instant of the closest approach near another, a whole millisecond: bottoms of ever narrower parabolas. */
function closestTo(passing: number, chordAt: Look['chordAt']): number {
  let instant = passing
  for (const half of CLOSING) {
    const [early, here, late] = [chordAt(instant - half), chordAt(instant), chordAt(instant + half)]
    const bend = early - 2 * here + late
    const step = bend > 0 ? (half * (early - late)) / (2 * bend) : 0
    instant += Math.min(Math.max(step, -half), half)
  }
  return Math.round(instant)
}

/** The stretch about an instant in which the separation stays within the tolerance. */
function stretchAbout(instant: number, tolerance: number, chordAt: Look['chordAt']): { from: number; until: number } {
  const within = (when: number): number => tolerance - separationOf(chordAt(when))
  const reach = (1.2 * tolerance * HOUR) / SLOWEST + 2 * MINUTE
  const [leaving] = crossings(within, instant, instant + reach, reach)
  const entering = crossings(within, instant - reach, instant, reach).at(-1)
  return { from: entering?.instant ?? instant, until: leaving?.instant ?? instant }
}

export function skyLight(sunAltitude: number): SkyLight {
  if (sunAltitude > SUN_RISE_ALTITUDE) return 'day'
  if (sunAltitude > TWILIGHT_ALTITUDE.civil) return 'civil'
  if (sunAltitude > TWILIGHT_ALTITUDE.nautical) return 'nautical'
  return sunAltitude > TWILIGHT_ALTITUDE.astronomical ? 'astronomical' : 'night'
}

function alignmentAt(ask: AlignmentAsk, look: Look, instant: number, separation: number): Alignment {
  const { at, body, tolerance } = ask
  const disc = bodyAt(body, at, instant)
  const phase = body === 'moon' ? moonPhase(at, instant) : null
  const sunAltitude = phase === null ? disc.altitude : sunAt(at, instant).altitude
  return {
    instant,
    separation,
    azimuth: disc.azimuth,
    altitude: apparentAltitude(disc.altitude),
    lit: phase?.lit ?? null,
    waxing: phase?.waxing ?? null,
    sunAltitude,
    sky: skyLight(sunAltitude),
    ...stretchAbout(instant, tolerance, look.chordAt),
  }
}

/** Every alignment whose closest approach lies in the time searched, in order; none is an answer too. */
export function alignments(ask: AlignmentAsk): Result<readonly Alignment[], AlignmentReason> {
  const checked = checkedAsk(ask)
  if (!checked.ok) return checked
  const look = lookOf(ask)
  const found: Alignment[] = []
  for (const passing of passings(ask, look)) {
    const instant = closestTo(passing, look.chordAt)
    if (instant < ask.from || instant >= ask.until) continue
    const separation = separationOf(look.chordAt(instant))
    if (separation <= ask.tolerance) found.push(alignmentAt(ask, look, instant, separation))
  }
  return done(found)
}
