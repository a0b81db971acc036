/** How finely a scan looks: three usual ways, and a step between places of one's own. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type ScanSteps, USUAL_STEPS } from '#core/scan/scan-request.ts'

export const FINENESSES = ['coarser', 'usual', 'finer'] as const
export type Fineness = (typeof FINENESSES)[number]

export const STEPS: Readonly<Record<Fineness, ScanSteps>> = {
  coarser: { place: 25, heading: 45, bearing: 15, focalLengths: 3, fills: 2, heights: 1, days: 6, minutes: 30 },
  usual: USUAL_STEPS,
  finer: { place: 5, heading: 15, bearing: 5, focalLengths: 6, fills: 3, heights: 3, days: 24, minutes: 10 },
}

const finenessSignal = signal<Fineness>('usual')
export const fineness: ReadonlySignal<Fineness> = finenessSignal
/** Steps chosen otherwise, over those of the fineness. */
const ownSteps = signal<Partial<ScanSteps>>({})

export function chooseFineness(chosen: Fineness): void {
  finenessSignal.value = chosen
  ownSteps.value = {}
}

export function chooseSteps(steps: Partial<ScanSteps>): void {
  ownSteps.value = { ...ownSteps.value, ...steps }
}

export function stepsNow(): ScanSteps {
  return { ...STEPS[fineness.value], ...ownSteps.value }
}

/** Places beyond which a coarser step is offered: more are hardly told apart on the map. */
const MANY_PLACES = 3_000
/** Metres that people walk or drive off as steps. */
const ROUND_STEPS = [1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 250, 500, 1_000, 2_000, 5_000]

/** The next round step that is not finer. */
export function roundStep(step: number): number {
  return ROUND_STEPS.find((next) => next >= step) ?? step
}

/**
 * The next round step with which a scan looks at few enough places; null when it does already. Along lines the count falls with the
 * step, over areas with its square: `areaShare` tells how many of the places lie in areas.
 */
export function coarserStep(step: number, places: number, areaShare: number): number | null {
  if (places <= MANY_PLACES) return null
  const count = (next: number): number => {
    const ratio = step / next
    return places * ((1 - areaShare) * ratio + areaShare * ratio * ratio)
  }
  return ROUND_STEPS.find((next) => next > step && count(next) <= MANY_PLACES) ?? null
}
