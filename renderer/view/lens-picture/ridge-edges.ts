/** The edges of ridges as lines in the picture: where they stand out before what lies behind them. */
import { clipSegment } from '#core/frame/line-in-box.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import type { ImagePoint } from './clip.ts'
import { REACHES } from './ground-bands.ts'
import type { GroundDrawing } from './ground-stand.ts'
import { lookPlace } from './look-place.ts'
import type { Sheet } from './pen.ts'
import { withoutStraight } from './without-straight.ts'

export interface RidgeEdge {
  readonly band: number
  readonly path: string
}

/** Units by which an edge must stand out below the sky to be drawn. */
const LEAST_GAP = 1.5

/** Units across below which a piece of a ridge is but a crumb. */
const LEAST_RIDGE = 14

/** A line through points, as far as it lies in the drawing. */
function linePath(points: readonly ImagePoint[], { bounds }: Sheet): string {
  let path = ''
  let pen: ImagePoint | null = null
  for (const [index, to] of points.entries()) {
    const from = points[index - 1]
    const line = from === undefined ? null : clipSegment(from, to, bounds)
    if (line === null) continue
    const [start, end] = line
    if (pen === null || start.x !== pen.x || start.y !== pen.y) path += `M${start.x.toFixed(1)} ${start.y.toFixed(1)}`
    path += `L${end.x.toFixed(1)} ${end.y.toFixed(1)}`
    pen = end
  }
  return path
}

/** The ridges as far as `shows` has them, each with the number of the band in which it comes nearest. */
export function ridgeEdges(drawing: GroundDrawing, shows: (index: number, distance: number) => boolean): RidgeEdge[] {
  const { seen, ridges, sheet } = drawing
  return ridges.map(({ azimuth, altitudes, distances }) => {
    const first = Math.round((azimuth - seen.from) / seen.step)
    let [path, nearest] = ['', Infinity]
    let run: ImagePoint[] = []
    const close = (): void => {
      const [from, to] = [run[0], run.at(-1)]
      if (from !== undefined && to !== undefined && to.x - from.x > LEAST_RIDGE)
        path += linePath(withoutStraight(run), sheet)
      run = []
    }
    for (const [at, altitude] of altitudes.entries()) {
      const distance = distances[at] ?? 0
      const slope = Math.tan(altitude * RADIANS_PER_DEGREE)
      const drawn = shows(first + at, distance) && standsOut(drawing, first + at, slope)
      const place = drawn ? lookPlace(drawing, first + at, slope) : null
      if (place === null) close()
      else {
        run.push(place)
        nearest = Math.min(nearest, distance)
      }
    }
    close()
    return { band: REACHES.findIndex((reach) => reach >= nearest), path }
  })
}

/** A difference of slopes that is rounding. */
const ROUNDING = 1e-9

/**
 * Whether an edge is far enough below the sky to be told from it, or is itself the skyline and not where the elevations end; what
 * lies under the subject's own ground is not seen.
 */
function standsOut({ bands, seen, sheet, footing }: GroundDrawing, index: number, slope: number): boolean {
  if (slope < footing.slope) return false
  const sky = bands.at(-1)?.tops[index] ?? 0
  const top = seen.looks[index]?.slopes.at(-1) ?? 0
  return slope >= top - ROUNDING ? slope >= sky - ROUNDING : (sky - slope) * sheet.scale > LEAST_GAP
}
