/** A lens in the bag: what it reaches, how wide it opens, how near it focuses. */

export interface Lens {
  readonly id: string
  readonly name: string
  /** Millimetres; equal to focalMax for a prime. */
  readonly focalMin: number
  readonly focalMax: number
  /** Widest f-number at the short end. */
  readonly widestAtMin: number
  /** Widest f-number at the long end. */
  readonly widestAtMax: number
  /** Smallest opening, as f-number. */
  readonly smallest: number
  /** Closest focus in metres from the sensor, as makers print it. */
  readonly closestFocus: number
  /** Grams; null when not known. */
  readonly weight: number | null
}

/** What the figures of a lens may be. */
export const LENS_LIMITS = {
  /** Millimetres. */
  focal: { least: 0.5, most: 10_000 },
  fNumber: { least: 0.5, most: 128 },
} as const

export function isPrime(lens: Lens): boolean {
  return lens.focalMin === lens.focalMax
}

export function reaches(lens: Lens, focalLength: number): boolean {
  // A hair of tolerance, so that a focal length solved to the very end of the zoom still counts as reached.
  return focalLength >= lens.focalMin * (1 - 1e-9) && focalLength <= lens.focalMax * (1 + 1e-9)
}

/**
 * Widest f-number at a focal length. Makers print the two ends only; between them the opening is taken to narrow evenly
 * in stops over the logarithm of the focal length (common practice, no source).
 */
export function widestAt(lens: Lens, focalLength: number): number {
  if (lens.focalMax <= lens.focalMin || lens.widestAtMin === lens.widestAtMax) return lens.widestAtMin
  const clamped = Math.min(lens.focalMax, Math.max(lens.focalMin, focalLength))
  const along = Math.log(clamped / lens.focalMin) / Math.log(lens.focalMax / lens.focalMin)
  return lens.widestAtMin * (lens.widestAtMax / lens.widestAtMin) ** along
}
