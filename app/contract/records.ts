/** Shapes of the stored records at the door: what main accepts, checked against the types of core. */
import { z } from 'zod'
import { FRAME_AXES } from '#core/frame/fill.ts'
import { FOCUS_ON } from '#core/frame/set-up.ts'
import { SKIES } from '#core/light/exposure.ts'
import { LANDMARK_LIGHTS, NO_WISHES, SOFT_LIGHTS, SUBJECT_LIGHTS, SUN_PLACES } from '#core/light/light-wish.ts'
import { USUAL_SHUTTER } from '#core/optics/sensor.ts'
import { MOST_DRAWN, MOST_DRAWN_POINTS } from '#core/record/drawn-ground.ts'
import { NAME_MOST, RECORD_LIMITS, type RecordLimit } from '#core/record/record-limits.ts'
import { MOST_OBSTRUCTIONS, type Shoot } from '#core/record/shoot.ts'
import { KEEP_OUT_KINDS, KEPT_OUT } from '#core/record/keep-out.ts'
import { LANDMARK_PLACES, USUAL_SCAN_WISHES } from '#core/record/scan-wishes.ts'
import { HAZARDS, HOLDS, PERMISSION_STATES, SPOT_STATUSES, type Spot } from '#core/record/spot.ts'
import { DRAWN_FORMS, TURNS } from '#core/record/stopping-ground.ts'
import { SPAN_FORMS } from '#core/scene/landmark.ts'
import { EARLIEST_INSTANT, isDate, LATEST_INSTANT } from '#core/time/civil.ts'
import { SUBJECT_KINDS } from '#core/scene/subject.ts'

const name = z.string().max(NAME_MOST)
const id = z.string().min(1).max(64)

function within({ least, most }: RecordLimit): z.ZodNumber {
  return z.number().min(least).max(most)
}

const subjectSize = within(RECORD_LIMITS.subjectSize)
const landmarkSize = within(RECORD_LIMITS.landmarkSize)
const elevation = z.number().min(-500).max(9_000).nullable()
const bearing = z.number().min(0).lt(360)

export const latLonShape = z.object({ lat: z.number().min(-90).max(90), lon: z.number().min(-180).lt(180) })

// Files written before the ground's lean was measured lack both.
const slope = z.number().min(0).max(90).nullable().default(null)
const aspect = bearing.nullable().default(null)

const landmarkCommon = {
  id,
  name,
  height: landmarkSize,
  baseElevation: elevation,
  baseSlope: slope,
  baseAspect: aspect,
}

export const landmarkShape = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('upright'), ...landmarkCommon, at: latLonShape, width: landmarkSize }),
  z.object({
    kind: z.literal('span'),
    ...landmarkCommon,
    form: z.enum(SPAN_FORMS),
    line: z.array(latLonShape).min(2).max(200),
    deckHeight: within(RECORD_LIMITS.deckHeight),
    width: landmarkSize,
  }),
  z.object({ kind: z.literal('summit'), ...landmarkCommon, at: latLonShape, width: landmarkSize }),
  z.object({ kind: z.literal('building'), ...landmarkCommon, footprint: z.array(latLonShape).min(3).max(500) }),
])

const fNumber = z.number().min(0.5).max(128)
const seconds = z.number().min(1e-6).max(100_000)
const millimetres = z.number().min(0.5).max(10_000)

export const lensShape = z.object({
  id,
  name,
  focalMin: millimetres,
  focalMax: millimetres,
  widestAtMin: fNumber,
  widestAtMax: fNumber,
  smallest: fNumber,
  closestFocus: z.number().min(0).max(1_000),
  weight: z.number().min(0).max(100_000).nullable(),
})

const hoursShape = z
  .object({ from: z.number().min(0).max(1439), until: z.number().min(1).max(1440) })
  .refine(({ from, until }) => from !== until, 'hours must not begin when they end')

const altitudeShape = z
  .object({ least: z.number().min(-90).max(90), most: z.number().min(-90).max(90) })
  .refine(({ least, most }) => least < most, 'the least altitude must be below the most')

const lightShape = z.object({
  subject: z.enum(SUBJECT_LIGHTS).nullable(),
  landmark: z.enum(LANDMARK_LIGHTS).nullable(),
  altitude: altitudeShape.nullable(),
  sun: z.enum(SUN_PLACES).nullable(),
  soft: z.enum(SOFT_LIGHTS).nullable(),
  moonUp: z.boolean(),
  hours: hoursShape.nullable(),
})

const drawnPoints = z.array(latLonShape).max(MOST_DRAWN_POINTS)
const calendarDay = z.string().refine(isDate, 'the calendar has no such day')

export const stoppingGroundShape = z.object({
  id,
  name,
  form: z.enum(DRAWN_FORMS),
  points: drawnPoints,
  turn: z.enum(TURNS),
})

export const keepOutShape = z.object({
  id,
  name,
  kind: z.enum(KEEP_OUT_KINDS),
  form: z.enum(DRAWN_FORMS),
  points: drawnPoints,
  width: z.number().min(0).max(10_000),
  whom: z.enum(KEPT_OUT),
  noCrossing: z.boolean(),
})

const demand = { must: z.boolean(), weight: z.number().min(1).max(5) }
const band = (least: number, most: number) => ({
  least: z.number().min(least).max(most),
  most: z.number().min(least).max(most),
})
const filled = z.object({ ...demand, ...band(0, 20), axis: z.enum(FRAME_AXES) }).nullable()

