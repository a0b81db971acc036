/** Crops: the largest centred rectangle of given proportions within a frame. */

/** A crop's proportions, wide by high. */
export interface Crop {
  readonly wide: number
  readonly high: number
}

/** The crops in common use, wide : high. */
export const USUAL_CROPS: readonly Crop[] = [
  { wide: 3, high: 2 },
  { wide: 4, high: 3 },
  { wide: 1, high: 1 },
  { wide: 4, high: 5 },
  { wide: 9, high: 16 },
  { wide: 16, high: 9 },
]

/** Millimetres of the crop within a frame of `width` x `height` millimetres. */
export function cropSize(crop: Crop, width: number, height: number): { width: number; height: number } {
  const proportion = crop.wide / crop.high
  return width / height > proportion ? { width: height * proportion, height } : { width, height: width / proportion }
}
