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

/** First instant of the oldest model in the package. */
const FIRST = Date.UTC(2014, 11, 15, 7)
/** WMM-2025 is valid to the end of 2029, while the package stops it five years after its release, on 13 November 2029. */
const PACKAGE_END = Date.UTC(2029, 10, 13)
const MODEL_END = Date.UTC(2030, 0, 1)
const YEAR = 365 * 86_400_000

/** Null ("unknown") outside the models' years or when an input is no number; `elevation` in metres, null counts as 0. */
export function declination(at: LatLon, elevation: number | null, epochMs: number): Declination | null {
  const inTime = epochMs >= FIRST && epochMs < MODEL_END
  if (!inTime || !Number.isFinite(at.lat + at.lon) || Math.abs(at.lat) > 90) return null
  const height = Number.isFinite(elevation ?? 0) ? (elevation ?? 0) : 0
  const field = horizontalField(at, height, epochMs)
  if (field === null) return null
  const strength = Math.hypot(field.north, field.east)
  const compass = strength < 2000 ? 'unreliable' : strength < 6000 ? 'caution' : 'good'
  return { degrees: (Math.atan2(field.east, field.north) * 180) / Math.PI, compass, model: field.model }
}

interface HorizontalField {
  /** Nanotesla. */
  readonly north: number
  readonly east: number
  readonly model: string
}

function horizontalField(at: LatLon, height: number, epochMs: number): HorizontalField | null {
  if (epochMs < PACKAGE_END) return fieldWithin(at, height, epochMs)
  // The model is a straight line in time, so the last weeks follow from two instants that the package still answers.
  const late = fieldWithin(at, height, PACKAGE_END)
  const early = fieldWithin(at, height, PACKAGE_END - YEAR)
  if (late === null || early === null) return null
  const years = (epochMs - PACKAGE_END) / YEAR
  return {
    north: late.north + (late.north - early.north) * years,
    east: late.east + (late.east - early.east) * years,
    model: late.model,
  }
}

/** The package wants kilometres, and throws on instants that none of its models covers. */
function fieldWithin(at: LatLon, height: number, epochMs: number): HorizontalField | null {
  try {
    const model = geomagnetism.model(new Date(epochMs))
    const { x, y } = model.point([at.lat, at.lon, height / 1000])
    return Number.isFinite(x + y) ? { north: x, east: y, model: model.name } : null
  } catch {
    return null
  }
}
