/** Tones: the colour of each part of the picture by its light, the air before it and the darkness of the hour. */
import { type Colour, mixed, translucent } from './colour.ts'
import type { Layer } from './layers.ts'
import type { LensInks, ThingInks } from './lens-inks.ts'

/** Metres between which land seen from afar takes on the tone of hills. */
const HILLS_FROM = 90
const HILLS_AT = 900
/** Metres after which all but 1/e of what is seen is the air before it. */
const AIR = 7_000

/** In whole hundredths, so that a tone doesn't change with every breath. */
function hundredths(share: number): number {
  return Math.round(share * 100) / 100
}

/** How much of the hills' tone a thing at a distance has, 0..1. */
export function riseAt(distance: number): number {
  const rise = Math.log(distance / HILLS_FROM) / Math.log(HILLS_AT / HILLS_FROM)
  return hundredths(Math.min(1, Math.max(0, rise)))
}

/** How much air is before a thing at a distance, 0..1. */
export function airAt(distance: number): number {
  return hundredths(1 - Math.exp(-distance / AIR))
}

/** How far each step goes toward white in the sun, 0 to 4, and toward black in its shade, 5 to 7. The sun's edge is the widest step. */
export const LIT_STEPS: readonly number[] = [0.44, 0.33, 0.23, 0.14, 0.06, -0.28, -0.4, -0.52]
/** Night takes this share from things: they stay to be seen. */
const NIGHT_ON_THINGS = 0.45

/** A material brought nearer to white or black by its step as far as it gives way, and then as dark as the hour. */
export function thingTone(layer: Layer, thing: ThingInks, inks: LensInks, dusk: number): Colour {
  const { material, step } = layer
  const base = thing[material]
  const by = step === null ? 0 : (LIT_STEPS[step] ?? 0)
  const gives = material === 'hue' || material === 'ink' || material === 'pale' ? thing.gives[material] : 1
  const lit = mixed(base, by < 0 ? inks.deep : inks.lift, Math.abs(by) * gives)
  return mixed(lit, inks.deep, dusk * NIGHT_ON_THINGS)
}

/** The farther, the more it has of the hills' tone and then of the sky's. */
export function landTone(distance: number, inks: LensInks, dusk: number): Colour {
  const air = airAt(distance)
  const day = mixed(mixed(inks.fieldFar, inks.hill, riseAt(distance)), inks.skyLow, air)
  return mixed(day, mixed(inks.nightFar, inks.nightLow, air), dusk)
}

export function waterTone(distance: number, inks: LensInks, dusk: number): Colour {
  const air = airAt(distance)
  return mixed(mixed(inks.water, inks.skyLow, air * 0.7), mixed(inks.nightTop, inks.nightLow, air), dusk)
}

/** Trees and walls: darker than the ground they stand on, and paler with distance like all else. */
export function wallTone(distance: number, inks: LensInks, dusk: number): Colour {
  return mixed(mixed(inks.wall, inks.skyLow, airAt(distance)), inks.nightFar, dusk)
}

/** The line along a ridge, thinner with distance. */
export function edgeTone(distance: number, inks: LensInks): Colour {
  return translucent(inks.ink, 0.24 * (1 - airAt(distance)))
}
