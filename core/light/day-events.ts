/** What sun and moon do within a day at a place: rise, set, transit, twilights; none, one or two of each. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { crossings, type Crossing, type Span, type ValueAt } from './crossing.ts'
import { sunkHorizon } from './dip.ts'
import { moonAt, sunAt, type BodyPlace } from './sky.ts'

export type DayState = 'rises-or-sets' | 'up-all-day' | 'down-all-day'
export type Twilight = 'civil' | 'nautical' | 'astronomical'

/** The sun's centre passing a twilight's depth, upwards at dawn and downwards at dusk. */
export interface TwilightEvent {
  readonly kind: Twilight
  readonly side: 'dawn' | 'dusk'
  /** Epoch milliseconds. */
  readonly instant: number
}

/** Instants are whole epoch milliseconds within [start, end), in order. */
interface BodyDay {
  readonly rise: readonly number[]
  readonly set: readonly number[]
  readonly state: DayState
}

export interface SunDay extends BodyDay {
  /** The sun's upper transit; null when the day has none (a short day, a zone far from the place). */
  readonly noon: number | null
  readonly twilights: readonly TwilightEvent[]
}

export interface MoonDay extends BodyDay {
  /** The moon's upper transit; null on the day it skips. */
  readonly transit: number | null
}

export interface DayOptions {
  /** Metres of the eye above its visible horizon, which is not its height above the sea; 0 when absent. */
  readonly aboveHorizon?: number
}

/** Degrees, refraction at the horizon by the convention of almanacs: 34 minutes of arc. */
export const HORIZON_REFRACTION = 34 / 60
/** Degrees, altitude of the sun's centre at rising and setting by the same convention: 34 minutes, and 16 for its radius. */
export const SUN_RISE_ALTITUDE = -50 / 60

/** Degrees of the sun's centre without air, at which each twilight begins or ends. */
export const TWILIGHT_ALTITUDE: Readonly<Record<Twilight, number>> = { civil: -6, nautical: -12, astronomical: -18 }
const TWILIGHTS: readonly Twilight[] = ['civil', 'nautical', 'astronomical']

/** Milliseconds between looks at the sky. */
const STEP = 30 * 60_000

/** A body's places, each instant looked up once: all searches of a day begin with the same looks. */
function remembered<Place>(placeAt: (instant: number) => Place): (instant: number) => Place {
  const known = new Map<number, Place>()
  return (instant) => {
    const before = known.get(instant)
    if (before !== undefined) return before
    const place = placeAt(instant)
    known.set(instant, place)
    return place
  }
}

/** Crossings within [start, end): one between the last millisecond and the end is of this day, so each falls on one day. */
function within(value: ValueAt, start: number, end: number): Crossing[] {
  return crossings(value, start, end, STEP).map(({ instant, rising }) => ({
    instant: Math.min(instant, end - 1),
    rising,
  }))
}

const instantsOf = (found: readonly Crossing[], rising: boolean): number[] =>
  found.filter((one) => one.rising === rising).map((one) => one.instant)

function bodyDay(height: ValueAt, start: number, end: number): BodyDay {
  const found = within(height, start, end)
  const still = height(start) >= 0 ? 'up-all-day' : 'down-all-day'
  return {
    rise: instantsOf(found, true),
    set: instantsOf(found, false),
    state: found.length > 0 ? 'rises-or-sets' : still,
  }
}

/** The first passing of the meridian from east to west, north or south of the zenith alike; holds at the poles too. */
function upperTransit(placeAt: (instant: number) => BodyPlace, start: number, end: number): number | null {
  const eastward = (instant: number): number => {
    const { azimuth, altitude } = placeAt(instant)
    return Math.sin(azimuth * RADIANS_PER_DEGREE) * Math.cos(altitude * RADIANS_PER_DEGREE)
  }
  return instantsOf(within(eastward, start, end), false)[0] ?? null
}

/** The sun over a civil day, its bounds given in epoch milliseconds. Rise and set are of the upper limb. */
export function sunDay(at: LatLon, start: number, end: number, { aboveHorizon = 0 }: DayOptions = {}): SunDay {
  const placeAt = remembered((instant) => sunAt(at, instant))
  const threshold = SUN_RISE_ALTITUDE - sunkHorizon(aboveHorizon)
  const twilights = TWILIGHTS.flatMap((kind) =>
    within((instant) => placeAt(instant).altitude - TWILIGHT_ALTITUDE[kind], start, end).map(
      ({ instant, rising }): TwilightEvent => ({ kind, side: rising ? 'dawn' : 'dusk', instant }),
    ),
  )
  return {
    ...bodyDay((instant) => placeAt(instant).altitude - threshold, start, end),
    noon: upperTransit(placeAt, start, end),
    twilights: twilights.toSorted((one, other) => one.instant - other.instant),
  }
}

/** The moon over a civil day, its bounds given in epoch milliseconds. Rise and set are of the upper limb. */
export function moonDay(at: LatLon, start: number, end: number, { aboveHorizon = 0 }: DayOptions = {}): MoonDay {
  const placeAt = remembered((instant) => moonAt(at, instant))
  const raised = HORIZON_REFRACTION + sunkHorizon(aboveHorizon)
  const height = (instant: number): number => {
    const { altitude, radius } = placeAt(instant)
    return altitude + radius + raised
  }
  return { ...bodyDay(height, start, end), transit: upperTransit(placeAt, start, end) }
}

/** The stretches in which sun or moon are up within the day, [start, end): none, one or two. */
export function upSpans(
  { rise, set, state }: BodyDay,
  { start, end }: { readonly start: number; readonly end: number },
): Span[] {
  if (state === 'down-all-day') return []
  if (state === 'up-all-day') return [{ from: start, until: end }]
  const events = [...rise.map((instant) => ({ instant, up: true })), ...set.map((instant) => ({ instant, up: false }))]
  events.sort((one, other) => one.instant - other.instant)
  const spans: Span[] = []
  let from: number | null = events[0]?.up === false ? start : null
  for (const { instant, up } of events) {
    if (!up && from !== null) spans.push({ from, until: instant })
    from = up ? instant : null
  }
  return from === null ? spans : [...spans, { from, until: end }]
}
