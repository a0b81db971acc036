/** From a direction in the sky of a place to the turn of the sky: hour angle and declination, by a turn about the east-west line. */
import { RADIANS_PER_DEGREE, degrees } from '#core/units/angle.ts'

export interface HourPlace {
  /** Degrees past the meridian, westward positive, (-180, 180]. */
  readonly hourAngle: number
  /** Degrees north of the celestial equator. */
  readonly declination: number
}

/** Azimuth and altitude without air. Holds everywhere: at the zenith and at the poles a direction keeps its hour angle. */
export function hourPlace(lat: number, azimuth: number, altitude: number): HourPlace {
  const turn = azimuth * RADIANS_PER_DEGREE
  const rise = altitude * RADIANS_PER_DEGREE
  const slope = lat * RADIANS_PER_DEGREE
  const east = Math.sin(turn) * Math.cos(rise)
  const north = Math.cos(turn) * Math.cos(rise)
  const up = Math.sin(rise)
  const pole = Math.sin(slope) * up + Math.cos(slope) * north
  const meridian = Math.cos(slope) * up - Math.sin(slope) * north
  return {
    hourAngle: degrees(Math.atan2(-east, meridian)),
    declination: degrees(Math.atan2(pole, Math.sqrt(east * east + meridian * meridian))),
  }
}
