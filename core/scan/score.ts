/** The score: how well demands are met, each by its margin, and all of them together by their weights. */
import type { Demand } from '#core/record/scan-wishes.ts'

/**
 * The margin of a demand is 0 at the edge of what is demanded, above while it is met, 1 at the middle of a band or at the best there
 * is, and -1 one half-width outside. Within this of the edge it counts as met: the edge itself must not be lost to rounding.
 */
const AT_EDGE = 1e-6

/** The margin of what can't be told or can't be at all. */
export const NEVER = -1

export function meets(margin: number): boolean {
  return margin >= -AT_EDGE
}

/** At the edge of what is demanded. */
export const DEGREE_AT_EDGE = 0.8

/** 0..1 and never falling as the margin rises: 0 from one half-width outside, 0.8 at the edge, 1 at the middle; straight between. */
export function degreeOf(margin: number): number {
  if (margin >= 1) return 1
  if (margin <= -1) return 0
  return margin >= 0 ? DEGREE_AT_EDGE + (1 - DEGREE_AT_EDGE) * margin : DEGREE_AT_EDGE * (1 + margin)
}

export interface BandShape {
  /** Half-width taken for a narrower band, in the band's own unit. */
  readonly finest: number
  /** Ends at which the value itself ends: a band that reaches them is open on that side, and best there. */
  readonly floor?: number
  readonly ceiling?: number
}

/** The margin of a value within a band. */
export function bandMargin(
  value: number,
  { least, most }: { readonly least: number; readonly most: number },
  { finest, floor = -Infinity, ceiling = Infinity }: BandShape,
): number {
  const openBelow = least <= floor
  const openAbove = most >= ceiling
  if (openBelow && openAbove) return 1
  const whole = most - least
  if (openBelow) return (most - value) / Math.max(whole, finest)
  if (openAbove) return (value - least) / Math.max(whole, finest)
  return Math.min(value - least, most - value) / Math.max(whole / 2, finest)
}

/** sum(weight x degree) / sum(weight) over all demands made, musts among them; 1 when nothing is demanded. */
export function scoreOf(met: readonly (Pick<Demand, 'weight'> & { readonly degree: number })[]): number {
  let sum = 0
  let weights = 0
  for (const { weight, degree } of met) {
    sum += weight * degree
    weights += weight
  }
  return weights > 0 ? sum / weights : 1
}
