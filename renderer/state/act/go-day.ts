/** Choosing another day for the spot on the board, as one edit; what its clock does that is unexpected is told. */
import type { Result } from '#core/result.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { MINUTE } from '#core/time/duration.ts'
import { settle } from './live-change.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { goToInstant } from './planned-instant.ts'
import { zone } from '#renderer/state/plan/zone.ts'
import { type OtherDay, daysOn, onDate } from './other-day.ts'

function go(there: Result<OtherDay>): string | null {
  if (!there.ok) return there.fault.message
  if (there.value.notice !== null) tell('done', there.value.notice)
  goToInstant(there.value.instant)
  return null
}

/** Answers with the sentence why it cannot be, or null when it is done. */
export function goToDate(date: string): string | null {
  settle()
  const now = plan.peek()
  return now === null ? null : go(onDate(now.spot.when, date, zone.peek()))
}

export function goDays(days: number): void {
  settle()
  const now = plan.peek()
  const refusal = now === null ? null : go(daysOn(now.spot.when, days, zone.peek()))
  if (refusal !== null) tell('fault', refusal)
}

/** This minute. */
export function goNow(): void {
  settle()
  goToInstant(Math.floor(Date.now() / MINUTE) * MINUTE)
}
