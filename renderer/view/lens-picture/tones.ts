/** Tones: the colour of each part of the picture by its light and the air before it, in the inks of the hour. */
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

/** A material of a lit thing brought nearer to white or black by its step as far as it gives way. */
export function thingTone(layer: Layer, thing: ThingInks, inks: LensInks): Colour {
  const { material, step } = layer
  const by = step === null ? 0 : (inks.steps[step] ?? 0)
  const gives = material === 'hue' || material === 'ink' || material === 'pale' ? thing.gives[material] : 1
  return mixed(thing[material], by < 0 ? inks.deep : inks.lift, Math.abs(by) * gives)
}

/** The farther, the more it has of the hills' tone and then of the sky's. */
export function landTone(distance: number, inks: LensInks): Colour {
  return mixed(mixed(inks.fieldFar, inks.hill, riseAt(distance)), inks.skyLow, airAt(distance))
}

export function waterTone(distance: number, inks: LensInks): Colour {
  return mixed(inks.water, inks.skyLow, airAt(distance) * 0.7)
}

/** Trees and walls: darker than the ground they stand on, and paler with distance like all else. */
export function wallTone(distance: number, inks: LensInks): Colour {
  return mixed(inks.wall, inks.skyLow, airAt(distance))
}

/** The line along a ridge, thinner with distance. */
export function edgeTone(distance: number, inks: LensInks): Colour {
  return translucent(inks.ridgeLine, 1 - airAt(distance))
}
