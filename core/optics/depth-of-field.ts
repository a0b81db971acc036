/**
 * Depth of field of a thin lens. Convention: distances in metres from the lens (not the sensor), full thin-lens form
 * (with the "minus f" terms), focal length and circle of confusion in millimetres, N the exact f-number.
 */

export interface FieldLimits {
  /** Metres. */
  readonly near: number
  /** Metres; null when sharpness runs to infinity. */
  readonly far: number | null
}

/** Diameter in millimetres of the blur disc of a point at `distance` when focused at `focus`: f^2 |s/d - 1| / (N (s - f)). */
export function blurDisc(focal: number, aperture: number, focus: number, distance: number): number {
  return ((focal * focal) / 1000) * (Math.abs(focus - distance) / distance / (aperture * (focus - focal / 1000)))
}

/** The same for a point at infinity. */
export function blurDiscAtInfinity(focal: number, aperture: number, focus: number): number {
  return (focal * focal) / 1000 / (aperture * (focus - focal / 1000))
}

export function fieldLimits(focal: number, aperture: number, confusion: number, focus: number): FieldLimits {
  const f = focal / 1000
  const spread = aperture * (confusion / 1000) * (focus - f)
  const farDenominator = f * f - spread
  return {
    near: (focus * f * f) / (f * f + spread),
    far: farDenominator > 0 ? (focus * f * f) / farDenominator : null,
  }
}

/** Metres; focused here, all from half of it to infinity is sharp: f^2 / (N c) + f. */
export function hyperfocal(focal: number, aperture: number, confusion: number): number {
  return ((focal * focal) / (aperture * confusion) + focal) / 1000
}

/** Focus that holds both ends of a stretch of depth with the least stopping down: 2ab / (a + b). */
export function bestFocus(near: number, far: number): number {
  return (2 * near * far) / (near + far)
}

/** f-number at which both ends of a stretch just stay inside the circle of confusion; 0 when both lie at the focus. */
export function apertureToHold(focal: number, confusion: number, focus: number, near: number, far: number): number {
  return Math.max(blurDisc(focal, 1, focus, near), blurDisc(focal, 1, focus, far)) / confusion
}
