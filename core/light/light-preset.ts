/** Light conditions ready-made: golden and blue hour, each by heights of the sun that the conditions have anyway. */
import type { LightWishes } from './light-wish.ts'

export const LIGHT_PRESETS = ['golden', 'blue'] as const
export type LightPreset = (typeof LIGHT_PRESETS)[number]

/** Degrees of the sun's apparent altitude. */
const GOLDEN_HOUR = { least: 0, most: 6 } as const

type PresetPart = Pick<LightWishes, 'altitude' | 'soft'>

const NONE: PresetPart = { altitude: null, soft: null }
/** Each clears what the other sets: no sun is above and below the horizon at once. */
const PARTS: Readonly<Record<LightPreset, PresetPart>> = {
  golden: { ...NONE, altitude: GOLDEN_HOUR },
  blue: { ...NONE, soft: 'either' },
}

export function isGoldenHour(altitude: LightWishes['altitude']): boolean {
  return altitude !== null && altitude.least === GOLDEN_HOUR.least && altitude.most === GOLDEN_HOUR.most
}

/** The one that is set, whichever way it was set; the blue hour of one end of the day counts too. */
export function lightPresetOf(wishes: LightWishes): LightPreset | null {
  if (isGoldenHour(wishes.altitude)) return 'golden'
  return wishes.soft === null ? null : 'blue'
}

/** The conditions with a preset set, or cleared where it is set already; the other conditions stay. */
export function withLightPreset(wishes: LightWishes, preset: LightPreset): LightWishes {
  return { ...wishes, ...(lightPresetOf(wishes) === preset ? NONE : PARTS[preset]) }
}
