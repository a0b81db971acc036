/** Light wishes: what is wished of the light, each with the heights of the sun it needs, and which two can't be met together. */
import { SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE } from './day-events.ts'
import { trueAltitude } from './refraction.ts'

export const SUBJECT_LIGHTS = ['lit', 'in-shade', 'back-lit'] as const
export const LANDMARK_LIGHTS = ['lit', 'raking', 'in-shade'] as const
export const SUN_PLACES = ['out-of-frame', 'in-frame'] as const
export const SOFT_LIGHTS = ['evening', 'morning', 'either'] as const

/** Hours by the clock of the place when somebody can be there: minutes after midnight; `until` before `from` runs past midnight. */
export interface Hours {
  /** 0..1439. */
  readonly from: number
  /** 1..1440; never equal to `from`. */
  readonly until: number
}

/** Null where nothing is wished. */
export interface LightWishes {
  /** Of the subject's sides that the camera sees. */
  readonly subject: (typeof SUBJECT_LIGHTS)[number] | null
  /** Of the landmark's faces that the camera sees. */
  readonly landmark: (typeof LANDMARK_LIGHTS)[number] | null
  /** Degrees of the sun's apparent altitude. */
  readonly altitude: { readonly least: number; readonly most: number } | null
  readonly sun: (typeof SUN_PLACES)[number] | null
  /** Between the sun's edge at the horizon and its centre 6 degrees below. */
  readonly soft: (typeof SOFT_LIGHTS)[number] | null
  readonly moonUp: boolean
  readonly hours: Hours | null
}

export const NO_WISHES: LightWishes = {
  subject: null,
  landmark: null,
  altitude: null,
  sun: null,
  soft: null,
  moonUp: false,
  hours: null,
}

export const WISH_KINDS = ['subject', 'landmark', 'altitude', 'sun', 'soft', 'moonUp', 'hours'] as const
export type WishKind = (typeof WISH_KINDS)[number]

/** The wishes that are made, in their order. */
export function wishesMade(wishes: LightWishes): WishKind[] {
  return WISH_KINDS.filter((kind) => wishes[kind] !== null && wishes[kind] !== false)
}

/** Airless altitude of the sun's centre at which soft light ends, with civil twilight. */
export const SOFT_ENDS = TWILIGHT_ALTITUDE.civil

/** Airless altitudes of the sun's centre that a wish needs, degrees; null where it needs none. */
function altitudesFor(kind: WishKind, wishes: LightWishes): readonly [number, number] | null {
  const up: readonly [number, number] = [SUN_RISE_ALTITUDE, 90]
  if (kind === 'subject' || kind === 'landmark') return up
  if (kind === 'sun') return wishes.sun === 'in-frame' ? up : null
  if (kind === 'soft') return [SOFT_ENDS, SUN_RISE_ALTITUDE]
  if (kind === 'altitude' && wishes.altitude !== null)
    return [trueAltitude(wishes.altitude.least), trueAltitude(wishes.altitude.most)]
  return null
}

/** Pairs of wishes that no sun can meet together, wherever it goes: the heights they need don't touch. */
export function contradictions(wishes: LightWishes): (readonly [WishKind, WishKind])[] {
  const made = wishesMade(wishes)
  return made.flatMap((one, index) =>
    made.slice(index + 1).flatMap((other) => {
      const first = altitudesFor(one, wishes)
      const second = altitudesFor(other, wishes)
      // Two that meet in a single height hold together for no time.
      const apart = first !== null && second !== null && (first[0] >= second[1] || second[0] >= first[1])
      return apart ? [[one, other] as const] : []
    }),
  )
}
