/** How much of a straight line in a picture lies within a box (Liang and Barsky). */

interface BoxPoint {
  readonly x: number
  readonly y: number
}

interface Sides {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The shares of the way at which the line enters and leaves; the same where it but touches; null when none of it is within. */
export function sharesInBox(from: BoxPoint, to: BoxPoint, box: Sides): readonly [number, number] | null {
  const dx = to.x - from.x
  const dy = to.y - from.y
  let enter = 0
  let leave = 1
  const sides = [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ] as const
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return null
    } else if (step < 0) enter = Math.max(enter, room / step)
    else leave = Math.min(leave, room / step)
  }
  return enter > leave ? null : [enter, leave]
}
