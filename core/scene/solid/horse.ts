/** The horse: a rounded trunk on four legs, neck raised, mane and tail in ink. */
import type { Part, Solid } from '#core/scene/solid.ts'
import type { Subject } from '#core/scene/subject.ts'
import { type CrossRow, at, barrel, divide, limb, part, smoothed } from './shape.ts'

type Place = readonly [ahead: number, up: number, thick: number]

export function horseSolid(size: Subject): Solid {
  const { length: l, width: w, height: h } = size
  const line = (material: 'hue' | 'ink', right: number, places: readonly Place[]): ReturnType<typeof limb> =>
    limb(material, ...places.map(([ahead, up, thick]) => [at(ahead * l, right * w, up * h), thick * h] as const))
  const foreLeg = (right: number, step: number): Part =>
    part(
      line('hue', right, [
        [0.19, 0.5, 0.11],
        [0.19 + step * 0.3, 0.31, 0.06],
        [0.185 + step * 0.7, 0.17, 0.04],
        [0.19 + step, 0.05, 0.038],
      ]),
      line('ink', right, [
        [0.19 + step, 0.035, 0.042],
        [0.2 + step, 0.016, 0.055],
      ]),
    )
  const hindLeg = (right: number, step: number): Part =>
    part(
      line('hue', right, [
        [-0.26, 0.53, 0.16],
        [-0.255 + step * 0.3, 0.4, 0.1],
        [-0.31 + step * 0.6, 0.265, 0.055],
        [-0.295 + step, 0.13, 0.04],
        [-0.285 + step, 0.05, 0.038],
      ]),
      line('ink', right, [
        [-0.285 + step, 0.035, 0.042],
        [-0.275 + step, 0.016, 0.055],
      ]),
    )
  const rows: readonly CrossRow[] = [
    [0.285 * l, 0, 0.61 * h, 0.1 * w, 0.05 * h],
    [0.265 * l, 0, 0.605 * h, 0.28 * w, 0.11 * h],
    [0.2 * l, 0, 0.6 * h, 0.41 * w, 0.15 * h],
    [0.08 * l, 0, 0.59 * h, 0.48 * w, 0.152 * h],
    [-0.08 * l, 0, 0.59 * h, 0.5 * w, 0.14 * h],
    [-0.2 * l, 0, 0.615 * h, 0.47 * w, 0.14 * h],
    [-0.3 * l, 0, 0.625 * h, 0.4 * w, 0.12 * h],
    [-0.345 * l, 0, 0.615 * h, 0.22 * w, 0.075 * h],
    [-0.355 * l, 0, 0.61 * h, 0.08 * w, 0.03 * h],
  ]
  const trunk = barrel('hue', smoothed(rows, 1), 24)
  const neck = part(
    line('hue', 0, [
      [0.18, 0.63, 0.24],
      [0.255, 0.71, 0.185],
      [0.31, 0.8, 0.135],
      [0.355, 0.885, 0.1],
    ]),
  )
  const head = part(
    line('hue', 0, [
      [0.36, 0.9, 0.1],
      [0.4, 0.855, 0.1],
      [0.47, 0.755, 0.06],
      [0.478, 0.735, 0.055],
    ]),
    line('hue', 0.1, [
      [0.35, 0.93, 0.035],
      [0.358, 0.988, 0.014],
    ]),
    line('hue', -0.1, [
      [0.35, 0.93, 0.035],
      [0.358, 0.988, 0.014],
    ]),
  )
  const mane = part(
    line('ink', 0, [
      [0.375, 0.945, 0.03],
      [0.33, 0.92, 0.045],
      [0.27, 0.835, 0.055],
      [0.2, 0.74, 0.04],
    ]),
  )
  const tail = part(
    line('ink', 0, [
      [-0.35, 0.665, 0.04],
      [-0.42, 0.6, 0.065],
      [-0.455, 0.44, 0.085],
      [-0.46, 0.27, 0.03],
    ]),
  )
  const legs: Solid = [foreLeg(0.24, 0.02), foreLeg(-0.24, -0.035), hindLeg(0.24, -0.03), hindLeg(-0.24, 0.035)]
  const fore: Solid = [neck, head, mane]
  const rest: Solid = [divide(at(-0.34 * l, 0, 0.5 * h), at(-1, 0, 0), [tail], [part(trunk)])]
  const upper: Solid = [divide(at(0.27 * l, 0, 0.6 * h), at(1, 0, 0.6), fore, rest)]
  return [divide(at(0, 0, 0.5 * h), at(0, 0, 1), upper, legs)]
}
