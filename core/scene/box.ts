/** The subject as a box: its corners in the frame of the place where it stops. */
import type { Subject } from './subject.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'

/** A point of the subject: metres ahead of its centre (toward its front), to its right, above the ground. */
export function subjectPoint(heading: number, ahead: number, right: number, up: number): LocalPoint {
  const turn = heading * RADIANS_PER_DEGREE
  const sin = Math.sin(turn)
  const cos = Math.cos(turn)
  return { east: sin * ahead + cos * right, north: cos * ahead - sin * right, up }
}

/** Where a point beside the subject's centre lies to it: metres ahead, toward its front, and to its right. */
export function subjectSides(
  heading: number,
  { east, north }: Pick<LocalPoint, 'east' | 'north'>,
): { readonly ahead: number; readonly right: number } {
  const turn = heading * RADIANS_PER_DEGREE
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)]
  return { ahead: sin * east + cos * north, right: cos * east - sin * north }
}

/** The eight corners: four on the ground, then the four above them; front right, front left, rear left, rear right. */
export function boxCorners(subject: Subject, heading: number): LocalPoint[] {
  const ahead = subject.length / 2
  const right = subject.width / 2
  return [0, subject.height].flatMap((up) => [
    subjectPoint(heading, ahead, right, up),
    subjectPoint(heading, ahead, -right, up),
    subjectPoint(heading, -ahead, -right, up),
    subjectPoint(heading, -ahead, right, up),
  ])
}
