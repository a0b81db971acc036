/** The line of standpoints shown on the map, from which sun or moon stands where it was asked for at one instant; null when none is. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'

export interface StandpointLine {
  /** Places along the line, in order; at least two. */
  readonly places: readonly LatLon[]
  /** Whether hills hide the body from each place; null where no ground is known. */
  readonly hidden: readonly (boolean | null)[]
  /** From where the body stands exactly on the top; null when the line has no such place. */
  readonly onTop: LatLon | null
  /** Whether hills hide the body from there. */
  readonly onTopHidden: boolean
  /** What the line is, as the map says it: "Sun on the top of the bridge, 19:04". */
  readonly label: string
}

const standpointLineSignal = signal<StandpointLine | null>(null)
export const standpointLine: ReadonlySignal<StandpointLine | null> = standpointLineSignal

export function showStandpointLine(line: StandpointLine | null): void {
  standpointLineSignal.value = line
}
