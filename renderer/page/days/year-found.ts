/** What is known of a year's days so far: each day's windows, put together from the worker's updates. */
import type { Span } from '#core/light/crossing.ts'
import { totalOf } from '#core/light/light-window.ts'
import { type WishDays, addedUp } from '#core/light/wish-days.ts'
import type { WishKind } from '#core/light/light-wish.ts'
import { MINUTE } from '#core/time/duration.ts'
import type { ReasonUpdate, YearUpdate } from './days-job.ts'
import { unpackSpans } from './packed-spans.ts'

export interface DayFound {
  readonly date: string
  readonly spans: readonly Span[]
  /** Milliseconds. */
  readonly total: number
}

export interface YearFound {
  /** In order; the year's own days and some of the next. */
  readonly days: readonly DayFound[]
  readonly byDate: ReadonlyMap<string, DayFound>
}

export const NOTHING_YET: YearFound = { days: [], byDate: new Map() }

export function withDays(found: YearFound, update: YearUpdate): YearFound {
  const spans = unpackSpans(update.spans)
  const more = update.dates.map((date, index): DayFound => {
    const held = spans[index] ?? []
    return { date, spans: held, total: totalOf(held) }
  })
  const days = [...found.days, ...more]
  return { days, byDate: new Map(days.map((day) => [day.date, day])) }
}

export function withReason(found: WishDays, update: ReasonUpdate): WishDays {
  return addedUp(found, update.found)
}

export function daysOf(found: YearFound, year: number): readonly DayFound[] {
  return found.days.filter(({ date }) => date.startsWith(`${year}-`))
}

export type WhyNoDays =
  | { readonly why: 'never'; readonly kind: WishKind }
  | { readonly why: 'apart'; readonly kinds: readonly [WishKind, WishKind] }
  | { readonly why: 'together' }

/** What leaves nothing: wishes that never hold, else pairs that never hold together, else all of them at once. */
export function whyNoDays({ alone, pairs }: WishDays): readonly WhyNoDays[] {
  const never = alone.filter(({ days }) => days === 0)
  if (never.length > 0) return never.map(({ kind }) => ({ why: 'never', kind }))
  const apart = pairs.filter(({ days }) => days === 0)
  return apart.length > 0 ? apart.map(({ kinds }) => ({ why: 'apart', kinds })) : [{ why: 'together' }]
}

/** The longest of a day's windows; null on a day without. */
export function longestOf(spans: readonly Span[]): Span | null {
  return spans.reduce<Span | null>(
    (longest, span) => (longest === null || span.until - span.from > longest.until - longest.from ? span : longest),
    null,
  )
}

/** The middle of a window, at a whole minute if one lies within it. */
export function middleOfSpan({ from, until }: Span): number {
  const middle = (from + until) / 2
  const whole = Math.round(middle / MINUTE) * MINUTE
  return whole >= from && whole <= until ? whole : Math.round(middle)
}
