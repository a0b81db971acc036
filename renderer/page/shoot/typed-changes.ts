/** What the forms of a shoot make of what is typed or ticked: sizes, sides of a sensor, crops, points, each as the record will hold it. */
import { type Crop, USUAL_CROPS } from '#core/frame/crop.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Camera, SENSOR_FORMATS } from '#core/optics/sensor.ts'
import { SUBJECT_PRESETS, type Subject, type SubjectKind } from '#core/scene/subject.ts'

export type SubjectSize = Pick<Subject, 'length' | 'width' | 'height'>
const SIDES = ['length', 'width', 'height'] as const

/**
 * The subject with a new size; its named places stay on it. Those of a subject that was shortened by mistake were meant elsewhere:
 * given as `meant`, they are there again once it is long enough.
 */
export function resized(subject: Subject, size: Partial<SubjectSize>, meant = subject.features): Subject {
  const next = { ...subject, ...size }
  const features = meant.map((feature) => ({
    ...feature,
    behindFront: Math.min(feature.behindFront, next.length),
  }))
  return { ...next, features }
}

/** The size that a subject has as another kind: ordinary where it was ordinary, as typed where it was typed. */
export function sizeAs(subject: Subject, kind: SubjectKind): SubjectSize {
  const [was, usual] = [SUBJECT_PRESETS[subject.kind], SUBJECT_PRESETS[kind]]
  const side = (name: keyof SubjectSize): number => (subject[name] === was[name] ? usual[name] : subject[name])
  return { length: side('length'), width: side('width'), height: side('height') }
}

export function hasUsualSize(subject: Subject): boolean {
  return SIDES.every((side) => subject[side] === SUBJECT_PRESETS[subject.kind][side])
}

/** The usual format of these very sides; undefined for a size of its own. */
export function formatOf(camera: Camera): (typeof SENSOR_FORMATS)[number] | undefined {
  return SENSOR_FORMATS.find((format) => format.width === camera.sensorWidth && format.height === camera.sensorHeight)
}

function same(one: Crop, other: Crop): boolean {
  return one.wide === other.wide && one.high === other.high
}

export function hasCrop(crops: readonly Crop[], crop: Crop): boolean {
  return crops.some((other) => same(other, crop))
}

/** Those that are none of the usual ones, in their order. */
export function ownCrops(crops: readonly Crop[]): readonly Crop[] {
  return crops.filter((crop) => !hasCrop(USUAL_CROPS, crop))
}

/** A usual crop ticked or unticked: the usual ones in their own order, then one's own. */
export function toggledCrop(crops: readonly Crop[], crop: Crop): readonly Crop[] {
  const usual = USUAL_CROPS.filter((other) => hasCrop(crops, other) !== same(other, crop))
  return [...usual, ...ownCrops(crops)]
}

/** Halfway along the last stretch, so that a new point changes nothing until it is moved. */
export function pointBetween(points: readonly LatLon[]): LatLon | null {
  const [one, other] = [points.at(-2), points.at(-1)]
  if (one === undefined || other === undefined) return null
  const line = geodesicLine(one, other)
  return line.bearing === null ? one : destination(one, line.bearing, line.distance / 2)
}
