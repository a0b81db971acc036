/** Seeded noise and a seeded random sequence, so that the demo island comes out alike on every run. */
import { cellNumber } from '#core/geo/cell-number.ts'

const DIRECTIONS = Array.from({ length: 64 }, (_, step) => {
  const angle = (step / 64) * Math.PI * 2
  return [Math.cos(angle), Math.sin(angle)] as const
})

function slopeAt(column: number, row: number, seed: number, east: number, north: number): number {
  const direction = DIRECTIONS[cellNumber(column, row, seed) & 63]
  return direction === undefined ? 0 : direction[0] * east + direction[1] * north
}

/** Gradient noise, about -0.7..0.7, one feature per unit. */
export function gradientNoise(x: number, y: number, seed: number): number {
  const column = Math.floor(x)
  const row = Math.floor(y)
  const east = x - column
  const north = y - row
  const blendEast = east * east * east * (east * (east * 6 - 15) + 10)
  const blendNorth = north * north * north * (north * (north * 6 - 15) + 10)
  const southWest = slopeAt(column, row, seed, east, north)
  const southEast = slopeAt(column + 1, row, seed, east - 1, north)
  const northWest = slopeAt(column, row + 1, seed, east, north - 1)
  const northEast = slopeAt(column + 1, row + 1, seed, east - 1, north - 1)
  const south = southWest + (southEast - southWest) * blendEast
  const top = northWest + (northEast - northWest) * blendEast
  return south + (top - south) * blendNorth
}

/** Octaves of gradient noise, each half as large and twice as fine; `size` is the coarsest feature in metres. */
export function layeredNoise(x: number, y: number, size: number, octaves: number, seed: number): number {
  let sum = 0
  let share = 1
  let scale = 1 / size
  for (let octave = 0; octave < octaves; octave++) {
    sum += share * gradientNoise(x * scale, y * scale, seed + octave * 101)
    share *= 0.5
    scale *= 2
  }
  return sum
}

/** A sequence of numbers 0..1 that depends on the seed alone. */
export function randomSequence(seed: number): () => number {
  let step = 0
  return () => cellNumber(step++, 7919, seed) / 4294967296
}

/** 0 below `from`, 1 above `to`, with soft ends. */
export function softStep(from: number, to: number, value: number): number {
  const share = Math.min(1, Math.max(0, (value - from) / (to - from)))
  return share * share * (3 - 2 * share)
}
