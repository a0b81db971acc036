/** What is asked of a viewshed, and what it says of a cell. */
import type { Obstruction } from './obstruction.ts'

export const HIDDEN = 0
export const SEEN = 1
/** The cell's ground is unknown, nothing known hides it but unknown ground lies on the way, or it is farther than asked. */
export const UNKNOWN = 2

/** Who looks, and for what. Lines of sight are symmetric: what the eye sees at `targetHeight` sees the eye from there. */
export interface ViewshedRequest {
  /** Metres from the grid's centre. */
  readonly east: number
  readonly north: number
  /** Metres above the sea of the eye. */
  readonly height: number
  /** Metres above the ground of what is looked for at each cell. */
  readonly targetHeight: number
  /** Share of the earth's curve that the air takes back. */
  readonly refraction: number
  /** Metres beyond which nothing is asked; null: as far as the grid reaches. */
  readonly radius: number | null
  /** What stands on the ground and hides besides it; absent or empty: nothing. */
  readonly obstructions?: readonly Obstruction[]
}
