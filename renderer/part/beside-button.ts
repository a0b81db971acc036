/** Where something that a button opens stands in the window: above it where there is room, else below, and never off the edge. */

interface Size {
  readonly width: number
  readonly height: number
}

interface ButtonPlace {
  readonly left: number
  readonly top: number
  readonly bottom: number
}

/** Pixels to the button, and to the window's edge. */
const GAP = 5
const EDGE = 4

function within(least: number, wanted: number, most: number): number {
  return Math.max(least, Math.min(wanted, most))
}

export function besideButton(
  button: ButtonPlace,
  size: Size,
  view: Size,
): { readonly left: number; readonly top: number } {
  const lowest = view.height - size.height - EDGE
  const above = button.top - GAP - size.height
  const below = button.bottom + GAP
  return {
    left: within(EDGE, button.left, view.width - size.width - EDGE),
    top: above >= EDGE ? above : within(EDGE, below, lowest),
  }
}
