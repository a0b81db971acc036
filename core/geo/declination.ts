/** Magnetic declination by the World Magnetic Model: the one file that names geomagnetism. */
import geomagnetism from 'geomagnetism'
import type { LatLon } from './lat-lon.ts'

/**
 * How far a compass can be trusted, by the strength of the horizontal field: the model's makers call less than 2000 nT the
 * blackout zone and less than 6000 nT the caution zone (from memory of the WMM report's wording).
 */
export type CompassTrust = 'good' | 'caution' | 'unreliable'

export interface Declination {
  /** Degrees that magnetic north lies east of true north; west is negative. Magnetic bearing = true bearing - this. */
  readonly degrees: number
  readonly compass: CompassTrust
  /** Such as `WMM-2025`, for the printed note. */
  readonly model: string
}

interface MagneticModel {
  readonly name: string
  /** The years it is meant for, first and last. */
  readonly first: number
  readonly last: number
  /** Two instants at which the package answers by this model: it goes by the days of release, not by the years. */
  readonly served: readonly [number, number]
}

/** WMM2015v2 took the place of WMM2015 for all of its years, as that had lost the north magnetic pole (NCEI, note on the release of 2018). */
const MODELS: readonly MagneticModel[] = [
  { name: 'WMM-2015v2', first: 2015, last: 2019, served: [Date.UTC(2018, 9, 1), Date.UTC(2019, 9, 1)] },
  { name: 'WMM-2020', first: 2020, last: 2024, served: [Date.UTC(2020, 0, 1), Date.UTC(2024, 0, 1)] },
  { name: 'WMM-2025', first: 2025, last: 2029, served: [Date.UTC(2025, 0, 1), Date.UTC(2029, 0, 1)] },
]

/** First and last year with an answer. */
export const DECLINATION_YEARS = { first: 2015, last: 2029 } as const

/** Null ("unknown") outside the models' years or when an input is no number; `elevation` in metres, null counts as 0. */
export function declination(at: LatLon, elevation: number | null, epochMs: number): Declination | null {
  const year = new Date(epochMs).getUTCFullYear()
  const model = MODELS.find(({ first, last }) => year >= first && year <= last)
  if (model === undefined || !Number.isFinite(at.lat + at.lon) || Math.abs(at.lat) > 90) return null
  const height = Number.isFinite(elevation ?? 0) ? (elevation ?? 0) : 0
  const field = horizontalField(model, at, height, epochMs)
  if (field === null) return null
  const strength = Math.hypot(field.north, field.east)
  const compass = strength < 2000 ? 'unreliable' : strength < 6000 ? 'caution' : 'good'
  return { degrees: (Math.atan2(field.east, field.north) * 180) / Math.PI, compass, model: model.name }
}

interface HorizontalField {
  /** Nanotesla. */
  readonly north: number
  readonly east: number
}

/** Years with decimals as the package counts them. */
function yearOf(epochMs: number): number {
  const year = new Date(epochMs).getUTCFullYear()
  return year + (epochMs - Date.UTC(year)) / (365 * 86_400_000)
}

/** A model is a straight line in time, so all of its years follow from two instants at which the package answers by it. */
function horizontalField(model: MagneticModel, at: LatLon, height: number, epochMs: number): HorizontalField | null {
  const [early, late] = model.served
  const one = fieldOf(model.name, at, height, early)
  const other = fieldOf(model.name, at, height, late)
  if (one === null || other === null) return null
  const along = (yearOf(epochMs) - yearOf(early)) / (yearOf(late) - yearOf(early))
  return { north: one.north + (other.north - one.north) * along, east: one.east + (other.east - one.east) * along }
}

/** The package wants kilometres, and throws on instants that none of its models covers; null when it answers by another model. */
function fieldOf(name: string, at: LatLon, height: number, epochMs: number): HorizontalField | null {
  try {
    const model = geomagnetism.model(new Date(epochMs))
    const { x, y } = model.point([at.lat, at.lon, height / 1000])
    return model.name === name && Number.isFinite(x + y) ? { north: x, east: y } : null
  } catch {
    return null
  }
}
