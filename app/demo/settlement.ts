/** Houses along the roads of the villages, farmsteads, and the walled fields around them. */
import type { Ground } from './ground.ts'
import { lakeOval } from './ground.ts'
import { type IslandPoint, bearingBetween, islandDistance, step } from './island-frame.ts'
import { LIGHTHOUSE_PLAN } from './island-places.ts'
import { Nearness } from './nearness.ts'
import { FARMS, VILLAGES, type Way } from './network.ts'
import { gradientNoise, layeredNoise, randomSequence, softStep } from './noise.ts'
import { evenlySpaced } from './outline.ts'
import type { Quays } from './harbour.ts'
import { fromShore } from './terrain.ts'

export interface House {
  readonly middle: IslandPoint
  /** Corners anticlockwise, not closed. */
  readonly corners: readonly IslandPoint[]
}

function block(middle: IslandPoint, bearing: number, long: number, deep: number): House {
  const corner = (along: number, across: number): IslandPoint =>
    step(step(middle, bearing, along), bearing + 90, across)
  return {
    middle,
    corners: [
      corner(long / 2, deep / 2),
      corner(long / 2, -deep / 2),
      corner(-long / 2, -deep / 2),
      corner(-long / 2, deep / 2),
    ],
  }
}

/** A house with a lower wing at one end: an L of six corners. */
function winged(middle: IslandPoint, bearing: number, long: number, deep: number, wing: number): House {
  const corner = (along: number, across: number): IslandPoint =>
    step(step(middle, bearing, along), bearing + 90, across)
  return {
    middle,
    corners: [
      corner(long / 2, deep / 2 + wing),
      corner(long / 2, -deep / 2),
      corner(-long / 2, -deep / 2),
      corner(-long / 2, deep / 2),
      corner(long / 2 - wing, deep / 2),
      corner(long / 2 - wing, deep / 2 + wing),
    ],
  }
}

/** Houses face the road at the distance of a front garden; each side of each stretch may carry one. */
export function buildHouses(ground: Ground, ways: readonly Way[], quays: Quays): House[] {
  const random = randomSequence(401)
  const near = new Nearness(ways.map((way) => way.line))
  const quayEdges = new Nearness(quays.areas.map((ring) => [...ring, ...ring.slice(0, 1)]))
  const houses: House[] = []
  const place = (house: House, room: number): boolean => {
    const dry = house.corners.every((corner) => fromShore(corner) > 9 && lakeOval(corner) > 1.15)
    const clear = near.metres(house.middle) > room && house.corners.every((corner) => near.metres(corner) > 5.5)
    const apart = houses.every((other) => islandDistance(other.middle, house.middle) > 17)
    if (!dry || !clear || !apart || quayEdges.metres(house.middle) < 12) return false
    houses.push(house)
    return true
  }
  for (const shed of quays.sheds) houses.push(block(shed, quays.bearing, 13, 8))
  for (const village of VILLAGES) {
    const stretches = ways
      .filter((way) => way.kind === 'road' || way.kind === 'minor')
      .flatMap((way) =>
        evenlySpaced(way.line, 15).map((point, index, line) => ({ point, next: line[index + 1] ?? point })),
      )
      .filter(({ point }) => islandDistance(point, village.at) < village.reach)
      .toSorted((left, right) => islandDistance(left.point, village.at) - islandDistance(right.point, village.at))
    let built = 0
    for (const { point, next } of stretches) {
      if (point === next || built >= village.houses) continue
      const along = bearingBetween(point, next)
      for (const side of [-90, 90]) {
        const gap = 11 + random() * random() * 22
        const long = 9 + random() * 7
        const deep = 6.5 + random() * 2
        const middle = step(point, along + side, gap)
        const house = random() < 0.3 ? winged(middle, along, long, deep, 4.5) : block(middle, along, long, deep)
        if (random() < 0.86 && place(house, 9)) built++
      }
    }
  }
  for (const farm of FARMS) addFarm(farm, random, place)
  addKeepers(place)
  return houses.filter((house) => ground.heightAt(house.middle) > 1.5)
}

