/** The work itself, cut into steps of a few milliseconds, so that a newer question need not wait for an older one. */
import { exhaustive } from '#core/exhaustive.ts'
import { alignments } from '#core/light/alignment.ts'
import { spansAbove } from '#core/light/crossing.ts'
import { SUN_RISE_ALTITUDE } from '#core/light/day-events.ts'
import { LOOK_EVERY, commonByDay, daysFrom } from '#core/light/light-window.ts'
import { faceDays, faceYears } from '#core/light/side-hours.ts'
import { sunAt } from '#core/light/sky.ts'
import { wishDays } from '#core/light/wish-days.ts'
import { daysInMonth, storedDate } from '#core/time/calendar-month.ts'
import { type CivilDay, type Zone, addDays, civilDay } from '#core/time/civil.ts'
import type { Step as JobStep } from '#renderer/job/messages.ts'
import type { AlignmentsJob, FacesDayJob, FacesYearJob, Job, ReasonJob, Update, YearJob } from './days-job.ts'
import { packSpans } from './packed-spans.ts'

export type DaysStep = JobStep<Update>

const DAYS_A_STEP = 14
/** Days of the next year that are looked at too, so that December has days to come. */
export const DAYS_BEYOND = 31
const LAST_YEAR = 2100
/** Milliseconds of an alignment search that are taken in one step. */
const SEARCH_A_STEP = 200 * 86_400_000

/** Days from a date on that the zone has, within the years that are computed. */
function someDays(date: string, count: number, zone: Zone): CivilDay[] {
  return daysFrom(date, count, (each) => {
    const day = civilDay(each, zone)
    return day.ok ? day.value : null
  })
}

export function daysOfYear(year: number): number {
  return (Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / 86_400_000
}

function* inStretches(year: number, count: number, zone: Zone): Generator<{ share: number; days: CivilDay[] }> {
  for (let begun = 0; begun < count; begun += DAYS_A_STEP) {
    const length = Math.min(DAYS_A_STEP, count - begun)
    yield { share: (begun + length) / count, days: someDays(addDays(`${year}-01-01`, begun), length, zone) }
  }
}

function* yearSteps({ scene, wishes, zone, year }: YearJob): Generator<DaysStep> {
  const count = daysOfYear(year) + (year < LAST_YEAR ? DAYS_BEYOND : 0)
  for (const { share, days } of inStretches(year, count, zone)) {
    const { common } = commonByDay(scene, wishes, days, zone)
    yield { share, update: { kind: 'year', dates: days.map(({ date }) => date), spans: packSpans(common) } }
  }
}

function* reasonSteps({ scene, wishes, zone, year }: ReasonJob): Generator<DaysStep> {
  for (const { share, days } of inStretches(year, daysOfYear(year), zone))
    yield { share, update: { kind: 'reason', found: wishDays(scene, wishes, days, zone) } }
}

function* facesDaySteps({ at, faces, skyline, day }: FacesDayJob): Generator<DaysStep> {
  const height = (instant: number): number => sunAt(at, instant).altitude - SUN_RISE_ALTITUDE
  const sunUp = spansAbove(height, day.start, day.end, LOOK_EVERY)
  yield { share: 1, update: { kind: 'faces-day', sunUp, faces: faceDays(at, faces, day, skyline) } }
}

function* facesYearSteps({ at, faces, skyline, zone, year }: FacesYearJob): Generator<DaysStep> {
  for (let month = 0; month < 12; month++) {
    const days = someDays(storedDate(year, month + 1, 1), daysInMonth(year, month + 1), zone)
    const found = faceYears(at, faces, days, skyline)
    const hours = found.map(({ months }) => months[month] ?? null)
    yield { share: (month + 1) / 12, update: { kind: 'faces-year', month, hours } }
  }
}

function* alignmentSteps({ request }: AlignmentsJob): Generator<DaysStep> {
  const { from, until } = request
  for (let begun = from; begun < until; begun += SEARCH_A_STEP) {
    const end = Math.min(until, begun + SEARCH_A_STEP)
    const found = alignments({ ...request, from: begun, until: end })
    // The page asks nothing that can't be answered: it checks before.
    if (!found.ok) throw new RangeError(found.fault.message)
    yield { share: (end - from) / (until - from), update: { kind: 'alignments', found: found.value } }
  }
}

export function daysSteps(job: Job): Iterator<DaysStep> {
  switch (job.kind) {
    case 'year':
      return yearSteps(job)
    case 'reason':
      return reasonSteps(job)
    case 'faces-day':
      return facesDaySteps(job)
    case 'faces-year':
      return facesYearSteps(job)
    case 'alignments':
      return alignmentSteps(job)
    default:
      return exhaustive(job)
  }
}

/** Buffers that an update hands over instead of copying them. */
export function buffersOf(update: Update): ArrayBufferLike[] {
  return update.kind === 'year' ? [update.spans.counts.buffer, update.spans.edges.buffer] : []
}
