/** What counts as one press in placing mode: a shaky hand still presses once, a double press places nothing. */
import { type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'

/** Farther than this, pixels, a press has become a drag of the map. */
export const SHAKE = 8
/** A second press within so many milliseconds, and so near, belongs to the first. */
const DOUBLE_TIME = 300
const DOUBLE_REACH = 24

export const PLACE_AFTER = DOUBLE_TIME

export type PressAnswer =
  /** Wait `PLACE_AFTER` milliseconds, then place, unless taken back until then. */
  | { readonly kind: 'place-soon'; readonly at: Point }
  /** The one placed soon was half of a double press. */
  | { readonly kind: 'take-back' }
  | { readonly kind: 'nothing' }

export interface PressReader {
  down(at: Point, time: number): PressAnswer
  /** The pointer moved while down. */
  move(at: Point): void
  up(at: Point, time: number): PressAnswer
  cancel(): void
}

const NOTHING: PressAnswer = { kind: 'nothing' }

export function readPresses(): PressReader {
  let down: Point | null = null
  let last: { readonly at: Point; readonly time: number } | null = null
  const tooFar = (at: Point): boolean => down !== null && distanceBetween(at, down) > SHAKE
  return {
    down(at, time) {
      const second = last !== null && time - last.time <= DOUBLE_TIME && distanceBetween(at, last.at) <= DOUBLE_REACH
      down = second ? null : at
      // A third press of the same flurry is still part of it.
      last = second ? { at, time } : null
      return second ? { kind: 'take-back' } : NOTHING
    },
    move(at) {
      if (tooFar(at)) down = null
    },
    up(at, time) {
      const pressed = down
      const strayed = tooFar(at)
      down = null
      if (pressed === null || strayed) return NOTHING
      last = { at: pressed, time }
      return { kind: 'place-soon', at: pressed }
    },
    cancel() {
      down = null
    },
  }
}
