/** Plans for tests: a bicycle before a suspension bridge, every part of which a test may replace. */
import { USUAL_CROPS } from '#core/frame/crop.ts'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { Lens } from '#core/optics/lens.ts'
import { USUAL_SHUTTER } from '#core/optics/sensor.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Shot, Spot } from '#core/record/spot.ts'
import type { Landmark, SpanLandmark } from '#core/scene/landmark.ts'
import type { Subject } from '#core/scene/subject.ts'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'

export const ZOOM: Lens = {
  id: 'zoom',
  name: '24-70 f/2.8',
  focalMin: 24,
  focalMax: 70,
  widestAtMin: 2.8,
  widestAtMax: 2.8,
  smallest: 22,
  closestFocus: 0.38,
  weight: 850,
}

export const BICYCLE: Subject = {
  kind: 'cargo-bicycle',
  name: 'Cargo bicycle',
  length: 2.5,
  width: 0.65,
  height: 1.2,
  features: [],
}

/** A suspension bridge of 340 m whose middle lies `distance` metres from `from` toward `bearing`, at `turned` to that line. */
export function bridgeAt(from: LatLon, bearing: number, distance: number, turned = 90): SpanLandmark {
  const middle = destination(from, bearing, distance)
  const along = bearing + turned
  return {
    id: 'bridge',
    name: 'Bridge',
    kind: 'span',
    form: 'suspension',
    line: [-170, -110, 110, 170].map((metres) => destination(middle, along, metres)),
    height: 60,
    deckHeight: 24,
    width: 12,
    baseElevation: 0,
    baseSlope: null,
    baseAspect: null,
  }
}

export interface PlanParts {
  readonly subject?: Partial<Subject>
  readonly landmark?: Landmark | null
  readonly lenses?: readonly Lens[]
  readonly camera?: Partial<Shoot['bag']['camera']>
  readonly shoot?: Partial<Shoot>
  readonly spot?: Partial<Spot>
  readonly shot?: Partial<Shot>
  readonly at?: LatLon
  /** Bearing and metres from standpoint to subject. */
  readonly bearing?: number
  readonly distance?: number
  /** Degrees the subject's heading is turned from the sightline's bearing; 90 is side on. */
  readonly turned?: number
}

export function examplePlan(parts: PlanParts = {}): Plan {
  const at = parts.at ?? { lat: -41.2, lon: 12.4 }
  const bearing = parts.bearing ?? 40
  const stopAt = destination(at, bearing, parts.distance ?? 7)
  const landmark = parts.landmark === undefined ? bridgeAt(at, bearing, 600) : parts.landmark
  const shoot: Shoot = {
    id: 'shoot',
    revision: 1,
    name: 'Example',
    subject: { ...BICYCLE, ...parts.subject },
    landmarks: landmark === null ? [] : [landmark],
    bag: {
      camera: {
        name: '36 x 24',
        sensorWidth: 36,
        sensorHeight: 24,
        confusionDivisor: 1500,
        ...USUAL_SHUTTER,
        ...parts.camera,
      },
      lenses: parts.lenses ?? [ZOOM],
    },
    crops: USUAL_CROPS,
    refraction: 0.13,
    zone: null,
    obstructions: [],
    stoppingGround: [],
    keepOuts: [],
    scanWishes: USUAL_SCAN_WISHES,
    light: NO_WISHES,
    sky: 'clear',
    iso: 100,
    madeAt: 0,
    ...parts.shoot,
  }
  const spot: Spot = {
    id: 'spot',
    shootId: 'shoot',
    revision: 1,
    name: 'Example spot',
    notes: '',
    stars: 0,
    status: 'idea',
    rank: 1,
    stop: {
      at: stopAt,
      heading: (bearing + (parts.turned ?? 90) + 360) % 360,
      elevation: 12,
      slope: null,
      aspect: null,
    },
    standpoint: { at, lensHeight: 1.2, elevation: 12, slope: null, aspect: null },
    landmarkId: landmark?.id ?? null,
    hold: 'standpoint',
    when: Date.UTC(2026, 5, 14, 15),

    shot: {
      orientation: 'lying',
      focalLength: 50,
      lensId: null,
      aperture: null,
      focus: { on: 'best', behindFront: 0 },
      placement: { across: 0, up: -0.2 },
      subjectFill: { share: 0.5, axis: 'width' },
      landmarkFill: { share: 0.3, axis: 'height' },
      ...parts.shot,
    },
    access: { parking: null, walkMinutes: null, surface: '' },
    permission: { state: 'not-needed', whom: '', until: null },
    hazards: [],
    hazardNote: '',
    ...parts.spot,
  }
  return planOf(shoot, spot)
}
