/** The demo island's outline and its first rough hills, as functions of the plane; the weather then carves them. */
import type { IslandPoint } from './island-frame.ts'
import { HARBOUR_PLAN, HILLS, LIGHTHOUSE_PLAN } from './island-places.ts'
import { layeredNoise, softStep } from './noise.ts'

/** Metres of the mapped rectangle each way from the middle. */
export const REACH_EAST = 4800
export const REACH_NORTH = 4000

const OUTLINE_SEED = 11
const SHORE_SEED = 23

/** The lesser of two distances with the crease between them rounded off over `soft` metres. */
function softLesser(first: number, second: number, soft: number): number {
  const share = Math.max(soft - Math.abs(first - second), 0) / soft
  return Math.min(first, second) - share * share * soft * 0.25
}

function softGreater(first: number, second: number, soft: number): number {
  return -softLesser(-first, -second, soft)
}

/** Metres from a point to a line between two others. */
function distanceToLine(point: IslandPoint, start: IslandPoint, end: IslandPoint): number {
  const east = end.east - start.east
  const north = end.north - start.north
  const along = ((point.east - start.east) * east + (point.north - start.north) * north) / (east * east + north * north)
  const share = Math.min(1, Math.max(0, along))
  return Math.hypot(point.east - start.east - share * east, point.north - start.north - share * north)
}

/** Easting of the sound's middle line. */
export function soundMiddle(north: number): number {
  return 420 + 260 * Math.sin((north - 330) / 1500)
}

/** Metres from the shore of the sound: negative over its water, which is narrowest at the bridge. */
function fromSound(point: IslandPoint): number {
  const off = point.east - soundMiddle(point.north)
  const away = Math.abs(point.north - 330) / 1000
  const south = point.north < 330
  const western = south ? 118 + 270 * away ** 1.3 + 110 * softStep(0, 0.5, away) : 118 + 110 * away ** 1.6
  const eastern = south ? 118 + 190 * away ** 1.7 : 118 + 140 * away ** 1.5
  const bays = layeredNoise(point.east, point.north, 950, 2, 71) * 300 * softStep(0.35, 1.3, away)
  return Math.abs(off) - (off < 0 ? western : eastern) + bays
}

/** Skerries: little rocks off the heads, by middle and reach, metres. */
const SKERRIES = [
  [880, -3120, 46],
  [960, -3220, 30],
  [790, -3050, 38],
  [3900, 1480, 60],
  [4080, 1390, 34],
  [-3950, 1900, 52],
  [-4120, 1800, 30],
  [-640, -2960, 34],
  [590, 2760, 30],
  [300, -1500, 26],
] as const

function fromSkerries(point: IslandPoint): number {
  let most = -1e9
  for (const [east, north, reach] of SKERRIES)
    most = Math.max(most, reach - Math.hypot(point.east - east, point.north - north))
  return most
}

/** About how many metres a point lies inside the shore; negative over the sea. */
export function fromShore(point: IslandPoint): number {
  const { east, north } = point
  const bend = layeredNoise(east, north, 2300, 4, OUTLINE_SEED)
  const radius = Math.hypot(east / 4150, north / 3050)
  let inside = (1 - radius) * 3050 + bend * 900
  inside = softGreater(
    inside,
    150 - distanceToLine(point, { east: -3000, north: 1500 }, { east: -3700, north: 1950 }),
    200,
  )
  inside = softLesser(inside, fromSound(point), 160)
  inside = softGreater(inside, 150 - distanceToLine(point, { east: 1700, north: -2150 }, LIGHTHOUSE_PLAN) * 1.15, 140)
  inside = softLesser(inside, Math.hypot(east + 2300, north + 2350) - 620, 220)
  inside = softLesser(inside, Math.hypot(east - 3350, north + 1050) - 430, 200)
  inside = softLesser(inside, Math.hypot(east - HARBOUR_PLAN.east, north - HARBOUR_PLAN.north) - 150, 70)
  inside = Math.max(inside, fromSkerries(point))
  const quiet = softStep(120, 420, Math.hypot(east - HARBOUR_PLAN.east, north - HARBOUR_PLAN.north))
  const bridged = softStep(80, 400, Math.hypot(east - 420, north - 330))
  return inside + layeredNoise(east, north, 260, 5, SHORE_SEED) * 62 * (0.25 + 0.75 * Math.min(quiet, bridged))
}

/** Metres above the sea toward which the land is lifted, before the weather. */
export function lift(point: IslandPoint): number {
  const pulledEast = point.east + layeredNoise(point.east, point.north, 1100, 3, 61) * 420
  const pulledNorth = point.north + layeredNoise(point.east, point.north, 1100, 3, 67) * 420
  let height = 26
  for (const hill of HILLS) {
    const off = Math.hypot(pulledEast - hill.at.east, pulledNorth - hill.at.north) / hill.reach
    height = softGreater(height, (hill.height * 1.15) / (1 + off * off * 1.1), 50)
  }
  const ridges = 1 - Math.abs(layeredNoise(point.east, point.north, 1300, 3, 37)) * 2
  return Math.max(2, height * (0.55 + ridges * 0.6))
}

/** Metres of cliff behind the shore: none in the harbour and on the beaches. */
export function cliff(point: IslandPoint): number {
  const wild = softStep(-0.25, 0.45, layeredNoise(point.east, point.north, 1400, 2, 53))
  const head =
    1 - softStep(250, 900, Math.hypot(point.east - LIGHTHOUSE_PLAN.east, point.north - LIGHTHOUSE_PLAN.north))
  return 2 + 16 * Math.max(wild, head)
}
