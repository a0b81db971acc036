/** Angle of view of a rectilinear lens, 2 atan(d / 2v), from the image distance: at infinity v = f, nearer v = f (1 + m). */
import { degrees } from '#core/units/angle.ts'

/** Degrees across `side` millimetres of the sensor at `imageDistance` millimetres. */
export function angleOfView(side: number, imageDistance: number): number {
  return degrees(2 * Math.atan(side / (2 * imageDistance)))
}
