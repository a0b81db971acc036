/** What of the ground is shown on the map, as the user chose it for this sitting. */
import { signal } from '@preact/signals'

/** Id of the map drawn from the elevations, among the map sources. */
export const GROUND_MAP = 'ground'

export type GroundShown = 'none' | 'landmark' | 'standpoint' | 'shade'

export const groundShown = signal<GroundShown>('none')

/** Shares of the landmark's height to choose from; the least stands for "anything of it". */
export const SHARES = [0.01, 0.25, 0.5, 0.75, 1] as const
export const wantedShare = signal<(typeof SHARES)[number]>(0.5)

/** What is looked for on the ground that the standpoint sees: the bare ground, or something as high as the subject. */
export const seenAt = signal<'ground' | 'subject'>('ground')

/** Where the light on the drawn relief comes from. */
export const reliefLit = signal<'sun' | 'north-west'>('sun')
