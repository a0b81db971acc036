/** Which daily backups stay: the newest seven, and beyond them the newest of each of four weeks more. */
import { DAY } from '#core/time/duration.ts'

export const DAILY_KEPT = 7
export const WEEKLY_KEPT = 4

/** Days since 1970-01-01 in UTC. */
export function dayNumber(instant: number): number {
  return Math.floor(instant / DAY)
}

/** Weeks from Monday to Sunday in UTC, counted from the one that 1970-01-01, a Thursday, lies in. */
export function weekNumber(instant: number): number {
  return Math.floor((dayNumber(instant) + 3) / 7)
}

export interface Dated {
  readonly savedAt: number
}

/** Those to be deleted. */
export function outdatedBackups<Backup extends Dated>(backups: readonly Backup[]): readonly Backup[] {
  const newestFirst = backups.toSorted((one, other) => other.savedAt - one.savedAt)
  // A week of which a daily one is kept needs no other: the weekly ones reach back the further.
  const covered = new Set(newestFirst.slice(0, DAILY_KEPT).map(({ savedAt }) => weekNumber(savedAt)))
  const most = covered.size + WEEKLY_KEPT
  return newestFirst.slice(DAILY_KEPT).filter(({ savedAt }) => {
    const week = weekNumber(savedAt)
    if (covered.has(week) || covered.size >= most) return true
    covered.add(week)
    return false
  })
}
