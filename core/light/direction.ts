/** Where the light comes from as the photographer sees it: from the front, from the side, from behind the subject, from above. */
import { turnBetween } from '#core/units/angle.ts'

export type LightSide = 'front' | 'side' | 'behind' | 'above'

export interface LightFrom {
  /** 'front' falls on what the camera sees of the subject, 'behind' comes toward the camera. */
  readonly side: LightSide
  /** On which hand of the photographer, who faces the subject; null where it is neither: straight on, straight against, above. */
  readonly hand: 'left' | 'right' | null
  /** Degrees 0..180 along the ground, at the subject, between the ways to the light and to the camera. */
  readonly angle: number
}

/** Degrees up to which light is from the front, and from which it is from behind (common practice, no source). */
export const FRONT_UP_TO = 45
export const BEHIND_FROM = 135
/** Degrees of altitude over which light is from above, whatever its azimuth (common practice, no source). */
export const ABOVE_OVER = 65
/** Degrees about straight on and straight against within which no hand is told (common practice, no source). */
export const STRAIGHT_WITHIN = 5

/** `altitude` is the light's own, degrees. */
export function lightFrom(sunAzimuth: number, bearingCameraToSubject: number, altitude = 0): LightFrom {
  const turn = turnBetween(bearingCameraToSubject, sunAzimuth)
  const angle = 180 - Math.abs(turn)
  if (altitude > ABOVE_OVER) return { side: 'above', hand: null, angle }
  const straight = angle <= STRAIGHT_WITHIN || angle >= 180 - STRAIGHT_WITHIN
  const hand = straight ? null : turn > 0 ? 'right' : 'left'
  return { side: angle <= FRONT_UP_TO ? 'front' : angle >= BEHIND_FROM ? 'behind' : 'side', hand, angle }
}
