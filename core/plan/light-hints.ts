/** Hints that follow from the light: where a fill would stand, and the exposure to expect. */
import {
  type AgainstCamera,
  type ExpectedEv,
  type Sky,
  exposureAgainstCamera,
  shutterTime,
} from '#core/light/exposure.ts'
import { tableValue } from '#core/light/exposure-table.ts'
import { wrapBearing } from '#core/units/angle.ts'
import type { ThingLight } from './thing-light.ts'
import type { Plan } from './plan.ts'

/** Where something that throws light back would stand: before the shaded side that is seen. */
export interface FillHint {
  /** Bearing from the subject. */
  readonly bearing: number
  /** As the photographer sees it. */
  readonly hand: 'left' | 'right'
  /** Stops between a side in the sun and one in open shade, by the daylight table. */
  readonly stops: number
}

/** An estimate from a published table, to be metered on the day. */
export interface ExposureReading {
  readonly expected: ExpectedEv
  /** Seconds at the aperture in use and the shoot's ISO; null when either side is unknown. */
  readonly seconds: number | null
  readonly against: AgainstCamera | null
}

/** A fill belongs before the largest seen upright side that the sun misses while it reaches another. */
export function fillHint(subject: ThingLight, toSubject: number | null, stops: number): FillHint | null {
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
export function contrastStops(sky: Sky): number {
  const line = { clear: 'sun', hazy: 'hazy-sun', 'cloudy-bright': 'cloudy-bright' } as const
  return sky === 'overcast' || sky === 'open-shade' ? 0 : tableValue(line[sky]) - tableValue('open-shade')
}

export function exposureReading(plan: Plan, aperture: number | null, expected: ExpectedEv): ExposureReading {
  if (aperture === null || expected.ev === null) return { expected, seconds: null, against: null }
  const { fastestShutter: fastest, slowestShutter: slowest } = plan.shoot.bag.camera
  const seconds = shutterTime(expected.ev, aperture, plan.shoot.iso)
  return { expected, seconds, against: exposureAgainstCamera(seconds, { fastest, slowest }) }
}
