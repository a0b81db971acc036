/** What a scan tries at every place: focal lengths, fills, lens heights, placements and instants, each evenly over what is wished. */
import type { FillWish } from '#core/frame/fill.ts'
import type { Placement } from '#core/frame/set-up.ts'
import type { Hours } from '#core/light/light-wish.ts'
import { commonSpans, hoursSpans } from '#core/light/light-window.ts'
import type { Lens } from '#core/optics/lens.ts'
import type { Band, ScanWishes } from '#core/record/scan-wishes.ts'
import { type CivilDay, type Zone, addDays, civilDay, civilDayOf } from '#core/time/civil.ts'
import { DAY, MINUTE } from '#core/time/duration.ts'
import { demandsMade } from './demands.ts'
import type { ScanRequest } from './scan-request.ts'

export interface FocalSample {
  readonly lens: Lens
  /** Millimetres. */
  readonly focalLength: number
}

/** At least both ends of a band: a band that is widened then tries what it was widened to. */
function atLeastEnds({ least, most }: Band, count: number): number {
  return most > least ? Math.max(2, Math.round(count)) : 1
}

function overBand(band: Band, count: number, at: (share: number) => number): number[] {
  const samples = atLeastEnds(band, count)
  if (samples === 1) return [band.least]
  return Array.from({ length: samples }, (_, index) =>
    index === 0 ? band.least : index === samples - 1 ? band.most : at(index / (samples - 1)),
  )
}

function evenly(band: Band, count: number): number[] {
  return overBand(band, count, (share) => band.least + share * (band.most - band.least))
}

/** Of each lens by itself, evenly by ratio. */
export function focalSamples(lenses: readonly Lens[], count: number): FocalSample[] {
  return lenses.flatMap((lens) => {
    const { focalMin: least, focalMax: most } = lens
    return overBand({ least, most }, count, (share) => least * (most / least) ** share).map((focalLength) => ({
      lens,
      focalLength,
    }))
  })
}

/** The shot's own fill where none is wished. */
export function fillSamples({ shoot, spot, steps }: Pick<ScanRequest, 'shoot' | 'spot' | 'steps'>): FillWish[] {
  const wish = shoot.scanWishes.subjectFill
  if (wish === null) return [spot.shot.subjectFill]
  return evenly(wish, steps.fills).map((share) => ({ share, axis: wish.axis }))
}

export function heightSamples({ lensHeight }: Pick<ScanWishes, 'lensHeight'>, count: number): number[] {
  return evenly(lensHeight, count)
}

/** Shares of the width at which the subject is placed to leave room for a landmark beside it. */
const THIRDS = [-1 / 6, 1 / 6]

export function placementSamples({ shoot, spot }: Pick<ScanRequest, 'shoot' | 'spot'>): Placement[] {
  const { placement } = spot.shot
  const where = shoot.scanWishes.landmarkPlace?.where ?? 'behind'
  if (where === 'behind') return [placement]
  const others = THIRDS.filter((across) => across !== placement.across)
  return [placement, ...others.map((across) => ({ ...placement, across }))]
}

function daysBetween(from: string, until: string): number {
  return Math.round((Date.parse(until) - Date.parse(from)) / DAY)
}

/** How many days the scan may choose among; of more than it tries it takes some, evenly. */
export function wishedDays({ shoot }: Pick<ScanRequest, 'shoot'>): number {
  const { days } = shoot.scanWishes
  return days === null ? 1 : Math.max(0, daysBetween(days.from, days.until) + 1)
}

/** The days tried, the first and the last wished among them; a day that the zone left out is left out. */
export function daySamples({ shoot, spot, zone, steps }: ScanRequest): CivilDay[] {
  const { days } = shoot.scanWishes
  if (days === null) return [civilDayOf(spot.when, zone)]
  const span = daysBetween(days.from, days.until)
  if (!(span >= 0)) return []
  const count = Math.min(Math.max(2, steps.days), span + 1)
  return Array.from({ length: count }, (_, index) =>
    count === 1 ? 0 : Math.round((span * index) / (count - 1)),
  ).flatMap((after) => {
    const day = civilDay(addDays(days.from, after), zone)
    return day.ok ? [day.value] : []
  })
}

function instantsWithin(hours: readonly (Hours | null)[], day: CivilDay, zone: Zone, minutes: number): number[] {
  const spans = hours.reduce(
    (left, each) => (each === null ? left : commonSpans(left, hoursSpans(each, day, zone))),
    [{ from: day.start, until: day.end }],
  )
  return spans.flatMap(({ from, until }) =>
    Array.from(
      { length: Math.floor((until - from) / (minutes * MINUTE)) + 1 },
      (_, index) => from + index * minutes * MINUTE,
    ).filter((instant) => instant < day.end),
  )
}

/** Whether the light is looked at at all: else the spot's own instant stands for all. */
export function looksAtLight({ shoot }: Pick<ScanRequest, 'shoot'>): boolean {
  return demandsMade(shoot).includes('light')
}

/** Epoch milliseconds, in order. With `hours` false those outside the wished hours too. */
export function instantSamples(request: ScanRequest, hours = true): number[] {
  if (!looksAtLight(request)) return [request.spot.when]
  const limits = hours ? [request.shoot.scanWishes.hours] : []
  return daySamples(request).flatMap((day) => instantsWithin(limits, day, request.zone, request.steps.minutes))
}
