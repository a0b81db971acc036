/** Whether an outline crosses itself: its sides swept from west to east, so that outlines of thousands of corners are told at once. */
import { unwrapNear } from './bounds.ts'
import type { Ring } from './outline.ts'

interface Side {
  readonly index: number
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

function sidesOf(ring: Ring): Side[] {
  const reference = ring[0]?.lon ?? 0
  return ring.map((from, index) => {
    const to = ring[(index + 1) % ring.length] ?? from
    return {
      index,
      fromX: unwrapNear(from.lon, reference),
      fromY: from.lat,
      toX: unwrapNear(to.lon, reference),
      toY: to.lat,
    }
  })
}

const west = (side: Side): number => Math.min(side.fromX, side.toX)
const east = (side: Side): number => Math.max(side.fromX, side.toX)

/** More than 0 when a point lies to the left of a side, 0 on its line. */
function leftOf(side: Side, x: number, y: number): number {
  return (side.toX - side.fromX) * (y - side.fromY) - (side.toY - side.fromY) * (x - side.fromX)
}

function boxHolds(side: Side, x: number, y: number): boolean {
  const [low, high] = side.fromY < side.toY ? [side.fromY, side.toY] : [side.toY, side.fromY]
  return x >= west(side) && x <= east(side) && y >= low && y <= high
}

function meet(one: Side, other: Side): boolean {
  if (Math.max(one.fromY, one.toY) < Math.min(other.fromY, other.toY)) return false
  if (Math.min(one.fromY, one.toY) > Math.max(other.fromY, other.toY)) return false
  const from = leftOf(one, other.fromX, other.fromY)
  const to = leftOf(one, other.toX, other.toY)
  const back = leftOf(other, one.fromX, one.fromY)
  const forth = leftOf(other, one.toX, one.toY)
  if (((from > 0 && to < 0) || (from < 0 && to > 0)) && ((back > 0 && forth < 0) || (back < 0 && forth > 0)))
    return true
  return (
    (from === 0 && boxHolds(one, other.fromX, other.fromY)) ||
    (to === 0 && boxHolds(one, other.toX, other.toY)) ||
    (back === 0 && boxHolds(other, one.fromX, one.fromY)) ||
    (forth === 0 && boxHolds(other, one.toX, one.toY))
  )
}

/** True when two sides of the ring cross or touch one another elsewhere than at the corner that neighbours share. No corner may repeat the one before. */
export function ringCrossesItself(ring: Ring): boolean {
  const count = ring.length
  const sides = sidesOf(ring).toSorted((one, other) => west(one) - west(other))
  for (const [place, one] of sides.entries()) {
    const end = east(one)
    for (let next = place + 1; next < count; next++) {
      const other = sides[next]
      if (other === undefined || west(other) > end) break
      const away = Math.abs(one.index - other.index)
      if (away !== 1 && away !== count - 1 && meet(one, other)) return true
    }
  }
  return false
}