const scanWishesShape = z.object({
  subjectFill: filled,
  landmarkFill: filled,
  landmarkWhole: z.object({ ...demand, crops: z.boolean() }).nullable(),
  landmarkPlace: z.object({ ...demand, where: z.enum(LANDMARK_PLACES), gap: z.number().min(0).max(1) }).nullable(),
  subjectView: z.object({ ...demand, ...band(0, 180) }).nullable(),
  landmarkShown: z.object({ ...demand, least: z.number().min(0).max(1) }).nullable(),
  softness: z.object({ ...demand, ...band(0, 1) }).nullable(),
  light: z.object(demand).nullable(),
  parking: z.object({ ...demand, within: z.number().min(0).max(1_000_000) }).nullable(),
  lensHeight: z.object(band(0, 1_000)),
  days: z.object({ from: calendarDay, until: calendarDay }).nullable(),
  hours: hoursShape.nullable(),
})

const cropSide = within(RECORD_LIMITS.cropSide)

export const shootShape = z.object({
  id,
  revision: z.number().int().min(0),
  name,
  subject: z.object({
    kind: z.enum(SUBJECT_KINDS),
    name,
    length: subjectSize,
    width: subjectSize,
    height: subjectSize,
    features: z.array(z.object({ name, behindFront: z.number().min(0).max(1_000) })).max(50),
  }),
  landmarks: z.array(landmarkShape).max(100),
  bag: z.object({
    camera: z.object({
      name,
      sensorWidth: z.number().min(0.5).max(1_000),
      sensorHeight: z.number().min(0.5).max(1_000),
      confusionDivisor: z.number().min(100).max(10_000),
      fastestShutter: seconds.default(USUAL_SHUTTER.fastestShutter),
      slowestShutter: seconds.default(USUAL_SHUTTER.slowestShutter),
    }),
    lenses: z.array(lensShape).max(100),
  }),
  crops: z.array(z.object({ wide: cropSide, high: cropSide })).max(30),
  refraction: within(RECORD_LIMITS.refraction),
  // Files written before light was planned lack these four and the spot's instant.
  obstructions: z
    .array(
      z.object({
        id,
        name,
        line: z.array(latLonShape).min(2).max(200),
        height: within(RECORD_LIMITS.obstructionHeight),
      }),
    )
    .max(MOST_OBSTRUCTIONS)
    .default([]),
  // And these three, files written before there was a scan.
  stoppingGround: z.array(stoppingGroundShape).max(MOST_DRAWN.stopping).default([]),
  keepOuts: z.array(keepOutShape).max(MOST_DRAWN['keep-out']).default([]),
  scanWishes: scanWishesShape.default(USUAL_SCAN_WISHES),
  zone: z.string().min(1).max(64).nullable().default(null),
  light: lightShape.default(NO_WISHES),
  sky: z.enum(SKIES).default('clear'),
  iso: z.number().min(1).max(10_000_000).default(100),
  madeAt: z.number().int().min(EARLIEST_INSTANT).max(LATEST_INSTANT),
})

const fillWish = z.object({ share: within(RECORD_LIMITS.fill), axis: z.enum(FRAME_AXES) })

export const spotShape = z.object({
  id,
  shootId: id,
  revision: z.number().int().min(0),
  name,
  notes: z.string().max(100_000),
  stars: z.number().int().min(0).max(5),
  status: z.enum(SPOT_STATUSES),
  rank: within(RECORD_LIMITS.rank),
  stop: z.object({ at: latLonShape, heading: bearing, elevation, slope, aspect }),
  standpoint: z.object({ at: latLonShape, lensHeight: z.number().min(0).max(1_000), elevation, slope, aspect }),
  landmarkId: id.nullable(),
  hold: z.enum(HOLDS),
  when: z
    .number()
    .int()
    .min(EARLIEST_INSTANT)
    .max(LATEST_INSTANT)
    .default(() => Date.now()),
  shot: z.object({
    orientation: z.enum(['lying', 'upright']),
    focalLength: millimetres,
    lensId: id.nullable(),
    aperture: fNumber.nullable(),
    focus: z.object({ on: z.enum(FOCUS_ON), behindFront: z.number().min(0).max(1_000) }),
    placement: z.object({ across: z.number().min(-2).max(2), up: z.number().min(-2).max(2) }),
    subjectFill: fillWish,
    landmarkFill: fillWish,
  }),
  access: z.object({
    parking: latLonShape.nullable(),
    walkMinutes: z.number().min(0).max(100_000).nullable(),
    surface: z.string().max(1_000),
  }),
  permission: z.object({
    state: z.enum(PERMISSION_STATES),
    whom: z.string().max(10_000),
    until: calendarDay.nullable(),
  }),
  hazards: z.array(z.enum(HAZARDS)).max(HAZARDS.length),
  hazardNote: z.string().max(10_000),
})

// The shapes and core's types must not drift apart: each line fails to compile when they do.
type Fits<Value, Target> = Value extends Target ? true : never
/** @public Read by the compiler alone. */
export const shapesFit: readonly [Fits<z.infer<typeof shootShape>, Shoot>, Fits<z.infer<typeof spotShape>, Spot>] = [
  true,
  true,
]
