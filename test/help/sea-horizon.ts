/** How far the sea is seen, as navigators have it (Bowditch, American Practical Navigator): 1.17 nautical miles by the root of the feet. */

/** Metres. */
export const FOOT = 0.3048
export const NAUTICAL_MILE = 1852

/** Feet of the eye above the sea, and nautical miles to its horizon. */
export const SEA_HORIZON = [
  [6, 2.9],
  [10, 3.7],
  [16, 4.7],
  [50, 8.3],
  [100, 11.7],
  [125, 13.1],
] as const

/** The refraction that is in them, on the mean sphere: some 0.173. */
export const NAVIGATORS_REFRACTION = 1 - (2 * 6_371_008.8 * FOOT) / (1.17 * NAUTICAL_MILE) ** 2