function addFarm(at: IslandPoint, random: () => number, place: (house: House, room: number) => boolean): void {
  const bearing = random() * 180
  place(winged(step(at, bearing, 20), bearing + 90, 14, 8, 5), 9)
  place(block(step(at, bearing + 115, 24), bearing, 22, 10), 9)
  place(block(step(at, bearing - 110, 26), bearing, 16, 8), 9)
}

function addKeepers(place: (house: House, room: number) => boolean): void {
  place(winged(step(LIGHTHOUSE_PLAN, 75, 27), 20, 17, 8, 5), 6)
  place(block(step(LIGHTHOUSE_PLAN, 325, 30), 325, 8, 5), 6)
}

export interface FieldPlot {
  /** Corners anticlockwise, not closed. */
  readonly corners: readonly IslandPoint[]
  readonly tilled: boolean
}

/** Whether a point suits a field: gentle, low, dry, and within reach of a village or farm. */
function suits(ground: Ground, point: IslandPoint): boolean {
  const height = ground.heightAt(point)
  if (height < 4 || height > 105 || fromShore(point) < 25 || lakeOval(point) < 1.5) return false
  const east = ground.heightAt({ east: point.east + 10, north: point.north }) - height
  const north = ground.heightAt({ east: point.east, north: point.north + 10 }) - height
  if (Math.hypot(east, north) / 10 > 0.24) return false
  const village = VILLAGES.some(
    (place) => islandDistance(point, place.at) < 560 + 260 * gradientNoise(point.east / 300, point.north / 300, 91),
  )
  return village || FARMS.some((farm) => islandDistance(point, farm) < 330)
}

const FIELD_WIDE = 92
const FIELD_LONG = 128

/** Fields between wavering walls: a bent lattice, cells kept where the ground suits, some of them joined in pairs. */
export function layFields(ground: Ground): FieldPlot[] {
  const random = randomSequence(733)
  const corner = (column: number, row: number): IslandPoint => {
    const east = column * FIELD_WIDE
    const north = row * FIELD_LONG
    const turn = 0.35 + layeredNoise(east, north, 2600, 2, 97) * 0.5
    const bentEast = east + layeredNoise(east, north, 420, 2, 83) * 90 + Math.sin(turn) * (row % 2) * 12
    const bentNorth = north + layeredNoise(east, north, 420, 2, 89) * 90 + Math.sin(turn) * east * 0.12
    return { east: bentEast, north: bentNorth }
  }
  const plots: FieldPlot[] = []
  const taken = new Set<string>()
  for (let row = -32; row < 32; row++) {
    for (let column = -50; column < 50; column++) {
      const wide = random() < 0.3 ? 2 : 1
      const tilled = random() < 0.3
      const keys = [`${column} ${row}`, `${column + wide - 1} ${row}`]
      if (keys.some((key) => taken.has(key))) continue
      const along = Array.from({ length: wide + 1 }, (_, share) => share)
      const corners = [
        ...along.map((share) => corner(column + share, row)),
        ...along.toReversed().map((share) => corner(column + share, row + 1)),
      ]
      if (!corners.every((point) => suits(ground, point))) continue
      for (const key of keys) taken.add(key)
      plots.push({ corners, tilled })
    }
  }
  return plots.filter((plot) => plots.some((other) => other !== plot && shareCorner(plot, other)))
}

function shareCorner(first: FieldPlot, second: FieldPlot): boolean {
  return first.corners.some((corner) =>
    second.corners.some((other) => corner.east === other.east && corner.north === other.north),
  )
}

/** How strongly a point wants to be wood: above 0 it is. */
export function woodland(
  ground: Ground,
  point: IslandPoint,
  ways: Nearness,
  houses: Nearness,
  fields: Nearness,
): number {
  const inside = fromShore(point)
  if (inside < 30) return -0.5
  const height = ground.heightAt(point)
  const patches = layeredNoise(point.east, point.north, 620, 4, 131)
  const high = softStep(110, 180, height)
  const apart =
    1 -
    softStep(9, 26, ways.metres(point)) +
    (1 - softStep(20, 50, houses.metres(point))) +
    (1 - softStep(6, 16, fields.metres(point)))
  const lake = lakeOval(point) < 1.25 ? 1 : 0
  return patches - 0.2 - high * 0.8 - apart * 0.7 - lake
}
