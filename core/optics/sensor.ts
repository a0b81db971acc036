/** The sensor: the frame's own size, presets by format. */

export interface Camera {
  readonly name: string
  /** Millimetres, the longer side. */
  readonly sensorWidth: number
  /** Millimetres, the shorter side. */
  readonly sensorHeight: number
  /** Circle of confusion as a part of the sensor's diagonal: diagonal / this. 1500 is a lens maker's convention (R. F. Lyon, 2006). */
  readonly confusionDivisor: number
  /** Seconds: the shortest and the longest time that the shutter is set to, greater than 0. */
  readonly fastestShutter: number
  readonly slowestShutter: number
}

/** Seconds of an ordinary camera (common practice, no source). */
export const USUAL_SHUTTER = { fastestShutter: 1 / 4000, slowestShutter: 30 } as const

export const DEFAULT_CONFUSION_DIVISOR = 1500

/** Formats by their size in millimetres. The phone's size is common practice, no source (a 1/1.3-inch type). */
export const SENSOR_FORMATS = [
  { id: '36x24', width: 36, height: 24 },
  { id: '23.5x15.6', width: 23.5, height: 15.6 },
  { id: '22.3x14.9', width: 22.3, height: 14.9 },
  { id: '17.3x13', width: 17.3, height: 13 },
  { id: '43.8x32.9', width: 43.8, height: 32.9 },
  { id: '1-inch', width: 13.2, height: 8.8 },
  { id: 'phone', width: 9.8, height: 7.3 },
] as const

export function sensorDiagonal(camera: Pick<Camera, 'sensorWidth' | 'sensorHeight'>): number {
  return Math.hypot(camera.sensorWidth, camera.sensorHeight)
}

/** Millimetres. */
export function circleOfConfusion(camera: Camera): number {
  return sensorDiagonal(camera) / camera.confusionDivisor
}
