/** A height of the ground as a plan reads it: exactly where a source was asked for the very place, else between the window's cells. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, elevationAtPlace, gridPoint, stepOf } from '#core/ground/elevation-grid.ts'

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
  const height = elevationAtPlace(terrain, at)
  if (height === null) return null
  return { height: height + offWindow(terrain, pins, at), step: stepOf(terrain), source: null, sea: false }
}

/** Metres by which the sources lie above the window near a place: of the pins around, each by its nearness, gone within a step. */
function offWindow(terrain: ElevationGrid, pins: readonly PinHeight[], at: LatLon): number {
  if (pins.length === 0) return 0
  const here = gridPoint(terrain, at)
  let [sum, weights, nearness] = [0, 0, 0]
  for (const pin of pins) {
    const there = gridPoint(terrain, pin.at)
    const away = Math.hypot(there.east - here.east, there.north - here.north) / Math.max(pin.step, terrain.cell)
    const read = away < 1 ? elevationAtPlace(terrain, pin.at) : null
    if (read === null) continue
    const weight = (1 / Math.max(away, 1e-9) - 1) ** 2
    sum += weight * (pin.height - read)
    weights += weight
    nearness = Math.max(nearness, 1 - away)
  }
  return weights > 0 ? (sum / weights) * nearness : 0
}
