/** The exposure to expect from the sun's height and the sky: an estimate to be metered, never a measurement. */
import { type TableLineId, tableValue } from './exposure-table.ts'
import type { LightSide } from './direction.ts'

export const SKIES = ['clear', 'hazy', 'cloudy-bright', 'overcast', 'open-shade'] as const
export type Sky = (typeof SKIES)[number]

/**
 * What an estimate rests on: the table's own daylight values; carried down to a low sun; twilight on the ground; moonlight;
 * or nothing that was published.
 */
export type ExposureNote = 'daylight' | 'low-sun' | 'twilight' | 'moonlight' | 'unknown'

export interface ExpectedEv {
  /** EV at ISO 100 for things on the ground; null when nothing published tells it. */
  readonly ev: number | null
  /** EV at ISO 100 for the bright sky near a low sun, which a skyline before it is exposed for; null at other hours and skies. */
  readonly skyEv: number | null
  readonly note: ExposureNote
}

/** The moon for the exposure of a moonlit landscape. */
export interface MoonLight {
  /** Degrees. */
  readonly altitude: number
  /** Share of the disc, 0..1. */
  readonly lit: number
}

const DAYLIGHT: Readonly<Record<Sky, TableLineId>> = {
  clear: 'sun',
  hazy: 'hazy-sun',
  'cloudy-bright': 'cloudy-bright',
  overcast: 'heavy-overcast',
  'open-shade': 'open-shade',
}

/**
 * Degrees of sun from which the table's daylight values hold. Its rule is "about two hours after sunrise"; two hours after an
 * equinox sunrise at latitude 45 the sun stands at asin(cos 45 sin 30) = 20.7.
 */
export const FULL_FROM = 20
/** Degrees at which "just before sunset" is set (common practice, no source), and where sunset is (airless, of the disc's middle). */
export const BEFORE_SUNSET = 4
export const SUNSET = -0.833
/** Degrees at which civil twilight ends; below it nothing published is known here but moonlight. */
export const DARK_BELOW = -6
/** Degrees of sun under which moonlight outshines what is left of twilight: the end of nautical twilight. */
const MOONLIT_BELOW = -12
/** Degrees of moon over which the table's moonlight lines hold. */
const MOON_OVER = 40

/**
 * Lux on level ground at sunset under a clear and an overcast sky, and at the end of civil twilight under a clear one (published
 * tables of illuminance: 400, 40, 3.4). Between overcast and clear, bright cloud takes the middle (common practice, no source).
 */
const SUNSET_LUX: Readonly<Record<Sky, number>> = {
  clear: 400,
  hazy: 400,
  'cloudy-bright': Math.sqrt(400 * 40),
  overcast: 40,
  'open-shade': 400,
}
const CIVIL_END_LUX = 3.4

/** Lux that EV 0 at ISO 100 stands for, with the incident-light constant C = 250 for a flat receptor; cd/m2 with K = 12.5. */
const LUX_AT_ZERO = 2.5
const LUMINANCE_AT_ZERO = 0.125

export function evOfIlluminance(lux: number): number {
  return Math.log2(lux / LUX_AT_ZERO)
}

/** Lux for which an EV at ISO 100 is right, metered with a flat receptor. */
export function illuminanceOf(ev: number): number {
  return LUX_AT_ZERO * 2 ** ev
}

/** Luminance in cd/m2 for which an EV at ISO 100 is right. */
export function luminanceOf(ev: number): number {
  return LUMINANCE_AT_ZERO * 2 ** ev
}

/** Anchors from high to low: degrees of sun, EV. */
type Anchors = readonly (readonly [altitude: number, ev: number])[]

function along(anchors: Anchors, altitude: number): number | null {
  let above: Anchors[number] | undefined
  for (const anchor of anchors) {
    if (altitude >= anchor[0]) {
      if (above === undefined) return anchor[1]
      const share = (altitude - anchor[0]) / (above[0] - anchor[0])
      return anchor[1] + (above[1] - anchor[1]) * share
    }
    above = anchor
  }
  return null
}

/**
 * Things on the ground, lit from the front. The table's daylight value; just before sunset the middle of its line for that hour
 * under a clear sky, 12-14, and as much less under others; from sunset the published illuminances.
 */
function groundAnchors(sky: Sky): Anchors {
  const full = tableValue(DAYLIGHT[sky])
  const less = tableValue('sun') - tableValue('sky-just-before-sunset')
  const sunset = evOfIlluminance(SUNSET_LUX[sky])
  const dark = evOfIlluminance((CIVIL_END_LUX * SUNSET_LUX[sky]) / SUNSET_LUX.clear)
  return [
    [FULL_FROM, full],
    [BEFORE_SUNSET, full - less],
    [SUNSET, sunset],
    [DARK_BELOW, dark],
  ]
}

/** The bright sky near the sun, from the table's three lines on sunsets: their middles, and the least of the last at the end. */
const SKY_ANCHORS: Anchors = [
  [BEFORE_SUNSET, tableValue('sky-just-before-sunset')],
  [SUNSET, tableValue('sky-at-sunset')],
  [(SUNSET + DARK_BELOW) / 2, tableValue('sky-just-after-sunset')],
  [DARK_BELOW, tableValue('sky-just-after-sunset') - 1],
]

