/** When sun or moon are above the horizon on a day, in words: none, one or two stretches; and when the ground hides the sun meanwhile. */
import type { Span } from '#core/light/crossing.ts'
import { type MoonDay, upSpans } from '#core/light/day-events.ts'
import { type CivilDay, type Zone, formatClock } from '#core/time/civil.ts'
import { nearestDoubtAway } from '#renderer/text/ground-text.ts'
import { spanText } from '#renderer/text/light-text.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'

type Risings = Pick<MoonDay, 'rise' | 'set' | 'state'>

/** "up 04:41–20:34", "up until 03:10, from 14:20", "up all day", "down all day". */
export function upText(risings: Risings, day: CivilDay, zone: Zone): string {
  if (risings.state === 'down-all-day') return stripWords.downAllDay
  if (risings.state === 'up-all-day') return stripWords.upAllDay
  const parts = upSpans(risings, day).map(({ from, until }) => {
    const [rises, sets] = [formatClock(from, zone), formatClock(until, zone)]
    if (from === day.start) return stripWords.until(sets)
    return until === day.end ? stripWords.from(rises) : `${rises}–${sets}`
  })
  return stripWords.up(parts)
}

/** Milliseconds by which the ground must take light away before it is worth telling. */
const TOLD_FROM = 60_000

/** The stretches in which the sun is up but the ground hides it from the subject; none without elevations. */
export function hiddenSpans(risings: Risings, direct: readonly Span[] | null, day: CivilDay): Span[] {
  if (direct === null) return []
  return upSpans(risings, day).flatMap((up) => {
    const cuts = direct
      .map((span) => ({ from: Math.max(up.from, span.from), until: Math.min(up.until, span.until) }))
      .filter((span) => span.until > span.from)
    const gaps: Span[] = []
    let from = up.from
    for (const span of cuts) {
      gaps.push({ from, until: span.from })
      from = span.until
    }
    return [...gaps, { from, until: up.until }].filter((gap) => gap.until - gap.from > TOLD_FROM)
  })
}

/** "on the subject 05:02–19:31"; null where the ground takes nothing away, and none is unknown that might. */
export function directText(risings: Risings, direct: readonly Span[] | null, day: CivilDay, zone: Zone): string | null {
  if (direct === null || (hiddenSpans(risings, direct, day).length === 0 && nearestDoubtAway(direct) === null))
    return null
  if (direct.length === 0) return stripWords.noDirect
  return stripWords.direct(direct.map((span) => spanText(span, zone)))
}
