/** Which side of the landmark? For each of its faces the hours of direct light over a day and over the year, from no standpoint at all. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { CivilDay } from '#core/time/civil.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { HOUR } from '#core/time/duration.ts'
import { type Span, spansAbove } from './crossing.ts'
import type { LightSkyline } from './light-scene.ts'
import { LOOK_EVERY, totalOf } from './light-window.ts'
import { LOOK_OVER_GROUND_EVERY, overSkyline, withDoubts } from './over-skyline.ts'
import { type SunLook, rememberingSun } from './wish-margin.ts'

/** A face as this question needs it: where it looks, in east, north and up at the place. */
export interface SidedFace {
  readonly id: string
  readonly normal: LocalPoint
}

export interface FaceDay {
  readonly id: string
  /** When the sun stands above the horizon, or above the skyline where it is known, and before the face. */
  readonly spans: readonly Span[]
}

/** Above zero while the sun is up and before the face. */
function litMargin(normal: LocalPoint, sun: SunLook, skyline: LightSkyline | null): number {
  const { direction } = sun
  const cosine = normal.east * direction.east + normal.north * direction.north + normal.up * direction.up
  return Math.min(cosine, overSkyline(skyline, sun) * RADIANS_PER_DEGREE)
}

/** The stretches of a day in which each face has direct light over the landmark's skyline; times are exact to a second. */
export function faceDays(
  at: LatLon,
  faces: readonly SidedFace[],
  day: CivilDay,
  skyline: LightSkyline | null = null,
): FaceDay[] {
  const look = rememberingSun(at)
  const every = skyline === null ? LOOK_EVERY : LOOK_OVER_GROUND_EVERY
  return faces.map(({ id, normal }) => ({
    id,
    spans: withDoubts(
      spansAbove((instant) => litMargin(normal, look(instant), skyline), day.start, day.end, every),
      skyline,
      look,
      day,
    ),
  }))
}

/** Hours of direct light of each face, by month (0..11), as the mean of the days given. */
export interface FaceYear {
  readonly id: string
  /** Twelve means, hours a day; null for a month of which no day was given. */
  readonly months: readonly (number | null)[]
  /** Hours over all the days given. */
  readonly total: number
}

/** Adds up the days given; a year of them takes some tens of milliseconds a face, five times that over a skyline: work for a worker. */
export function faceYears(
  at: LatLon,
  faces: readonly SidedFace[],
  days: readonly CivilDay[],
  skyline: LightSkyline | null = null,
): FaceYear[] {
  const sums = faces.map(() => new Float64Array(12))
  const counts = new Float64Array(12)
  for (const day of days) {
    const month = Number(day.date.slice(5, 7)) - 1
    counts[month] = (counts[month] ?? 0) + 1
    faceDays(at, faces, day, skyline).forEach(({ spans }, index) => {
      const sum = sums[index]
      if (sum !== undefined) sum[month] = (sum[month] ?? 0) + totalOf(spans) / HOUR
    })
  }
  return faces.map(({ id }, index) => {
    const sum = sums[index] ?? new Float64Array(12)
    return {
      id,
      months: Array.from(sum, (hours, month) => ((counts[month] ?? 0) > 0 ? hours / (counts[month] ?? 1) : null)),
      total: sum.reduce((all, hours) => all + hours, 0),
    }
  })
}
