/** Refraction of light from beyond the air: how much higher sun and moon appear than they stand. */
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'

export interface Air {
  /** Hectopascals at the place. */
  readonly pressure: number
  /** Degrees Celsius. */
  readonly temperature: number
}

/** The air for which the two formulas are given (Meeus, chapter 16). */
export const STANDARD_AIR: Air = { pressure: 1010, temperature: 10 }

function airFactor({ pressure, temperature }: Air): number {
  return (pressure / 1010) * (283 / (273 + temperature))
}

/** Degrees that a body of a true (airless) altitude appears raised. Saemundsson, Meeus 16.4; from -1 degree up. */
function saemundsson(altitude: number): number {
  return 1.02 / 60 / Math.tan((altitude + 10.3 / (altitude + 5.11)) * RADIANS_PER_DEGREE)
}

/** Degrees that a body of an apparent altitude is raised. Bennett, Meeus 16.3, without his end correction. */
export function refractionAtApparent(altitude: number, air: Air = STANDARD_AIR): number {
  return (airFactor(air) / 60) * (1 / Math.tan((altitude + 7.31 / (altitude + 4.4)) * RADIANS_PER_DEGREE))
}

/** Below this true altitude nothing is seen, and the formula means nothing. */
const LOWEST = -1
/** True altitude at and below which no refraction counts: twilights are of the airless sun. */
const NONE_BELOW = -6

/** Degrees that a body of a true altitude appears raised; tapers to nothing from -1 to -6 degrees, where no body is seen. */
export function refraction(altitude: number, air: Air = STANDARD_AIR): number {
  if (altitude <= NONE_BELOW) return 0
  const raised = Math.max(0, saemundsson(Math.max(altitude, LOWEST))) * airFactor(air)
  return altitude >= LOWEST ? raised : (raised * (altitude - NONE_BELOW)) / (LOWEST - NONE_BELOW)
}

/** Degrees above the level horizon at which a body of a true altitude appears. Continuous and rising throughout. */
export function apparentAltitude(altitude: number, air: Air = STANDARD_AIR): number {
  return altitude + refraction(altitude, air)
}

/** The true altitude behind an apparent one, degrees: apparentAltitude undone, by halving since it rises throughout. */
export function trueAltitude(apparent: number, air: Air = STANDARD_AIR): number {
  let [low, high] = [apparent - 2, apparent]
  while (apparentAltitude(low, air) > apparent) low--
  for (let round = 0; round < 50; round++) {
    const middle = (low + high) / 2
    if (apparentAltitude(middle, air) < apparent) low = middle
    else high = middle
  }
  return (low + high) / 2
}
