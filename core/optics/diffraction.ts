/** Diffraction: the Airy disc of a stopped-down lens, 2.44 lambda N, in green light. */

/** Millimetres; 550 nm, the middle of daylight vision. */
export const GREEN_LIGHT = 0.00055

/** Diameter in millimetres of the Airy disc. */
export function airyDisc(aperture: number, wavelength: number = GREEN_LIGHT): number {
  return 2.44 * wavelength * aperture
}

/** f-number at which the Airy disc grows to the circle of confusion (both in millimetres). */
export function diffractionSetsIn(confusion: number, wavelength: number = GREEN_LIGHT): number {
  return confusion / (2.44 * wavelength)
}
