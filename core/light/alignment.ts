/** When sun or moon stands on a landmark as seen from a place: a look a day at the most, and a search only where it can succeed. */
import { type Result, done } from '#core/result.ts'
import { degrees, turnBetween, wrapBearing } from '#core/units/angle.ts'
import { HOUR, MINUTE } from '#core/time/duration.ts'
import { type AlignmentRequest, type AlignmentReason, checkedRequest } from './alignment-request.ts'
import { type Body, CENTRE, bodyAt, discPlace } from './body.ts'
import { crossings } from './crossing.ts'
import { SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE, type Twilight } from './day-events.ts'
import { hourPlace } from './hour-angle.ts'
import { sunDirection } from './incidence.ts'
import { apparentAltitude, trueAltitude } from './refraction.ts'
import { moonPhase, sunAt } from './sky.ts'
import { type BehindGround, behindGround, unknownBefore } from './over-skyline.ts'

export interface Alignment {
  /** Epoch milliseconds of the closest approach. */
  readonly instant: number
  /** Degrees at that instant between the target and the point of the disc asked for. */
  readonly separation: number
  /** Of the body's centre: true azimuth 0..360, altitude in degrees as it appears. */
  readonly azimuth: number
  readonly altitude: number
  /** Whether the ground hides it at that instant; null where no ground is known. */
  readonly ground: BehindGround | null
  /** Metres to unknown ground that may hide it though nothing known does; null where none may. */
  readonly unsure: number | null
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

/** How a body comes back to its hour angle. */
interface Pace {
  /** Milliseconds of one turn: on average, at the least and at the most. */
  readonly mean: number
  readonly least: number
  readonly most: number
  /** Degrees by which the declination changes in one turn at the most. */
  readonly drift: number
  /** Turns over which the next hour angle is foretold within some degrees. */
  readonly ahead: number
}

const PACE: Readonly<Record<Body, Pace>> = {
  sun: { mean: 24 * HOUR, least: 23.9 * HOUR, most: 24.1 * HOUR, drift: 0.45, ahead: 20 },
  moon: { mean: 24 * HOUR + 50.47 * MINUTE, least: 24.4 * HOUR, most: 25.4 * HOUR, drift: 9, ahead: 3 },
}
/** Milliseconds by which a closest approach may miss the moment of equal hour angle; some minutes at the most. */
const ASIDE = HOUR
/** The air narrows what is seen at the horizon to 0.83 of its height, so more than the tolerance of declination can serve. */
const NARROWED = 1.25
/** Degrees that a declination may change between the look and the closest approach. */
const DRIFT = 0.35
/** Half widths of the parabolas by which the closest approach is found: the first sees whether it is near enough, the second is exact. */
const CLOSING = [2 * MINUTE, 20_000] as const
/** How many half widths beyond its middle a parabola is trusted. */
const TRUSTED = 6
/** Degrees by which the first parabola's own bottom may be wrong, for the air bends a low body's way. */
const ROUGH = 0.2
/** Degrees an hour below which neither body moves, not even where the air narrows its rise. */
const SLOWEST = 10

/** How the body stands to the target at any instant. */
interface Look {
  readonly hourPlaceAt: (instant: number) => { readonly hourAngle: number; readonly declination: number }
  /** Squared chord between target and body on the unit sphere: almost a parabola of time, exact when small. */
  readonly chordAt: (instant: number) => number
}

function lookOf({ at, body, target }: AlignmentRequest): Look {
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

type Approach = Pick<Alignment, 'instant' | 'separation'>

function separationOf(chordSquared: number): number {
  return degrees(2 * Math.asin(Math.min(1, Math.sqrt(Math.max(0, chordSquared)) / 2)))
}

/**
 * The instants of equal hour angle at which the body's declination is near enough to the target's. Each turn is looked at
 * once; turns after which the declination still cannot be near enough are left out.
 */
function passings(request: AlignmentRequest, look: Look): number[] {
  const { at, body, target, tolerance } = request
  const aimed = hourPlace(at.lat, target.bearing, trueAltitude(target.altitude))
  const leeway = NARROWED * tolerance + DRIFT
  const pace = PACE[body]
  const found: number[] = []
  const start = request.from - ASIDE
  let [turn, turns] = [pace.mean, 0]
  let before = start
  let guess = start + (wrapBearing(aimed.hourAngle - look.hourPlaceAt(start).hourAngle) / 360) * turn
  while (guess < request.until + ASIDE) {
    const { hourAngle, declination } = look.hourPlaceAt(guess)
    const passing = guess + (turnBetween(hourAngle, aimed.hourAngle) / 360) * turn
    // The pace changes little from one turn to the next: the last ones foretell those to come.
    if (turns > 0) turn = Math.min(Math.max((passing - before) / turns, pace.least), pace.most)
    const beyond = Math.abs(declination - aimed.declination) - leeway
    if (beyond <= 0) found.push(passing)
    turns = Math.min(Math.max(Math.ceil(beyond / pace.drift), 1), pace.ahead)
    before = passing
    guess = passing + turns * turn
  }
  return found
}

interface Bottom {
  readonly instant: number
  /** What the parabola says of the squared chord there. */
  readonly chordSquared: number
}

/** The bottom of the parabola through three instants, not much farther away than they are. */
function bottomNear(instant: number, half: number, chordAt: Look['chordAt']): Bottom {
  const [early, here, late] = [chordAt(instant - half), chordAt(instant), chordAt(instant + half)]
  const bend = early - 2 * here + late
  if (!(bend > 0)) return { instant, chordSquared: here }
  const step = Math.min(Math.max((early - late) / (2 * bend), -TRUSTED), TRUSTED)
  return {
    instant: instant + half * step,
    chordSquared: here + (step * (late - early)) / 2 + (step * step * bend) / 2,
  }
}

/** The closest approach near an instant, at a whole millisecond; null where it stays beyond the tolerance. */
function closestTo(passing: number, tolerance: number, chordAt: Look['chordAt']): Approach | null {
  const rough = bottomNear(passing, CLOSING[0], chordAt)
  if (separationOf(rough.chordSquared) > tolerance + ROUGH) return null
  const instant = Math.round(bottomNear(rough.instant, CLOSING[1], chordAt).instant)
  const separation = separationOf(chordAt(instant))
  return separation <= tolerance ? { instant, separation } : null
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

function alignmentAt(request: AlignmentRequest, look: Look, { instant, separation }: Approach): Alignment {
  const { at, body, tolerance } = request
  const disc = bodyAt(body, at, instant)
  const apparent = apparentAltitude(disc.altitude)
  const skyline = request.skyline ?? null
  const ground = behindGround(skyline, disc)
  const phase = body === 'moon' ? moonPhase(at, instant) : null
  const sunAltitude = phase === null ? disc.altitude : sunAt(at, instant).altitude
  return {
    instant,
    separation,
    azimuth: disc.azimuth,
    altitude: apparent,
    ground,
    unsure: skyline === null || ground === 'behind' ? null : unknownBefore(skyline, disc),
    lit: phase?.lit ?? null,
    waxing: phase?.waxing ?? null,
    sunAltitude,
    sky: skyLight(sunAltitude),
    ...stretchAbout(instant, tolerance, look.chordAt),
  }
}

/** Every alignment whose closest approach lies in the time searched, in order; none is an answer too. */
export function alignments(request: AlignmentRequest): Result<readonly Alignment[], AlignmentReason> {
  const checked = checkedRequest(request)
  if (!checked.ok) return checked
  const look = lookOf(request)
  const found: Alignment[] = []
  for (const passing of passings(request, look)) {
    const closest = closestTo(passing, request.tolerance, look.chordAt)
    if (closest !== null && closest.instant >= request.from && closest.instant < request.until)
      found.push(alignmentAt(request, look, closest))
  }
  return done(found)
}
