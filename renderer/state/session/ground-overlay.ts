/** What of the ground is shown on the map, as the user chose it for this sitting. */
import { type ReadonlySignal, signal } from '@preact/signals'

/** Id of the map drawn from the elevations, among the map sources. */
export const GROUND_MAP = 'ground'

export type GroundOverlay = 'none' | 'landmark' | 'standpoint' | 'shade'

const groundOverlaySignal = signal<GroundOverlay>('none')
export const groundOverlay: ReadonlySignal<GroundOverlay> = groundOverlaySignal

export function showGround(what: GroundOverlay): void {
  groundOverlaySignal.value = what
}

/** Shares of the landmark's height to choose from; the least stands for "anything of it". */
export const SHARES = [0.01, 0.25, 0.5, 0.75, 1] as const
const wantedShareSignal = signal<(typeof SHARES)[number]>(0.5)
export const wantedShare: ReadonlySignal<(typeof SHARES)[number]> = wantedShareSignal

export function wantShare(share: (typeof SHARES)[number]): void {
  wantedShareSignal.value = share
}

const seenAtSignal = signal<'ground' | 'subject'>('ground')
/** What is looked for on the ground that the standpoint sees: the bare ground, or something as high as the subject. */
export const seenAt: ReadonlySignal<'ground' | 'subject'> = seenAtSignal

export function lookFor(what: 'ground' | 'subject'): void {
  seenAtSignal.value = what
}

const reliefLitSignal = signal<'sun' | 'north-west'>('sun')
/** Where the light on the drawn relief comes from. */
export const reliefLit: ReadonlySignal<'sun' | 'north-west'> = reliefLitSignal

export function lightReliefFrom(where: 'sun' | 'north-west'): void {
  reliefLitSignal.value = where
}
