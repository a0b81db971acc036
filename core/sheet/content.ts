/** What the location sheet says of a spot's places, directions and tolerances: every form of a coordinate, every bearing true and magnetic. */
import { formatDecimal, formatDms, formatMgrs, formatUtm } from '#core/geo/coordinate-format.ts'
import { type Declination, declination } from '#core/geo/declination.ts'
import { formatGeoUri } from '#core/geo/geo-uri.ts'
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { plainDecimal } from '#core/geo/plain-decimal.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { heightRead } from '#core/plan/height-read.ts'
import { type Plan, levelsOf } from '#core/plan/plan.ts'
import type { Failing } from '#core/tolerance/condition.ts'
import type { Move } from '#core/tolerance/moves.ts'
import type { PlanTolerances } from '#core/tolerance/plan-tolerances.ts'
import { type Tight, type Tolerance, tightest } from '#core/tolerance/tolerance.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { wrapBearing } from '#core/units/angle.ts'

export type SheetRole = 'standpoint' | 'subject' | 'parking' | 'landmark'

export interface SheetPlace {
  readonly role: SheetRole
  readonly at: LatLon
  /** Metres above the sea; null when unknown. */
  readonly elevation: number | null
  readonly decimal: string
  readonly dms: string
  /** Null near the poles, where neither grid exists. */
  readonly utm: string | null
  readonly mgrs: string | null
  readonly geoUri: string
  /** A page of a map on the web with a mark at the place, for what has no map of its own. */
  readonly mapPage: string
}

/** Decimals of a degree: about a tenth of a metre. */
const PAGE_DECIMALS = 6

function mapPage({ lat, lon }: LatLon): string {
  const [north, east] = [plainDecimal(lat, PAGE_DECIMALS), plainDecimal(lon, PAGE_DECIMALS)]
  return `https://www.openstreetmap.org/?mlat=${north}&mlon=${east}#map=17/${north}/${east}`
}

function place(role: SheetRole, at: LatLon, elevation: number | null): SheetPlace {
  return {
    role,
    at,
    elevation,
    decimal: formatDecimal(at),
    dms: formatDms(at),
    utm: formatUtm(at),
    mgrs: formatMgrs(at),
    geoUri: formatGeoUri(at, 6),
    mapPage: mapPage(at),
  }
}

/** The places one goes to: where the subject stops, where the camera stands, where one parks. */
export function sheetPlaces(plan: Plan): SheetPlace[] {
  const { spot } = plan
  const { parking } = spot.access
  const levels = levelsOf(plan)
  const known = (of: 'standpoint' | 'stop'): number | null => (levels.from[of] === 'assumed' ? null : levels[of])
  const parkingLevel = parking === null ? null : (heightRead(plan, parking)?.height ?? null)
  return [
    place('subject', spot.stop.at, known('stop')),
    place('standpoint', spot.standpoint.at, known('standpoint')),
    ...(parking === null ? [] : [place('parking', parking, parkingLevel)]),
  ]
}

export interface SheetDirection {
  readonly from: SheetRole
  readonly to: SheetRole
  readonly distance: number
  /** True bearing; null when it has no meaning. */
  readonly bearing: number | null
  /** Magnetic bearing; null when the bearing or the declination is unknown. */
  readonly magnetic: number | null
}

export interface SheetDirections {
  readonly rows: readonly SheetDirection[]
  /** At the standpoint on the given day; null when unknown. */
  readonly declination: Declination | null
}

/** Directions of the day: from the standpoint to subject and landmark, the subject's heading, from parking to the standpoint. */
export function sheetDirections(plan: Plan, assessment: Assessment, epochMs: number): SheetDirections {
  const { spot, landmark } = plan
  const variation = declination(spot.standpoint.at, spot.standpoint.elevation, epochMs)
  const direction = (
    from: SheetRole,
    to: SheetRole,
    line: { distance: number; bearing: number | null },
  ): SheetDirection => ({
    from,
    to,
    distance: line.distance,
    bearing: line.bearing,
    magnetic: line.bearing === null || variation === null ? null : wrapBearing(line.bearing - variation.degrees),
  })
  const rows = [direction('standpoint', 'subject', assessment.toSubject)]
  const middle = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  if (assessment.toLandmark !== null) rows.push(direction('standpoint', 'landmark', assessment.toLandmark))
  if (middle !== null) rows.push(direction('subject', 'landmark', geodesicLine(spot.stop.at, middle)))
  if (spot.access.parking !== null) {
    rows.push(direction('parking', 'standpoint', geodesicLine(spot.access.parking, spot.standpoint.at)))
  }
  return { rows, declination: variation }
}

/** Magnetic bearing of a true one; null when either is unknown. */
export function magneticBearing(bearing: number, variation: Declination | null): number | null {
  return variation === null ? null : wrapBearing(bearing - variation.degrees)
}

/** The place the QR code leads to: where one parks, else where one stands. */
export function qrPlace(plan: Plan): SheetPlace {
  const goal = sheetPlaces(plan).at(-1)
  if (goal === undefined) throw new Error('a sheet has at least its standpoint')
  return goal
}

export interface SheetTolerances {
  /** The tightest, each for another reason. */
  readonly first: readonly Tight[]
  readonly rows: readonly {
    readonly of: 'subject' | 'camera' | 'turn' | 'lens' | 'clock'
    readonly tolerances: readonly (readonly [Move, Tolerance])[]
  }[]
  /** What does not hold as planned and was left out. */
  readonly failing: readonly Failing[]
}

const TIGHTEST_TOLD = 3

/** How far off each may be, in the order in which one sets up: where things stand, how they are turned, the lens, the hour. */
export function sheetTolerances({ tolerances, failing }: PlanTolerances): SheetTolerances {
  const row = (of: SheetTolerances['rows'][number]['of'], ...moves: readonly Move[]) => ({
    of,
    tolerances: moves.map((move) => [move, tolerances[move]] as const),
  })
  return {
    first: tightest(tolerances, TIGHTEST_TOLD),
    rows: [
      row('subject', 'subject-nearer', 'subject-farther', 'subject-left', 'subject-right'),
      row('turn', 'subject-counter-clockwise', 'subject-clockwise'),
      row('camera', 'camera-nearer', 'camera-farther', 'camera-left', 'camera-right'),
      row('lens', 'lens-lower', 'lens-higher'),
      row('clock', 'earlier', 'later'),
    ],
    failing,
  }
}
