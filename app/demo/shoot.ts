/** The demo shoot: a cargo bicycle before a suspension bridge and a lighthouse of our invented island, with three spots. */
import type { Change } from '#app/contract/library.ts'
import { newShoot, newSpot } from '#core/record/new-records.ts'
import { planOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { bearingOfStandpoint, standForBothFills } from '#core/plan/stand.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { Lens } from '#core/optics/lens.ts'
import { USUAL_SHUTTER } from '#core/optics/sensor.ts'
import { BRIDGE, DEMO_PLACES, type DemoPlace, LIGHTHOUSE } from './island-places.ts'

const BRIDGE_LANDMARK: Landmark = {
  id: 'demo-bridge',
  name: BRIDGE.name,
  kind: 'span',
  form: 'suspension',
  line: BRIDGE.line,
  height: BRIDGE.towerHeight,
  deckHeight: BRIDGE.deckHeight,
  width: BRIDGE.width,
  baseElevation: BRIDGE.baseElevation,
  baseSlope: null,
  baseAspect: null,
}

const LIGHTHOUSE_LANDMARK: Landmark = {
  id: 'demo-lighthouse',
  name: LIGHTHOUSE.name,
  kind: 'upright',
  at: LIGHTHOUSE.at,
  height: LIGHTHOUSE.height,
  width: LIGHTHOUSE.width,
  baseElevation: LIGHTHOUSE.baseElevation,
  baseSlope: null,
  baseAspect: null,
}

function lens(
  id: string,
  name: string,
  range: readonly [number, number],
  widest: readonly [number, number],
  closestFocus: number,
  weight: number,
): Lens {
  return {
    id,
    name,
    focalMin: range[0],
    focalMax: range[1],
    widestAtMin: widest[0],
    widestAtMax: widest[1],
    smallest: 22,
    closestFocus,
    weight,
  }
}

const DEMO_LENSES: readonly Lens[] = [
  lens('demo-24-70', '24–70 mm f/2.8', [24, 70], [2.8, 2.8], 0.38, 850),
  lens('demo-70-200', '70–200 mm f/4', [70, 200], [4, 4], 1, 780),
  lens('demo-35', '35 mm f/1.8', [35, 35], [1.8, 1.8], 0.25, 310),
]

function demoShoot(now: number): Shoot {
  return {
    ...newShoot('demo', 'demo-24-70', now),
    name: 'Cargo bicycle, summer brochure',
    subject: {
      kind: 'cargo-bicycle',
      name: 'Cargo bicycle',
      length: 2.5,
      width: 0.65,
      height: 1.2,
      features: [
        { name: 'box', behindFront: 0.9 },
        { name: 'saddle', behindFront: 1.9 },
      ],
    },
    landmarks: [BRIDGE_LANDMARK, LIGHTHOUSE_LANDMARK],
    bag: {
      camera: { name: '36 × 24 mm', sensorWidth: 36, sensorHeight: 24, confusionDivisor: 1500, ...USUAL_SHUTTER },
      lenses: DEMO_LENSES,
    },
    light: { ...NO_WISHES, subject: 'lit', landmark: 'lit', altitude: { least: 3, most: 45 } },
  }
}

/** The next 14 June after an instant, so many hours by the island's clock, which is two hours behind UTC. */
function plannedFor(now: number, hour: number): number {
  const year = new Date(now).getUTCFullYear()
  const inYear = (of: number): number => Date.UTC(of, 5, 14) + Math.round((hour + 2) * 60) * 60_000
  return inYear(year) > now ? inYear(year) : inYear(year + 1)
}

interface SpotNotes extends Pick<Spot, 'notes' | 'stars' | 'status' | 'permission' | 'hazards' | 'hazardNote'> {
  readonly walkMinutes: number
  readonly surface: string
  readonly lensHeight: number
  /** Hours after midnight of the planned frame. */
  readonly hour: number
  readonly shot: Partial<Spot['shot']>
}

/** By place, in the order of DEMO_PLACES: the track, the quay, the lay-by. */
const NOTES: readonly SpotNotes[] = [
  {
    notes: 'Gate stays shut behind us. The bridge opens to the right of the bend; evening light comes up the sound.',
    stars: 4,
    status: 'chosen',
    permission: { state: 'asked', whom: 'The farm at Tolvay', until: null },
    hazards: ['livestock', 'edge'],
    hazardNote: '',
    walkMinutes: 6,
    surface: 'grass track, wet in the dip',
    lensHeight: 1.1,
    hour: 16.5,
    shot: {
      subjectFill: { share: 0.48, axis: 'width' },
      landmarkFill: { share: 0.32, axis: 'height' },
      placement: { across: 0.08, up: -0.22 },
    },
  },
  {
    notes: 'Only before the boats come in. Stand with the wall behind.',
    stars: 3,
    status: 'to-visit',
    permission: { state: 'to-ask', whom: 'Harbour office', until: null },
    hazards: ['water', 'edge', 'traffic'],
    hazardNote: '',
    walkMinutes: 2,
    surface: 'cobbled quay',
    lensHeight: 0.9,
    hour: 16.75,
    shot: {
      subjectFill: { share: 0.45, axis: 'width' },
      landmarkFill: { share: 0.22, axis: 'height' },
      placement: { across: -0.14, up: -0.24 },
    },
  },
  {
    notes: 'Long lens from across the road. Portrait frame with the light above the box.',
    stars: 2,
    status: 'idea',
    permission: { state: 'not-needed', whom: '', until: null },
    hazards: ['traffic'],
    hazardNote: '',
    walkMinutes: 0,
    surface: 'lay-by, gravel',
    lensHeight: 1.4,
    hour: 7.5,
    shot: {
      orientation: 'upright',
      subjectFill: { share: 0.72, axis: 'width' },
      landmarkFill: { share: 0.14, axis: 'height' },
      placement: { across: 0, up: -0.26 },
    },
  },
]

function demoSpot(shoot: Shoot, place: DemoPlace, notes: SpotNotes, index: number): Spot {
  const fresh = newSpot(`demo-spot-${index + 1}`, shoot, place.stop, index + 1, plannedFor(shoot.madeAt, notes.hour))
  const spot: Spot = {
    ...fresh,
    name: place.name,
    notes: notes.notes,
    stars: notes.stars,
    status: notes.status,
    permission: notes.permission,
    hazards: notes.hazards,
    hazardNote: notes.hazardNote,
    access: { parking: place.parking, walkMinutes: notes.walkMinutes, surface: notes.surface },
    stop: { at: place.stop, heading: place.heading, elevation: place.stopElevation, slope: null, aspect: null },
    standpoint: {
      at: place.standpoint,
      lensHeight: notes.lensHeight,
      elevation: place.standpointElevation,
      slope: null,
      aspect: null,
    },
    landmarkId: place.landmark === 'bridge' ? BRIDGE_LANDMARK.id : LIGHTHOUSE_LANDMARK.id,
    shot: { ...fresh.shot, ...notes.shot },
  }
  return standing(shoot, spot)
}

/** The spot with its camera where both wished fills hold, on the place's own bearing. */
function standing(shoot: Shoot, spot: Spot): Spot {
  const plan = planOf(shoot, spot)
  const found = standForBothFills(plan, bearingOfStandpoint(plan) ?? 0)
  if (!found.ok) throw new Error(`the demo spot ${spot.name} cannot be: ${found.fault.message}`)
  return found.value
}

/** The demo as changes to be saved into a new library. `now` is in epoch milliseconds. */
export function demoChanges(now: number): Change[] {
  const shoot = demoShoot(now)
  const spots = DEMO_PLACES.map((place, index) => {
    const notes = NOTES[index]
    if (notes === undefined) throw new Error(`no notes for the demo spot ${place.name}`)
    return demoSpot(shoot, place, notes, index)
  })
  const records = [
    { kind: 'shoot', id: shoot.id, before: null, record: shoot },
    ...spots.map((spot) => ({ kind: 'spot', id: spot.id, before: null, record: spot })),
  ]
  // The contract's shapes are mutable arrays; the records are plain data of the same form.
  return structuredClone(records) as Change[]
}
