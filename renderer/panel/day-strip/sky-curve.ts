/** The day's sky as shapes: the sun's height as a band, the moon's as a line, twilight as steps of grey. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type SunDay, SUN_RISE_ALTITUDE, TWILIGHT_ALTITUDE } from '#core/light/day-events.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { moonAt, sunAt } from '#core/light/sky.ts'
import type { CivilDay } from '#core/time/civil.ts'
import { shareOf } from './time-axis.ts'

/** Shapes are drawn in a box so wide and high, stretched to the strip. */
export const BOX = { width: 1000, height: 100 } as const

const SAMPLE_EVERY = 10 * 60_000

export interface Sample {
  readonly instant: number
  /** Degrees as it appears. */
  readonly altitude: number
}

/** Heights through the day, both ends included. */
export function samples(day: CivilDay, altitudeAt: (instant: number) => number): Sample[] {
  const count = Math.ceil((day.end - day.start) / SAMPLE_EVERY)
  return Array.from({ length: count + 1 }, (_, index) => {
    const instant = day.start + ((day.end - day.start) * index) / count
    return { instant, altitude: altitudeAt(instant) }
  })
}

export function sunSamples(at: LatLon, day: CivilDay): Sample[] {
  return samples(day, (instant) => apparentAltitude(sunAt(at, instant).altitude))
}

export function moonSamples(at: LatLon, day: CivilDay): Sample[] {
  return samples(day, (instant) => apparentAltitude(moonAt(at, instant).altitude))
}

/** Degrees, the moon's farthest from the celestial equator (its orbit's 5.1 on top of the ecliptic's 23.4). */
const FARTHEST = 28.6

/** Degrees at the band's top: the highest that sun or moon ever come at a latitude, so that days compare by eye. */
export function topAltitude(lat: number): number {
  return 90 - Math.max(0, Math.abs(lat) - FARTHEST)
}

type Point = readonly [x: number, y: number]

/** The stretches above the level horizon, each ended where it meets it. */
function runsAbove(day: CivilDay, heights: readonly Sample[], top: number): Point[][] {
  const place = (instant: number, altitude: number): Point => [
    shareOf(day, instant) * BOX.width,
    BOX.height * (1 - Math.min(1, altitude / top)),
  ]
  const runs: Point[][] = []
  let run: Point[] = []
  heights.forEach((sample, index) => {
    const before = heights[index - 1]
    const up = sample.altitude >= 0
    if (before !== undefined && before.altitude >= 0 !== up) {
      const part = before.altitude / (before.altitude - sample.altitude)
      run.push(place(before.instant + part * (sample.instant - before.instant), 0))
    }
    if (up) run.push(place(sample.instant, sample.altitude))
    else if (run.length > 1) {
      runs.push(run)
      run = []
    }
  })
  return run.length > 1 ? [...runs, run] : runs
}

function path(points: readonly Point[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
}

/** The outline of the height above the horizon, closed along it to be filled; nothing where it stays below. */
export function bandPath(day: CivilDay, heights: readonly Sample[], top: number): string {
  return runsAbove(day, heights, top)
    .map((run) => {
      const [first] = run
      const last = run.at(-1)
      return first === undefined || last === undefined
        ? ''
        : `${path(run)}L${last[0].toFixed(1)} ${BOX.height}L${first[0].toFixed(1)} ${BOX.height}Z`
    })
    .join('')
}

/** From the dark of night, 0, over three twilights to day, 4. */
export type SkyLevel = 0 | 1 | 2 | 3 | 4

export interface SkyStep {
  readonly from: number
  readonly until: number
  readonly level: SkyLevel
}

function levelAt(altitude: number): SkyLevel {
  if (altitude >= SUN_RISE_ALTITUDE) return 4
  if (altitude >= TWILIGHT_ALTITUDE.civil) return 3
  if (altitude >= TWILIGHT_ALTITUDE.nautical) return 2
  return altitude >= TWILIGHT_ALTITUDE.astronomical ? 1 : 0
}

/** The day cut where twilights begin and end, and at rise and set; the light between two cuts is one step. */
export function skySteps(at: LatLon, day: CivilDay, sun: Pick<SunDay, 'rise' | 'set' | 'twilights'>): SkyStep[] {
  const inner = [...sun.rise, ...sun.set, ...sun.twilights.map(({ instant }) => instant)]
  const cuts = [day.start, ...inner.toSorted((one, other) => one - other), day.end]
  return cuts.slice(1).flatMap((until, index) => {
    const from = cuts[index] ?? day.start
    return until > from ? [{ from, until, level: levelAt(sunAt(at, (from + until) / 2).altitude) }] : []
  })
}

/** The highest sample, where the moon's disc is drawn; null when it stays below the horizon. */
export function highest(heights: readonly Sample[]): Sample | null {
  let best: Sample | null = null
  for (const sample of heights) if (sample.altitude > (best?.altitude ?? 0)) best = sample
  return best
}
