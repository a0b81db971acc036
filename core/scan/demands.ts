/** The demands of a scan, measured: what each is about, by how much it is met, told from a plan and its assessment. */
import { exhaustive } from '#core/exhaustive.ts'
import type { Framing } from '#core/frame/framing.ts'
import { geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LightScene } from '#core/light/light-scene.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type ScanWishKind, type ScanWishes, scanWishesMade } from '#core/record/scan-wishes.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Zone } from '#core/time/civil.ts'
import { turnBetween } from '#core/units/angle.ts'
import { lightMargins, lightMet } from './light-demand.ts'
import type { DemandMet } from './scan-found.ts'
import { NEVER, bandMargin, degreeOf } from './score.ts'

/** What a demand is about, in its own unit (null when unknown), and its margin in the measure of score.ts. */
export interface Measure {
  readonly value: number | null
  readonly margin: number
}

export interface MeasuredDemand extends DemandMet {
  readonly margin: number
}

const UNKNOWN: Measure = { value: null, margin: NEVER }

/** Half-widths taken for narrower bands: shares of a side, degrees, shares of the width. */
const FINEST_FILL = 0.005
const FINEST_VIEW = 0.5
const FINEST_BLUR = 0.0005
/** Share of the frame's side that is clear at the tightest border, or between the two things, from which there is room enough. */
const ROOM_ENOUGH = 0.1
/** Parts of the landmark's height shown beyond the least from which it shows enough, where less is left. */
const FINEST_SHOWN = 0.05
/** Metres to the parking at which a narrower demand is fully met. */
const FINEST_WALK = 1

type Made<Kind extends ScanWishKind> = NonNullable<ScanWishes[Kind]>

export function subjectFillMeasure(demand: Made<'subjectFill'>, subject: Framing): Measure {
  const value = demand.axis === 'width' ? subject.widthFill : subject.heightFill
  return { value, margin: bandMargin(value, demand, { finest: FINEST_FILL }) }
}

/**
 * By how much a thing reaches into the frame from its nearest border, as a share of its own size or, where it is larger, of the
 * frame's: 1 and more when it isn't cut there, below 0 when it is outside.
 */
export function reachIn({ left, right, bottom, top, widthFill, heightFill }: Framing): number {
  const wide = Math.max(Math.min(widthFill, 1), 1e-9)
  const high = Math.max(Math.min(heightFill, 1), 1e-9)
  return Math.min(Math.min(right + 0.5, 0.5 - left) / wide, Math.min(top + 0.5, 0.5 - bottom) / high)
}

/** Null for a landmark that isn't before the lens. One outside the frame fills nothing, however large it would be there. */
export function landmarkFillMeasure(demand: Made<'landmarkFill'>, landmark: Framing | null): Measure {
  if (landmark === null) return UNKNOWN
  const value = demand.axis === 'width' ? landmark.widthFill : landmark.heightFill
  return { value, margin: Math.min(bandMargin(value, demand, { finest: FINEST_FILL }), reachIn(landmark)) }
}

/** Share of the side that is clear at the tightest border; negative when the thing is cut there. */
export function clearSpace({ left, right, bottom, top }: Framing): number {
  return Math.min(left + 0.5, 0.5 - right, bottom + 0.5, 0.5 - top)
}

/** `framings` of the landmark in the frame and in every crop that counts; null for a landmark not wholly before the lens. */
export function landmarkWholeMeasure(framings: readonly Framing[] | null): Measure {
  if (framings === null) return UNKNOWN
  let value = Infinity
  for (const framing of framings) value = Math.min(value, clearSpace(framing))
  return { value, margin: value / ROOM_ENOUGH }
}

/**
 * Its value is the clear space between the two, negative where they overlap; for `behind` how far the landmark's middle lies right of
 * the subject's; both shares of the frame's width.
 */
export function landmarkPlaceMeasure(
  { where, gap }: Made<'landmarkPlace'>,
  subject: Framing,
  landmark: Framing | null,
): Measure {
  if (landmark === null) return UNKNOWN
  const reach = reachIn(landmark)
  if (where === 'behind') {
    const value = (landmark.left + landmark.right) / 2 - (subject.left + subject.right) / 2
    const half = subject.widthFill / 2
    return { value, margin: Math.min((half - Math.abs(value)) / half, reach) }
  }
  const toLeft = subject.left - landmark.right
  const toRight = landmark.left - subject.right
  const value = where === 'left' ? toLeft : where === 'right' ? toRight : Math.max(toLeft, toRight)
  return { value, margin: Math.min((value - gap) / ROOM_ENOUGH, reach) }
}

/** Degrees 0..180 between the subject's front and the way to the camera. */
export function viewAngle(heading: number, toCamera: number): number {
  return Math.abs(turnBetween(heading, toCamera))
}

/** `toCamera` is the bearing from the subject; null at one place. A band that reaches 0 or 180 is best there: it goes on on the other side. */
export function subjectViewMeasure(demand: Made<'subjectView'>, heading: number, toCamera: number | null): Measure {
  if (toCamera === null) return UNKNOWN
  const value = viewAngle(heading, toCamera)
  return { value, margin: bandMargin(value, demand, { finest: FINEST_VIEW, floor: 0, ceiling: 180 }) }
}

/**
 * `shown` null: over unknown ground it isn't met. Without any elevations nobody can tell: it stands at the edge of being met, its
 * value null.
 */
export function landmarkShownMeasure(
  { least }: Made<'landmarkShown'>,
  shown: number | null,
  elevations: boolean,
): Measure {
  if (!elevations) return { value: null, margin: 0 }
  return shown === null ? UNKNOWN : { value: shown, margin: (shown - least) / Math.max(1 - least, FINEST_SHOWN) }
}

