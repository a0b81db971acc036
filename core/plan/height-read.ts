/** A height of the ground as a plan reads it: exactly where a source was asked for the very place, else between the window's cells. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type GridPoint, elevationAt, gridPoint, stepOf } from '#core/ground/elevation-grid.ts'
import { keptWith } from '#core/kept-with.ts'

/** A height that a source was asked for at one place. */
export interface PinHeight {
  readonly at: LatLon
  /** Metres above the sea. */
  readonly height: number
  /** Metres between the source's own samples. */
  readonly step: number
  /** The source by its name. */
  readonly source: string
  /** Whether the source has the sea's floor or noise below 0 there, and the sea's surface was taken instead. */
  readonly sea: boolean
}

/** What heights are read from; pins count only beside a window. */
export interface ReadGround {
  readonly terrain: ElevationGrid | null
  readonly pins: readonly PinHeight[]
}

export interface HeightRead {
  readonly height: number
  /** Metres between the samples that it comes from. */
  readonly step: number
  /** The source by its name; null when it was read off the window. */
  readonly source: string | null
  readonly sea: boolean
}

/**
 * Null where nothing is known. A window is cut again from a source's samples and may cut a top off by metres. Beside a pin its readings
 * therefore lead over from the pin's height to its own within a step, so that nothing leaps when a thing leaves the place asked about.
 */
export function heightRead({ terrain, pins }: ReadGround, at: LatLon): HeightRead | null {
  if (terrain === null) return null
  const pin = pins.find((one) => one.at.lat === at.lat && one.at.lon === at.lon)
  if (pin !== undefined) return { height: pin.height, step: pin.step, source: pin.source, sea: pin.sea }
  const here = gridPoint(terrain, at)
  const height = elevationAt(terrain, here.east, here.north)
  if (height === null) return null
  return { height: height + offWindow(terrain, pins, here), step: stepOf(terrain), source: null, sea: false }
}

/** A pin on a window of which something is known there. */
interface LaidPin extends GridPoint {
  /** Metres around it within which readings lead over. */
  readonly reach: number
  /** Metres by which its source lies above the window. */
  readonly above: number
}

/** The same pins are read beside at every step of a search: where they lie on a window is worked out once. */
const laidPins = keptWith((pins: readonly PinHeight[], terrain: ElevationGrid): readonly LaidPin[] =>
  pins.flatMap(({ at, height, step }) => {
    const point = gridPoint(terrain, at)
    const read = elevationAt(terrain, point.east, point.north)
    return read === null ? [] : [{ ...point, reach: Math.max(step, terrain.cell), above: height - read }]
  }),
)

/** Metres by which the sources lie above the window near a place: of the pins around, each by its nearness, gone within a step. */
function offWindow(terrain: ElevationGrid, pins: readonly PinHeight[], { east, north }: GridPoint): number {
  let [sum, weights, nearness] = [0, 0, 0]
  for (const pin of laidPins(pins, terrain)) {
    const away = Math.hypot(pin.east - east, pin.north - north) / pin.reach
    if (away >= 1) continue
    const weight = (1 / Math.max(away, 1e-9) - 1) ** 2
    sum += weight * pin.above
    weights += weight
    nearness = Math.max(nearness, 1 - away)
  }
  return weights > 0 ? (sum / weights) * nearness : 0
}