/** Stops less for light that isn't from the front. From above as in the rule of f/16, whose value is for light well off the axis. */
const STOPS_LESS: Readonly<Record<LightSide, number>> = { front: 0, side: 1, behind: 2, above: 0 }

/** How much of the side's effect is left: all of it while the sun casts shadows, none after sunset or without sun. */
function castShare(sky: Sky, altitude: number): number {
  if (sky !== 'clear' && sky !== 'hazy') return 0
  return Math.min(1, Math.max(0, (altitude - SUNSET) / (BEFORE_SUNSET - SUNSET)))
}

/** Shares of the lit disc for the table's words (common practice, no source). */
function moonlightLine(lit: number): TableLineId | null {
  if (lit >= 0.97) return 'moonlight-full'
  if (lit >= 0.6) return 'moonlight-gibbous'
  return lit >= 0.4 ? 'moonlight-quarter' : null
}

function byMoon(sky: Sky, sunAltitude: number, moon: MoonLight | null): ExpectedEv {
  const line = moon === null ? null : moonlightLine(moon.lit)
  const shines = sky === 'clear' && sunAltitude <= MOONLIT_BELOW && moon !== null && moon.altitude > MOON_OVER
  if (!shines || line === null) return { ev: null, skyEv: null, note: 'unknown' }
  return { ev: tableValue(line), skyEv: null, note: 'moonlight' }
}

/** `sunAltitudeAirless` in degrees, of the disc's middle. */
export function expectedEv(
  sky: Sky,
  sunAltitudeAirless: number,
  lightSide: LightSide,
  moon: MoonLight | null = null,
): ExpectedEv {
  const altitude = sunAltitudeAirless
  const front = along(groundAnchors(sky), altitude)
  if (front === null) return byMoon(sky, altitude, moon)
  const bright = (sky === 'clear' || sky === 'hazy') && altitude <= BEFORE_SUNSET
  const note = altitude >= FULL_FROM ? 'daylight' : altitude >= SUNSET ? 'low-sun' : 'twilight'
  return {
    ev: front - STOPS_LESS[lightSide] * castShare(sky, altitude),
    skyEv: bright ? along(SKY_ANCHORS, altitude) : null,
    note,
  }
}

/** Seconds of exposure: EV = log2(N^2 / t), and EV at ISO S = EV at ISO 100 + log2(S / 100). `ev` is at ISO 100. */
export function shutterTime(ev: number, aperture: number, iso: number): number {
  return (aperture * aperture * 100) / (iso * 2 ** ev)
}

export interface ShutterMark {
  /** As engraved, without a unit: '1/125', '0.3', '2.5'. */
  readonly text: string
  /** Seconds behind the mark, 2^(i/3). */
  readonly exact: number
}

/** Third-stop marks of the trade, 1/8000 to 30 s. */
const SHORT_TEXTS = [
  8000, 6400, 5000, 4000, 3200, 2500, 2000, 1600, 1250, 1000, 800, 640, 500, 400, 320, 250, 200, 160, 125, 100, 80, 60,
  50, 40, 30, 25, 20, 15, 13, 10, 8, 6, 5, 4,
].map((part) => `1/${part}`)
const LONG_TEXTS = [0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30].map(String)
/** Thirds of a stop from the first mark to 1 s: 1/8000 stands for 2^-13 s. */
const THIRDS_TO_ONE = 39

export const SHUTTER_MARKS: readonly ShutterMark[] = [...SHORT_TEXTS, ...LONG_TEXTS].map((text, index) => ({
  text,
  exact: 2 ** ((index - THIRDS_TO_ONE) / 3),
}))

/** The mark nearest in stops; null more than half a third beyond the first or the last. */
export function nearestShutterMark(seconds: number): ShutterMark | null {
  return SHUTTER_MARKS[Math.round(Math.log2(seconds) * 3) + THIRDS_TO_ONE] ?? null
}

export interface ShutterLimits {
  /** Seconds, as engraved or exact. */
  readonly fastest: number
  readonly slowest: number
}

export interface AgainstCamera {
  readonly fits: 'within' | 'too-bright' | 'too-dark'
  /** Stops beyond the camera's limit, 0 or more. */
  readonly stops: number
}

/** Stops within which a time still counts as the limit: half a third, the rounding of the marks. */
const FORGIVEN = 1 / 6

/** How far an exposure lies beyond what the shutter does. Too bright: it would need a shorter time than the fastest. */
export function exposureAgainstCamera(seconds: number, limits: ShutterLimits): AgainstCamera {
  const bright = Math.log2(limits.fastest / seconds)
  if (bright > FORGIVEN) return { fits: 'too-bright', stops: bright }
  const dark = Math.log2(seconds / limits.slowest)
  if (dark > FORGIVEN) return { fits: 'too-dark', stops: dark }
  return { fits: 'within', stops: 0 }
}

/** Stops that a neutral density filter takes, from its density. */
export function stopsOfDensity(density: number): number {
  return density * Math.log2(10)
}

/** Share of the light that it lets through, 0..1. */
export function transmissionOfDensity(density: number): number {
  return 10 ** -density
}
