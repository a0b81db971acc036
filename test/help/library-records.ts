/** Records for tests of the library: a shoot and its spots, every part of which a test may replace; changes made of them. */
import type { Change } from '#app/contract/library.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { USUAL_SHUTTER } from '#core/optics/sensor.ts'
import { USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'

export type ShootRecord = NonNullable<Extract<Change, { kind: 'shoot' }>['record']>
export type SpotRecord = NonNullable<Extract<Change, { kind: 'spot' }>['record']>

export function shootRecord(id: string, parts: Partial<ShootRecord> = {}): ShootRecord {
  return {
    id,
    revision: 0,
    name: 'Island bridge',
    subject: { kind: 'cargo-bicycle', name: 'Cargo bicycle', length: 2.5, width: 0.65, height: 1.2, features: [] },
    landmarks: [],
    bag: {
      camera: { name: 'Camera', sensorWidth: 36, sensorHeight: 24, confusionDivisor: 1500, ...USUAL_SHUTTER },
      lenses: [],
    },
    crops: [{ wide: 3, high: 2 }],
    refraction: 0.13,
    zone: null,
    obstructions: [],
    stoppingGround: [],
    keepOuts: [],
    scanWishes: USUAL_SCAN_WISHES,
    light: NO_WISHES,
    sky: 'clear',
    iso: 100,
    madeAt: 1_700_000_000_000,
    ...parts,
  }
}

export function spotRecord(id: string, shootId: string, parts: Partial<SpotRecord> & { at?: LatLon } = {}): SpotRecord {
  const { at = { lat: -35.5, lon: -20.25 }, ...others } = parts
  return {
    id,
    shootId,
    revision: 0,
    name: 'By the quay',
    notes: '',
    stars: 3,
    status: 'idea',
    rank: 0,
    stop: { at, heading: 45, elevation: null, slope: null, aspect: null },
    standpoint: { at, lensHeight: 1.6, elevation: 12.5, slope: null, aspect: null },
    landmarkId: null,
    hold: 'standpoint',
    when: 1_750_000_000_000,
    shot: {
      orientation: 'lying',
      focalLength: 70,
      lensId: null,
      aperture: null,
      focus: { on: 'best', behindFront: 0 },
      placement: { across: 0, up: -0.2 },
      subjectFill: { share: 0.45, axis: 'width' },
      landmarkFill: { share: 0.3, axis: 'height' },
    },
    access: { parking: null, walkMinutes: null, surface: '' },
    permission: { state: 'to-ask', whom: '', until: null },
    hazards: ['water'],
    hazardNote: '',
    ...others,
  }
}

export function saved(record: ShootRecord | SpotRecord, before: number | null = null): Change {
  return 'shootId' in record
    ? { kind: 'spot', id: record.id, before, record }
    : { kind: 'shoot', id: record.id, before, record }
}

export function removed(kind: Change['kind'], id: string, before: number): Change {
  return { kind, id, before, record: null }
}
