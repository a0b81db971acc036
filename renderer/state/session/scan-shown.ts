/** What the page shows of the last scan: how far it is, the places with their scores, the best arrangements, or why there are none. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import type { Span } from '#core/light/crossing.ts'
import type { Spot } from '#core/record/spot.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import type { Candidate, PlaceFound, ScanCost, WhyNone } from '#core/scan/scan-found.ts'
import { shoot } from '#renderer/state/library/library.ts'

/** One of the best, with its number on map and list. */
export interface ScanResult {
  /** Id of the spot that it becomes when it is kept. */
  readonly id: string
  /** 1 is the best. */
  readonly number: number
  readonly candidate: Candidate
  /** The same as long as its candidate is, whatever its number: what its small frame is drawn from. */
  readonly frame: Spot
  /** As it goes on the board and on the shelf, with its name. */
  readonly spot: Spot
  /** When the light wished holds there, on the day of its instant; null when it holds at none or none is wished. */
  readonly window: Span | null
  /** Whether it was brought to the best between the samples. */
  readonly polished: boolean
}

/** In this order; stopped and failed end it wherever it is. */
export type ScanPhase = 'looking' | 'polishing' | 'explaining' | 'done' | 'stopped' | 'failed'

export interface ScanShown {
  readonly request: ScanRequest
  readonly cost: ScanCost
  readonly phase: ScanPhase
  /** Of the phase, 0..1. */
  readonly share: number
  /** Milliseconds since the start of the phase. */
  readonly elapsed: number
  /** In the order of the places; those not looked at yet are left out. */
  readonly places: readonly PlaceFound[]
  readonly results: readonly ScanResult[]
  /** Null until it is worked out, and where something was found. */
  readonly why: WhyNone | null
  readonly fault: string | null
}

const lastScanSignal = signal<ScanShown | null>(null)
export const lastScan: ReadonlySignal<ScanShown | null> = lastScanSignal

export function showScan(shown: ScanShown | null): void {
  lastScanSignal.value = shown
}

/** The last scan as far as it belongs to the shoot on the board. */
export const scanShown = computed<ScanShown | null>(() => {
  const shown = lastScan.value
  return shown !== null && shown.request.shoot.id === shoot.value?.id ? shown : null
})

export const scanAtWork = computed(() => {
  const phase = scanShown.value?.phase
  return phase === 'looking' || phase === 'polishing' || phase === 'explaining'
})

const pointedResultSignal = signal<string | null>(null)
/** The result under the pointer or in focus, on the map or in the list. */
export const pointedResult: ReadonlySignal<string | null> = pointedResultSignal

export function pointAtResult(id: string): void {
  pointedResultSignal.value = id
}

/** Points away from a result, unless another is pointed at already. */
export function pointAwayFrom(id: string): void {
  if (pointedResult.peek() === id) pointedResultSignal.value = null
}
