/** Owns what a GeoTIFF's keys say of its heights: above what they are, in which unit, and which of them are not taken. */
import { METRES_PER_FOOT } from '#core/units/length.ts'
import { done, failed, type Result } from '#core/result.ts'

/** GeoTIFF keys by the names of OGC 19-008r4, as far as they matter here. */
export interface GeoKeys {
  readonly GTModelTypeGeoKey?: number | undefined
  readonly GTRasterTypeGeoKey?: number | undefined
  readonly GeographicTypeGeoKey?: number | undefined
  readonly GeogAngularUnitsGeoKey?: number | undefined
  readonly ProjectedCSTypeGeoKey?: number | undefined
  readonly ProjLinearUnitsGeoKey?: number | undefined
  readonly VerticalCSTypeGeoKey?: number | undefined
  readonly VerticalUnitsGeoKey?: number | undefined
  readonly VerticalCitationGeoKey?: string | undefined
  readonly GTCitationGeoKey?: string | undefined
  readonly PCSCitationGeoKey?: string | undefined
  readonly GeogCitationGeoKey?: string | undefined
}

export interface GeotiffHeights {
  readonly metresPerUnit: number
  /** What the heights are above, in words. */
  readonly heights: string
}

/** "Not told" and "told in words of its own" (OGC 19-008r4). */
const UNTOLD: readonly (number | undefined)[] = [undefined, 0, 32_767]

export function isUntold(code: number | undefined): boolean {
  return UNTOLD.includes(code)
}

/** Systems in which a height counts from the ellipsoid (EPSG; 5001 to 5033 of GeoTIFF 1.0), or a depth downward. */
const ELLIPSOIDAL: ReadonlySet<number> = new Set([4979, 4937, 4957, 6319, 7843, 4959])
const DEPTHS: ReadonlySet<number> = new Set([
  5336, 5612, 5614, 5706, 5715, 5734, 5739, 5789, 5831, 5861, 5862, 5863, 5864, 5865, 5866, 5867, 5873, 6357, 6358,
  6359, 7976, 8051, 8053, 8358, 9287, 9288, 9672,
])

const SEA_LEVELS: Readonly<Record<number, string>> = {
  5773: 'EGM96',
  3855: 'EGM2008',
  5798: 'EGM84',
  5714: 'mean sea level',
  5703: 'NAVD88',
  6360: 'NAVD88',
  8228: 'NAVD88',
  5701: 'Ordnance Datum Newlyn',
  5783: 'DHHN92',
  7837: 'DHHN2016',
  5720: 'NGF-IGN69',
  5711: 'the Australian Height Datum',
  5730: 'EVRF2000',
  5621: 'EVRF2007',
  5728: 'the Swiss levelling of 1902',
  5729: 'the Swiss height network of 1995',
}

const FEET: Readonly<Record<string, number>> = { ft: METRES_PER_FOOT, foot: METRES_PER_FOOT, feet: METRES_PER_FOOT }
/** The foot of the U.S. survey: 1200/3937 m. */
const SURVEY_FOOT = 1200 / 3937
const UNITS: Readonly<Record<string, number>> = {
  ...FEET,
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  'us survey foot': SURVEY_FOOT,
  'us-ft': SURVEY_FOOT,
  ftus: SURVEY_FOOT,
}
/** EPSG units of measure. */
const UNIT_CODES: Readonly<Record<number, number>> = { 9001: 1, 9002: METRES_PER_FOOT, 9003: SURVEY_FOOT }

export function heightsOf(
  keys: GeoKeys,
  unit: string | null,
  fileName: string,
): Result<GeotiffHeights, 'unknown-heights'> {
  const code = keys.VerticalCSTypeGeoKey
  const words = keys.VerticalCitationGeoKey ?? ''
  const oldEllipsoid = code !== undefined && code >= 5001 && code <= 5033
  if (
    oldEllipsoid ||
    /ellipsoid/i.test(words) ||
    [code, keys.GeographicTypeGeoKey].some((one) => ELLIPSOIDAL.has(one ?? 0))
  )
    return failed(
      'unknown-heights',
      `${fileName} counts its heights from the ellipsoid, as a GPS does, not from the sea: the two differ by up to 100 m. Convert it to heights above a geoid such as EGM96 first.`,
    )
  if (DEPTHS.has(code ?? 0) || /depth/i.test(words))
    return failed(
      'unknown-heights',
      `${fileName} holds depths, not heights above the sea. Choose a file of elevation data.`,
    )
  const metresPerUnit = unitOf(keys, unit)
  if (metresPerUnit === null)
    return failed(
      'unknown-heights',
      `${fileName} gives its heights in “${(unit ?? `unit ${keys.VerticalUnitsGeoKey}`).slice(0, 40)}”. Metres and feet are read: convert it first.`,
    )
  const level = SEA_LEVELS[code ?? 0]
  const above = level === undefined ? 'above the sea, by a level the file does not tell' : `above the sea by ${level}`
  return done({ metresPerUnit, heights: metresPerUnit === 1 ? above : `${above}, read from feet` })
}

/** Systems whose unit is no metre (EPSG register); a file that names one need not tell the unit again. */
const UNITS_OF_SYSTEMS: Readonly<Record<number, number>> = {
  5702: SURVEY_FOOT,
  6360: SURVEY_FOOT,
  8052: SURVEY_FOOT,
  6130: METRES_PER_FOOT,
  6131: METRES_PER_FOOT,
  6132: METRES_PER_FOOT,
  8050: METRES_PER_FOOT,
  8228: METRES_PER_FOOT,
  // The British foot of 1936.
  5754: 0.304_800_749_1,
}

function unitOf(keys: GeoKeys, unit: string | null): number | null {
  const code = keys.VerticalUnitsGeoKey
  if (!UNTOLD.includes(code)) return UNIT_CODES[code ?? 0] ?? null
  if (unit === null || unit.trim() === '') return UNITS_OF_SYSTEMS[keys.VerticalCSTypeGeoKey ?? 0] ?? 1
  return UNITS[unit.trim().toLowerCase()] ?? null
}
