/** Names of directions as people say them: the eight points of the compass. */
import { wrapBearing } from './angle.ts'

export const COMPASS_NAMES = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const
export type CompassName = (typeof COMPASS_NAMES)[number]

/** The point of the compass nearest to a bearing. */
export function compassName(bearing: number): CompassName {
  const point = Math.round(wrapBearing(bearing) / 45) % COMPASS_NAMES.length
  return COMPASS_NAMES[point] ?? 'north'
}
