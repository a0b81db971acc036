/** Grounds for tests: mountains from seeded noise (ridges, valleys, an exactly flat lake, slopes to 50 degrees) and shapes known exactly. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'

/** Metres above the sea of the lake's surface: every cell that would be lower. */
export const LAKE = 420

/** A grid whose heights are a function of metres east and north of its centre, which is the middle cell when `size` is odd. */
export function groundOf(
  size: number,
  cell: number,
  height: (east: number, north: number) => number,
  centre: LatLon = { lat: 46.9, lon: 10.3 },
): ElevationGrid {
  const reach = ((size - 1) / 2) * cell
  const heights = new Float32Array(size * size)
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      heights[row * size + column] = height(column * cell - reach, reach - row * cell)
    }
  }
  return { centre, cell, columns: size, rows: size, west: -reach, north: reach, heights }
}

/** Mountains: one fixed function of east, north and the seed, so that a smaller grid is the middle of a larger one. */
export function mountains(size: number, cell = 10, seed = 1): ElevationGrid {
  return groundOf(size, cell, (east, north) => mountainHeight(east / 1000, north / 1000, seed))
}

/** Metres at kilometres east and north. */
function mountainHeight(x: number, y: number, seed: number): number {
  const bentX = x + 1.2 * noise(x / 5.7 + 11.3, y / 5.7 - 4.7, seed + 101)
  const bentY = y + 1.2 * noise(x / 5.7 - 7.9, y / 5.7 + 2.1, seed + 102)
  const valley = Math.min(1, Math.abs(noise(bentX / 8.1 + 40.1, bentY / 8.1 + 17.7, seed + 201)) / 0.2)
  const risen = valley * valley * (3 - 2 * valley)
  const floor = 405 + 70 * noise(x / 3.9, y / 3.9, seed + 202)
  const height =
    floor + (crests(bentX, bentY, seed) - floor) * (0.03 + 0.97 * risen) + roughness(x, y, seed) * (0.2 + 2 * risen)
  return Math.max(LAKE, Math.round(height * 128) / 128)
}

/** Seven octaves of folded noise, each weighed by the one before: sharp crests, smooth hollows. */
function crests(x: number, y: number, seed: number): number {
  let [sum, share, often, weight] = [0, 1, 1 / 6.1, 1]
  for (let octave = 0; octave < 7; octave++) {
    const folded = 1 - Math.abs(noise(x * often + 3.7 * octave, y * often - 5.1 * octave, seed + octave))
    const crest = folded * folded * weight
    sum += crest * share
    weight = Math.min(1, crest * 1.7)
    share *= 0.47
    often *= 2.07
  }
  return 300 + 900 * sum
}

function roughness(x: number, y: number, seed: number): number {
  let [sum, share, often] = [0, 1, 10]
  for (let octave = 0; octave < 4; octave++) {
    sum += share * noise(x * often + 9.1 * octave, y * often - 2.3 * octave, seed + 301 + octave)
    share *= 0.55
    often *= 1.9
  }
  return sum
}

/** Gradient noise, about -1..1; coordinates in lattice units. */
function noise(x: number, y: number, seed: number): number {
  const [column, row] = [Math.floor(x), Math.floor(y)]
  const [u, v] = [x - column, y - row]
  const [su, sv] = [smooth(u), smooth(v)]
  const low = mix(lean(column, row, u, v, seed), lean(column + 1, row, u - 1, v, seed), su)
  const high = mix(lean(column, row + 1, u, v - 1, seed), lean(column + 1, row + 1, u - 1, v - 1, seed), su)
  return mix(low, high, sv) * Math.SQRT2
}

function smooth(share: number): number {
  return share * share * share * (share * (share * 6 - 15) + 10)
}

function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share
}

const LEANS = Array.from({ length: 32 }, (_, index) => ((index + 0.5) / 32) * 2 * Math.PI)
const LEAN_EAST = LEANS.map((angle) => Math.cos(angle))
const LEAN_NORTH = LEANS.map((angle) => Math.sin(angle))

/** Height at an offset from a lattice point whose slope leans one of 32 ways. */
function lean(column: number, row: number, u: number, v: number, seed: number): number {
  const way = scramble(column, row, seed) >>> 27
  return (LEAN_EAST[way] ?? 0) * u + (LEAN_NORTH[way] ?? 0) * v
}

function scramble(column: number, row: number, seed: number): number {
  let bits = Math.imul(column, 0x9e3779b1) ^ Math.imul(row, 0x85ebca77) ^ (Math.imul(seed, 0xc2b2ae3d) + 0x27d4eb2f)
  bits = Math.imul(bits ^ (bits >>> 15), 0x2c1b3c6d)
  bits = Math.imul(bits ^ (bits >>> 12), 0x297a2d39)
  return bits ^ (bits >>> 15)
}
