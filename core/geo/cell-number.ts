/** A number for each cell of a lattice, the same on every run and unlike its neighbours': what is strewn over a map goes by it. */

/** Mixes two lattice coordinates and a seed into an unsigned 32-bit number. */
export function cellNumber(column: number, row: number, seed = 0): number {
  let value = (Math.imul(column, 0x27d4eb2d) ^ Math.imul(row, 0x165667b1) ^ Math.imul(seed, 0x9e3779b1)) | 0
  value = Math.imul(value ^ (value >>> 15), 0x2c1b3c6d)
  value = Math.imul(value ^ (value >>> 12), 0x297a2d39)
  return (value ^ (value >>> 15)) >>> 0
}
