/** The light of the hour: how bright sky, ground and things are by the sun's height, one for every theme. */
import { type Colour, colour, mixed } from './colour.ts'

export interface HourLight {
  readonly skyTop: Colour
  readonly skyLow: Colour
  /** What falls on level ground and on things: their own colours are seen through it as through a glaze. */
  readonly ground: Colour
  readonly things: Colour
  /** 0 by day to 1 at night: how far lines and patches go over from those of a bright picture to those of a dark one. */
  readonly dusk: number
}

interface Hour extends HourLight {
  /** Apparent altitude of the sun, degrees. */
  readonly altitude: number
}

function hour(altitude: number, dusk: number, inks: readonly [string, string, string, string]): Hour {
  const [skyTop, skyLow, ground, things] = inks
  return {
    altitude,
    dusk,
    skyTop: colour(skyTop),
    skyLow: colour(skyLow),
    ground: colour(ground),
    things: colour(things),
  }
}

/**
 * From night to day. A low sun strikes what stands upright and only grazes the level: ground pales less than things do, which tells the
 * golden hour by contrast and not by a hue, for here no hue may stand for what sun and moon do. Greys are a trace warm then, a trace
 * cool in twilight. Night is far brighter than it is: things must stay to be composed with.
 */
const HOURS: readonly Hour[] = [
  hour(-18, 1, ['#3e474f', '#59636c', '#3d434e', '#5c646d']),
  hour(-12, 0.84, ['#49535d', '#6b757e', '#4e5664', '#6c747d']),
  hour(-6, 0.56, ['#5d666f', '#889099', '#6a7281', '#858b93']),
  hour(0, 0.22, ['#969b9e', '#c3beb6', '#a6a5a8', '#bdb9b2']),
  hour(4, 0.1, ['#b0b2b1', '#d7d1c4', '#c3c0bd', '#e8e0d2']),
  hour(8, 0.04, ['#c2c7c6', '#e2ddd0', '#dfdcd8', '#f6f0e5']),
  hour(15, 0, ['#d3dad9', '#ebe9df', '#ffffff', '#ffffff']),
]

/** A share of the way between neighbouring rows of a table; the ends hold beyond it. */
export function betweenRows<Row extends { readonly altitude: number }>(
  rows: readonly Row[],
  altitude: number,
): { readonly from: Row; readonly to: Row; readonly share: number } {
  const above = rows.findIndex((row) => row.altitude > altitude)
  const to = rows.at(above)
  const from = rows[above < 0 ? rows.length - 1 : Math.max(0, above - 1)]
  if (from === undefined || to === undefined) throw new Error('A table of hours has rows.')
  const span = to.altitude - from.altitude
  return { from, to, share: span === 0 ? 0 : (altitude - from.altitude) / span }
}

/** Between the rows in straight lines: the hour goes over without a step. */
export function hourLightAt(altitude: number): HourLight {
  const { from, to, share } = betweenRows(HOURS, altitude)
  return {
    skyTop: mixed(from.skyTop, to.skyTop, share),
    skyLow: mixed(from.skyLow, to.skyLow, share),
    ground: mixed(from.ground, to.ground, share),
    things: mixed(from.things, to.things, share),
    dusk: from.dusk + (to.dusk - from.dusk) * share,
  }
}
