/** The walk of a wall or of a row of arches, behind its parapet: drawn in proportion, since nobody measures it. */

/** Metres of a parapet, to the breast of who stands behind it, and its most as a share of a low wall (common practice, no source). */
const PARAPET = 1.2
const PARAPET_SHARE = 0.15

/** Metres above the foot. */
export function walkHeight(height: number): number {
  return height - Math.min(PARAPET, height * PARAPET_SHARE)
}
