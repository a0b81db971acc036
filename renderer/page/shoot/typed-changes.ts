/** What the forms of a shoot make of what is typed or ticked: sizes, sides of a sensor, crops, points, each as the record will hold it. */
import { type Crop, USUAL_CROPS } from '#core/frame/crop.ts'
import { destination, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type Camera, SENSOR_FORMATS } from '#core/optics/sensor.ts'
import type { Subject } from '#core/scene/subject.ts'

/** The subject with a new size; its named places stay on it. */
export function resized(subject: Subject, size: Partial<Pick<Subject, 'length' | 'width' | 'height'>>): Subject {
  const next = { ...subject, ...size }
  const features = next.features.map((feature) => ({
    ...feature,
    behindFront: Math.min(feature.behindFront, next.length),
  }))
  return { ...next, features }
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
