/** What a scan costs, in words: how much there is to look at, and how long it takes by what was measured here. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { ScanCost } from '#core/scan/scan-found.ts'
import { rounded } from '#renderer/text/figure.ts'
import { scanRunWords as say } from '#renderer/words/en-scan-run.ts'

/**
 * Pictures a second, before any scan has run here: from one slow core that looks at much light to four fast ones that look at none. The
 * time goes with the pictures; of their instants most are never looked at.
 */
const GUESSED = { least: 20_000, most: 400_000 } as const
const measuredRateSignal = signal<number | null>(null)
/** Pictures a second of the last scan that came to its end; null before one has. */
export const measuredRate: ReadonlySignal<number | null> = measuredRateSignal
/** Milliseconds under which a scan tells nothing of the rate: its beginning is most of it. */
const TELLING = 150

/** Takes the rate of a scan that has come to its end. */
export function measure(cost: ScanCost, milliseconds: number): void {
  if (milliseconds >= TELLING && cost.pictures > 0) measuredRateSignal.value = cost.pictures / (milliseconds / 1000)
}

/** A count as it is read: 1,240; 3.1 million. */
export function countText(count: number): string {
  if (count >= 999_500_000) return say.billion(rounded(count / 1e9, 1))
  if (count >= 999_500) return say.million(rounded(count / 1e6, 1))
  return Math.round(count).toLocaleString('en')
}

export function placesText(count: number): string {
  return say.places(count, countText(count))
}

/** Seconds as a length of time, roughly. */
export function timeText(seconds: number): string {
  const { time } = say
  if (seconds < 0.75) return time.moment
  if (seconds < 10) return time.seconds(Math.round(seconds))
  if (seconds < 57.5) return time.seconds(Math.round(seconds / 5) * 5)
  const minutes = Math.round(seconds / 60)
  if (minutes < 60) return time.minutes(Math.max(1, minutes))
  const whole = Math.round(seconds / 600) * 10
  return time.hours(Math.floor(whole / 60), whole % 60)
}

/** How long a scan takes by the measured rate, or as a range where none is known. */
export function takesText({ pictures }: Pick<ScanCost, 'pictures'>, rate: number | null): string {
  if (rate !== null) return say.takes(timeText(pictures / rate))
  const [least, most] = [timeText(pictures / GUESSED.most), timeText(pictures / GUESSED.least)]
  return least === most ? say.takes(most) : say.takesBetween(least, most)
}

export function costText({ places, combinations }: ScanCost): string {
  return say.cost(placesText(places), say.combinations(combinations, countText(combinations)))
}

/** Seconds left when so much is done after so many milliseconds; null while that is too early to tell. */
export function secondsLeft(share: number, elapsed: number): number | null {
  return share < 0.03 || elapsed < 300 ? null : (elapsed * (1 - share)) / share / 1000
}
