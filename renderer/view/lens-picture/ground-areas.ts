/** Areas of ground in the picture: all that lies below a line of slopes, and the water of a band. */
import type { ImagePoint } from './clip.ts'
import type { GroundBand } from './ground-bands.ts'
import type { GroundDrawing } from './ground-stand.ts'
import { lookPlace } from './look-place.ts'
import { outlinePath } from './pen.ts'
import { withoutStraight } from './without-straight.ts'

function placesOf(drawing: GroundDrawing, slopes: readonly number[]): ImagePoint[] {
  return slopes.flatMap((slope, index) => lookPlace(drawing, index, slope) ?? [])
}

/** Everything below a line from left to right. */
export function areaUnder(drawing: GroundDrawing, slopes: readonly number[]): string {
  const top = withoutStraight(placesOf(drawing, slopes))
  const [first, last] = [top[0], top.at(-1)]
  if (first === undefined || last === undefined) return ''
  const { sheet } = drawing
  const bottom = Math.max(sheet.bounds.bottom, first.y, last.y)
  return outlinePath([...top, { x: last.x, y: bottom }, { x: first.x, y: bottom }], sheet)
}

/** The water of a band as far as a cap lets it be seen: one area for each run of looks that meet it. */
export function waterArea(drawing: GroundDrawing, { water }: GroundBand, cap: readonly number[] | null): string {
  let path = ''
  let highs: ImagePoint[] = []
  let lows: ImagePoint[] = []
  const add = (index: number, low: number, high: number): void => {
    const [upper, lower] = [lookPlace(drawing, index, high), lookPlace(drawing, index, low)]
    if (upper === null || lower === null) return
    highs.push(upper)
    lows.push(lower)
  }
  const close = (): void => {
    if (highs.length > 1)
      path += outlinePath([...withoutStraight(highs), ...withoutStraight(lows).toReversed()], drawing.sheet)
    highs = []
    lows = []
  }
  for (const [index, found] of water.entries()) {
    const high = Math.min(found?.high ?? -Infinity, cap?.[index] ?? Infinity)
    if (found === null || high <= found.low) {
      close()
      continue
    }
    // A look stands for half the way to its neighbours.
    if (highs.length === 0) add(index - 0.5, found.low, high)
    add(index, found.low, high)
    if ((water[index + 1] ?? null) === null) add(index + 0.5, found.low, high)
  }
  close()
  return path
}
