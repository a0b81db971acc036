/** Starting records: a fresh shoot, spot, lens or landmark with values that give an answer at once. */
import { REFRACTION } from '#core/geo/curvature-and-refraction.ts'
import { USUAL_CROPS } from '#core/frame/crop.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { Lens } from '#core/optics/lens.ts'
import type { WrittenLens } from '#core/optics/written-lens.ts'
import { DEFAULT_CONFUSION_DIVISOR, USUAL_SHUTTER } from '#core/optics/sensor.ts'
import { type Landmark, type LandmarkKind, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { SUBJECT_PRESETS } from '#core/scene/subject.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { USUAL_SCAN_WISHES } from './scan-wishes.ts'
import type { Shoot } from './shoot.ts'
import type { Spot } from './spot.ts'

/** Metres of the lens above the ground of somebody standing. */
const EYE_HEIGHT = 1.6
/** Of the ground under a new pin nothing was measured. */
const UNMEASURED = { elevation: null, slope: null, aspect: null } as const

/** An empty shoot: a car, a 36 x 24 camera, one ordinary zoom, no landmark yet. `now` is in epoch milliseconds. */
export function newShoot(id: string, lensId: string, now: number): Shoot {
  return {
    id,
    revision: 0,
    name: '',
    subject: { kind: 'car', name: '', ...SUBJECT_PRESETS.car, features: [] },
    landmarks: [],
    bag: {
      camera: {
        name: '',
        sensorWidth: 36,
        sensorHeight: 24,
        confusionDivisor: DEFAULT_CONFUSION_DIVISOR,
        ...USUAL_SHUTTER,
      },
      lenses: [newLens(lensId)],
    },
    crops: USUAL_CROPS,
    refraction: REFRACTION,
    zone: null,
    obstructions: [],
    stoppingGround: [],
    keepOuts: [],
    scanWishes: USUAL_SCAN_WISHES,
    light: NO_WISHES,
    sky: 'clear',
    iso: 100,
    madeAt: now,
  }
}

/** An ordinary zoom, as a beginning to be changed. */
export function newLens(id: string): Lens {
  return {
    id,
    name: '',
    focalMin: 24,
    focalMax: 70,
    widestAtMin: 2.8,
    widestAtMax: 2.8,
    smallest: 22,
    closestFocus: 0.38,
    weight: null,
  }
}

/** The lens that was written on one line; what was not written is as of a new lens. */
export function lensAsWritten(id: string, { focal, widest }: WrittenLens): Lens {
  const usual = newLens(id)
  const [widestAtMin, widestAtMax] = widest ?? [usual.widestAtMin, usual.widestAtMin]
  const smallest = Math.max(usual.smallest, widestAtMin, widestAtMax)
  return { ...usual, focalMin: focal[0], focalMax: focal[1], widestAtMin, widestAtMax, smallest }
}

/** Bearing from a place straight away from the shoot's first landmark, so that the camera there sees both; else south. */
function awayFromLandmark(shoot: Shoot, at: LatLon): number {
  const [landmark] = shoot.landmarks
  const middle = landmark === undefined ? null : landmarkMiddle(landmarkPoints(landmark))
  const bearing = middle === null ? null : geodesicLine(at, middle).bearing
  return bearing === null ? 180 : wrapBearing(bearing + 180)
}

/** A spot planned for an instant, with its subject at a place, its side (a person's front) to a camera a few lengths off, the landmark behind. */
export function newSpot(id: string, shoot: Shoot, at: LatLon, rank: number, when: number): Spot {
  const { length, width, height } = shoot.subject
  const distance = Math.max(3, 3.5 * Math.max(length, width, height))
  const upright = height > Math.max(length, width)
  const away = awayFromLandmark(shoot, at)
  return {
    id,
    shootId: shoot.id,
    revision: 0,
    name: '',
    notes: '',
    stars: 0,
    status: 'idea',
    rank,
    stop: { at, heading: wrapBearing(upright ? away : away + 90), ...UNMEASURED },
    standpoint: { at: destination(at, away, distance), lensHeight: EYE_HEIGHT, ...UNMEASURED },
    landmarkId: shoot.landmarks[0]?.id ?? null,
    hold: 'standpoint',
    when,
    shot: {
      orientation: 'lying',
      focalLength: 50,
      lensId: null,
      aperture: null,
      focus: { on: 'best', behindFront: 0 },
      placement: { across: 0, up: 0 },
      subjectFill: upright ? { share: 0.6, axis: 'height' } : { share: 0.5, axis: 'width' },
      landmarkFill: { share: 0.3, axis: 'height' },
    },
    access: { parking: null, walkMinutes: null, surface: '' },
    permission: { state: 'to-ask', whom: '', until: null },
    hazards: [],
    hazardNote: '',
  }
}

/** A copy of a spot under a new id, name and rank; whether it is visited or chosen is the copy's own matter. */
export function duplicateSpot(spot: Spot, id: string, name: string, rank: number): Spot {
  return { ...spot, id, name, rank, revision: 0, status: 'idea' }
}

/** Metres from a landmark's middle to the ends it starts with. */
const HALF_SPAN = 100
const HALF_BUILDING = 10

/** A landmark of a kind around a place, of ordinary size (common practice, no source), to be dragged and measured. */
export function newLandmark(id: string, kind: LandmarkKind, at: LatLon): Landmark {
  const common = { id, name: '', baseElevation: null, baseSlope: null, baseAspect: null }
  if (kind === 'upright') return { ...common, kind, at, height: 30, width: 6 }
  if (kind === 'summit') return { ...common, kind, at, height: 200, width: 800 }
  if (kind === 'building') {
    const corners = [45, 135, 225, 315].map((bearing) => destination(at, bearing, HALF_BUILDING))
    return { ...common, kind, footprint: corners, height: 12 }
  }
  const line = [270, 90].map((bearing) => destination(at, bearing, HALF_SPAN))
  return { ...common, kind, form: 'suspension', line, deckHeight: 15, width: 10, height: 40 }
}
