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

/** The end a side begins with as the sweep goes: the western one, of a side due north the southern one. */
function ends(side: Side): readonly [firstX: number, firstY: number, lastX: number, lastY: number] {
  const { fromX, fromY, toX, toY } = side
  const forth = fromX < toX || (fromX === toX && fromY <= toY)
  return forth ? [fromX, fromY, toX, toY] : [toX, toY, fromX, fromY]
}

/** A side as it is swept, its ends in the order of the sweep. */
interface Swept extends Side {
  readonly firstX: number
  readonly firstY: number
  readonly lastX: number
  readonly lastY: number
}

function sweptOf(side: Side): Swept {
  const [firstX, firstY, lastX, lastY] = ends(side)
  return { ...side, firstX, firstY, lastX, lastY }
}

/** More than 0 when the point lies north of a swept side. */
function northOf({ firstX, firstY, lastX, lastY }: Swept, x: number, y: number): number {
  return (lastX - firstX) * (y - firstY) - (lastY - firstY) * (x - firstX)
}

/** Where a new side belongs among those that the sweep is crossing, from south to north. */
function placeFor(crossed: readonly Swept[], side: Swept): number {
  let [low, high] = [0, crossed.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const other = crossed[middle]
    if (other === undefined) break
    // On the other's line: by where it goes from there.
    const north = northOf(other, side.firstX, side.firstY) || northOf(other, side.lastX, side.lastY)
    if (north > 0 || (north === 0 && other.index < side.index)) low = middle + 1
    else high = middle
  }
  return low
}

/**
 * True when two sides of the ring cross or touch one another elsewhere than at the corner that neighbours share. No corner may
 * repeat the one before. Shamos and Hoey 1976: up to the first meeting the sides under the sweep keep their order, so that only
 * those that come to lie side by side need be looked at.
 */
export function ringCrossesItself(ring: Ring): boolean {
  const count = ring.length
  const sides = sidesOf(ring).map(sweptOf)
  const clash = (one: Swept | undefined, other: Swept | undefined): boolean => {
    if (one === undefined || other === undefined) return false
    const away = Math.abs(one.index - other.index)
    return away !== 1 && away !== count - 1 && meet(one, other)
  }
  // A side that goes back along the one before it touches a third, which it would hide from the sweep.
  if (sides.some((side, index) => turnsBack(side, sides[(index + 1) % count] ?? side))) return count > 3
  const starts = sides.toSorted((one, other) => one.firstX - other.firstX || one.firstY - other.firstY)
  const stops = sides.toSorted((one, other) => one.lastX - other.lastX || one.lastY - other.lastY)
  const crossed: Swept[] = []
  let stopped = 0
  /** Takes out the sides that end before one begins, all of them for null; true when two that then lie side by side clash. */
  const leave = (next: Swept | null): boolean => {
    for (let gone = stops[stopped]; gone !== undefined; gone = stops[(stopped += 1)]) {
      // Sides that end where another begins are still there: they may touch.
      if (next !== null && !isBefore(gone, next)) return false
      const at = crossed.indexOf(gone)
      crossed.splice(at, 1)
      if (clash(crossed[at - 1], crossed[at])) return true
    }
    return false
  }
  for (const side of starts) {
    if (leave(side)) return true
    const at = placeFor(crossed, side)
    crossed.splice(at, 0, side)
    if (clash(crossed[at - 1], side) || clash(side, crossed[at + 1])) return true
  }
  return leave(null)
}

function turnsBack(side: Side, next: Side): boolean {
  const [alongX, alongY] = [side.toX - side.fromX, side.toY - side.fromY]
  const [nextX, nextY] = [next.toX - side.toX, next.toY - side.toY]
  return alongX * nextY === alongY * nextX && alongX * nextX + alongY * nextY < 0
}

function isBefore({ lastX, lastY }: Swept, { firstX, firstY }: Swept): boolean {
  return lastX < firstX || (lastX === firstX && lastY < firstY)
}
