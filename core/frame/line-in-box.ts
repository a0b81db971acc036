/** What of a straight line in a picture lies within a box (Liang and Barsky). */

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

/** The part of a segment inside a box; null when none of it is, or it but touches. */
export function clipSegment(from: BoxPoint, to: BoxPoint, box: Sides): readonly [BoxPoint, BoxPoint] | null {
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
  if (enter >= leave) return null
  const at = (share: number): BoxPoint => ({ x: from.x + dx * share, y: from.y + dy * share })
  return [at(enter), at(leave)]
}
