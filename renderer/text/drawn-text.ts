/** Drawn ground in words: its name, its size, and what is to be known of it at a glance. */
import { ringArea } from '#core/geo/shape.ts'
import { lineLength } from '#core/geo/line-length.ts'
import { type DrawnShape, type DrawnSort, drawnOf } from '#core/record/drawn-ground.ts'
import type { KeepOut } from '#core/record/keep-out.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { area, metres } from './figure.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'

export function drawnName(shoot: Shoot, sort: DrawnSort, index: number): string {
  const name = drawnOf(shoot, sort)[index]?.name.trim() ?? ''
  return name === '' ? say.unnamed[sort](index + 1) : name
}

/** Sizes of shapes already measured: an edit of another one keeps them. */
const measured = new WeakMap<DrawnShape['points'], number>()

/** Length of a line or area of an outline. */
export function sizeText({ form, points }: DrawnShape, units: UnitSystem): string {
  let size = measured.get(points)
  if (size === undefined) {
    size = form === 'line' ? lineLength(points) : ringArea(points)
    measured.set(points, size)
  }
  return form === 'line' ? metres(size, units) : area(size, units)
}

export function stoppingText(ground: StoppingGround): string {
  return say.turns[ground.form === 'area' ? 'free' : ground.turn]
}

export function keepOutText(keepOut: KeepOut, units: UnitSystem): string {
  const parts = [
    say.kinds[keepOut.kind],
    keepOut.form === 'line' ? say.wide(metres(keepOut.width, units)) : null,
    keepOut.whom === 'both' ? null : say.whoms[keepOut.whom],
    keepOut.noCrossing ? say.noCrossingShort : null,
  ]
  return parts.filter((part) => part !== null).join(', ')
}