/** `share`: the landmark's blur by the frame's width; null without one before the lens. */
export function softnessMeasure(demand: Made<'softness'>, share: number | null): Measure {
  return share === null
    ? UNKNOWN
    : { value: share, margin: bandMargin(share, demand, { finest: FINEST_BLUR, floor: 0 }) }
}

/** Metres to the nearest parking point; null when there is none. */
function nearestParking(stop: LatLon, parkings: readonly LatLon[]): number | null {
  return parkings.reduce<number | null>((nearest, parking) => {
    const distance = geodesicDistance(stop, parking)
    return nearest === null || distance < nearest ? distance : nearest
  }, null)
}

function parkingMeasure({ within }: Made<'parking'>, distance: number | null): Measure {
  return distance === null ? UNKNOWN : { value: distance, margin: (within - distance) / Math.max(within, FINEST_WALK) }
}

/** Nearness to parking of a place where the subject stops; null where none is demanded. */
export function parkingMeasured(wishes: ScanWishes, stop: LatLon, parkings: readonly LatLon[]): MeasuredDemand | null {
  const demand = wishes.parking
  return demand === null ? null : metBy('parking', wishes, parkingMeasure(demand, nearestParking(stop, parkings)))
}

/** The demands that count: a demand of light is none while the shoot wishes for no light. */
export function demandsMade({ scanWishes, light }: Pick<Shoot, 'scanWishes' | 'light'>): ScanWishKind[] {
  return scanWishesMade(scanWishes).filter((kind) => kind !== 'light' || wishesMade(light).length > 0)
}

/** Demands that ask for a landmark. */
export const LANDMARK_DEMANDS: ReadonlySet<ScanWishKind> = new Set([
  'landmarkFill',
  'landmarkWhole',
  'landmarkPlace',
  'landmarkShown',
  'softness',
])

/** A demand as measured, with the degree that its margin gives, unless another is told. */
export function metBy(
  kind: ScanWishKind,
  wishes: ScanWishes,
  { value, margin }: Measure,
  degree = degreeOf(margin),
): MeasuredDemand {
  const { must, weight } = wishes[kind] ?? { must: false, weight: 0 }
  return { kind, must, weight, degree, value, margin }
}

/** The same without its margin, as it is told. */
export function metOf({ kind, must, weight, degree, value }: MeasuredDemand): DemandMet {
  return { kind, must, weight, degree, value }
}

/** The landmark in the frame and, where crops count too, in every crop of the spot's orientation; null when it isn't wholly before the lens. */
function landmarkFramings(plan: Plan, found: Assessment, crops: boolean): readonly Framing[] | null {
  const { landmark, landmarkExtent } = found
  if (landmark === null || landmarkExtent === null || landmarkExtent.partlyBehind) return null
  if (!crops) return [landmark]
  const own = found.crops.filter(({ orientation }) => orientation === plan.spot.shot.orientation)
  return [landmark, ...own.flatMap((reading) => (reading.landmark === null ? [] : [reading.landmark]))]
}

/**
 * Every demand made, measured exactly. `scene` is the plan's light scene (core/plan/day-light.ts), with the skylines that shall count;
 * `parkings` are the places where one may park, `zone` that of the clock.
 */
export function measureDemands(
  plan: Plan,
  found: Assessment,
  scene: LightScene,
  parkings: readonly LatLon[],
  zone: Zone,
): MeasuredDemand[] {
  const { scanWishes: wishes, light } = plan.shoot
  return demandsMade(plan.shoot).map((kind) => {
    if (kind !== 'light') return metBy(kind, wishes, measureOf(kind, plan, found, parkings) ?? UNKNOWN)
    const met = lightMet(lightMargins(scene, light, plan.spot.when, zone))
    return metBy(kind, wishes, met, met.degree)
  })
}

/** Null where the demand isn't made or nothing can be framed. */
function measureOf(
  kind: Exclude<ScanWishKind, 'light'>,
  plan: Plan,
  found: Assessment,
  parkings: readonly LatLon[],
): Measure | null {
  const { stop, standpoint } = plan.spot
  const { subject, ground, sharp } = found
  const landmark = found.landmarkExtent?.partlyBehind === true ? null : found.landmark
  const wishes = plan.shoot.scanWishes
  switch (kind) {
    case 'subjectFill':
      return wishes.subjectFill && subject && subjectFillMeasure(wishes.subjectFill, subject)
    case 'landmarkFill':
      return wishes.landmarkFill && landmarkFillMeasure(wishes.landmarkFill, landmark)
    case 'landmarkWhole':
      return wishes.landmarkWhole && landmarkWholeMeasure(landmarkFramings(plan, found, wishes.landmarkWhole.crops))
    case 'landmarkPlace':
      return wishes.landmarkPlace && subject && landmarkPlaceMeasure(wishes.landmarkPlace, subject, landmark)
    case 'subjectView': {
      const demand = wishes.subjectView
      return demand && subjectViewMeasure(demand, stop.heading, geodesicLine(stop.at, standpoint.at).bearing)
    }
    case 'landmarkShown': {
      const demand = wishes.landmarkShown
      return demand && landmarkShownMeasure(demand, ground?.landmarkShown ?? null, ground !== null)
    }
    case 'softness':
      return wishes.softness && softnessMeasure(wishes.softness, sharp?.landmark?.share ?? null)
    case 'parking':
      return wishes.parking && parkingMeasure(wishes.parking, nearestParking(stop.at, parkings))
    default:
      return exhaustive(kind)
  }
}
