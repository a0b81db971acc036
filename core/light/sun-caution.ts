/** The sun's caution: from how near to the frame on the sun is warned of, for eyes, sensor and shutter. */

/** Within so many degrees of the frame the sun is a danger to who turns the camera. */
export const SUN_NEAR = 5

/** `within` as the reading has it, degrees inside the frame, negative outside. The disc's edge counts, not its middle. */
export function sunCaution(within: number, radius: number): 'in-frame' | 'near' | null {
  if (within > -radius) return 'in-frame'
  return within > -SUN_NEAR - radius ? 'near' : null
}
