/** The light windows against stepping through every minute with the same margins: one day, and a year of days; direct sun over hills against a walk. */
import { LOOK_EVERY, commonByDay, dayWindows, daysFrom, hoursSpans } from '#core/light/light-window.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { type LightWishes, wishesMade } from '#core/light/light-wish.ts'
import { directLight, overSkyline } from '#core/light/over-skyline.ts'
import { lookAtSun, rememberingSun, wishMargin } from '#core/light/wish-margin.ts'
import { eyeAbove, skyline } from '#core/ground/skyline.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type CivilDay, civilDay } from '#core/time/civil.ts'
import { examplePlan } from '#test/help/plans.ts'
import { mountains } from '#test/help/terrain.ts'
import { type BenchRow, against } from './measure.ts'

const ZONE = 'Europe/Berlin'
const MINUTE = 60_000
/** Of the year's days these are stepped through; the rest is reckoned from them. */
const EVERY = 30

const WISHES: LightWishes = {
  subject: 'lit',
  landmark: 'lit',
  altitude: { least: 3, most: 45 },
  sun: 'out-of-frame',
  soft: null,
  moonUp: true,
  hours: { from: 360, until: 1260 },
}

function civilDays(year: number): CivilDay[] {
  return daysFrom(`${year}-01-01`, 365, (date) => {
    const day = civilDay(date, ZONE)
    return day.ok ? day.value : null
  })
}

/** Minutes of the day in which each wish holds, and all of them. */
function minuteByMinute(scene: LightScene, day: CivilDay): number[] {
  const made = wishesMade(WISHES)
  const counts = Array.from({ length: made.length + 1 }, () => 0)
  const open = WISHES.hours === null ? [] : hoursSpans(WISHES.hours, day, ZONE)
  for (let instant = day.start; instant < day.end; instant += MINUTE) {
    const sun = lookAtSun(scene.at, instant)
    let all = true
    made.forEach((kind, index) => {
      const holds =
        kind === 'hours'
          ? open.some(({ from, until }) => instant >= from && instant < until)
          : wishMargin(kind, WISHES, scene, instant, sun) >= 0
      if (holds) counts[index] = (counts[index] ?? 0) + 1
      all &&= holds
    })
    if (all) counts[made.length] = (counts[made.length] ?? 0) + 1
  }
  return counts
}

/** Milliseconds between two looks of the plain walk. */
const WALK = 10_000

/** First and last direct sun of every day of a year over hills, against a walk through some of its days. */
function directRow(): BenchRow {
  const grid = mountains(1001)
  const eye = eyeAbove(grid, 300, -200, 1.6)
  if (eye === null) throw new Error('no ground under the eye')
  const at = { lat: 46.9, lon: 8.2 }
  const line = skyline(grid, eye, 0.13)
  const days = civilDays(2026)
  const few = days.filter((_, index) => index % EVERY === 0)
  let sink = 0
  const year = against(
    () => {
      for (const day of days) sink += directLight(rememberingSun(at), line, day).length
    },
    () => {
      for (const day of few)
        for (let when = day.start; when < day.end; when += WALK)
          sink += overSkyline(line, lookAtSun(at, when)) >= 0 ? 1 : 0
    },
    1,
    5,
  )
  if (sink === 0) throw new Error('the sun never shone')
  const scale = days.length / few.length
  return {
    name: `first and last direct sun of a year over hills / a walk of 10 s (of ${few.length} days, scaled to ${days.length})`,
    ours: `${year.ours.toFixed(0)} ms`,
    anchor: `${(year.anchor * scale).toFixed(0)} ms`,
    ratio: year.ratio / scale,
    aim: '200 ms',
  }
}

export function benchLight(): BenchRow[] {
  const plan = examplePlan({ at: { lat: 51.2, lon: 12.4 } })
  const scene = lightSceneOf(plan, assess(plan))
  const days = civilDays(2026)
  const few = days.filter((_, index) => index % EVERY === 0)
  let sink = 0
  const first = few[5] ?? days[0]
  if (first === undefined) throw new Error('the year has no day')
  const day = against(
    () => (sink += dayWindows(scene, WISHES, first, ZONE).common.length + 1),
    () => (sink += minuteByMinute(scene, first).length),
    20,
  )
  const year = against(
    () => (sink += commonByDay(scene, WISHES, days, ZONE).total.length),
    () => {
      for (const each of few) sink += minuteByMinute(scene, each).length
    },
    1,
    5,
  )
  if (sink === 0) throw new Error('nothing was found')
  const scale = days.length / few.length
  return [
    {
      name: `windows of a day, six wishes, looks every ${LOOK_EVERY / MINUTE} min / every minute`,
      ours: `${day.ours.toFixed(2)} ms`,
      anchor: `${day.anchor.toFixed(1)} ms`,
      ratio: day.ratio,
      aim: '2 ms',
    },
    {
      name: `common windows of a year, six wishes / every minute (of ${few.length} days, scaled to ${days.length})`,
      ours: `${year.ours.toFixed(0)} ms`,
      anchor: `${(year.anchor * scale).toFixed(0)} ms`,
      ratio: year.ratio / scale,
      aim: '300 ms',
    },
    directRow(),
  ]
}
