/** Light windows of the strip in words: to the second, and why there is none that all conditions share. */
import type { Span } from '#core/light/crossing.ts'
import type { WishKind } from '#core/light/light-wish.ts'
import type { DayLight } from '#core/plan/day-light.ts'
import { formatClockSeconds } from '#core/time/civil.ts'
import { doubtText } from '#renderer/text/ground-text.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'

/** "18:24:31–20:06:12". */
export function secondsText(
  { from, until, fromDoubt, untilDoubt }: Span,
  { day, zone }: Pick<DayLight, 'day' | 'zone'>,
): string {
  const end = until >= day.end ? '24:00:00' : formatClockSeconds(until, zone)
  return `${doubtText(formatClockSeconds(from, zone), fromDoubt)}–${doubtText(end, untilDoubt)}`
}

/** Why the wishes have no common window on the day, in short; the answers tell it in full. */
export function noCommonText({ windows }: Pick<DayLight, 'windows'>, name: (kind: WishKind) => string): string {
  const [impossible] = windows.contradictions
  if (impossible !== undefined) return stripWords.impossible(name(impossible[0]), name(impossible[1]))
  const never = windows.wishes.filter(({ spans }) => spans.length === 0).map(({ kind }) => name(kind))
  if (never.length > 0) return stripWords.neverToday(never.map((one) => `“${one}”`).join(', '))
  const [apart] = windows.apart
  return apart === undefined ? stripWords.noCommon : stripWords.apart(name(apart[0]), name(apart[1]))
}
