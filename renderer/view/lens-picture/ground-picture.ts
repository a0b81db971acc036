/** The true ground in the picture: areas from far to near, before and behind what stands on it, each with its haze and softness. */
import type { View } from '#core/frame/projection.ts'
import { type Ridge, ridgesOf } from '#core/ground/ridges.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { type ImagePoint, clipLine } from './clip.ts'
import { type Footing, type GroundBand, REACHES, coverWithin, groundBands, seaSlope } from './ground-bands.ts'
import type { GroundLooks } from './ground-looks.ts'
import { lookPlace } from './look-place.ts'
import { type Sheet, outlinePath } from './pen.ts'
import type { ObstructionStrips } from './obstruction-strips.ts'

/** One filled area or, for `edge`, a line. */
export interface GroundPiece {
  /** `near` is the ground one stands on. */
  readonly kind: 'near' | 'land' | 'water' | 'edge'
  /** Metres. */
  readonly distance: number
  readonly path: string
}

export interface SoftGround {
  readonly deviation: number
  readonly pieces: readonly GroundPiece[]
}

export interface Waterline {
  readonly y: number
  readonly distance: number
}

export interface GroundPicture {
  /** Behind the farther of the two things, or all where nothing stands on it. */
  readonly behind: readonly SoftGround[]
  /** Before the farther thing, and behind the nearer. */
  readonly between: readonly SoftGround[]
  /** Before the nearer thing too; none where it hides nothing of it. */
  readonly before: readonly SoftGround[]
  /** Trees and walls. */
  readonly obstructions: ObstructionStrips
  /** From the horizon down: heights in the drawing at which the sea lies at distances, metres. */
  readonly waterline: readonly Waterline[]
  /** The area of the ground one stands on: what lies on it is cut by it. */
  readonly near: string
  /** The area of all ground before the farther thing; empty where there is none. */
  readonly front: string
}

export interface GroundThings {
  /** Metres for every look to the farther and to the nearer thing; null where there is none, or where nothing may hide it. */
  readonly farther: readonly number[] | null
  readonly nearer: readonly number[] | null
}

export interface GroundStand {
  readonly view: View
  readonly sheet: Sheet
  readonly footing: Footing
  /** Metres between the elevations. */
  readonly cell: number
  /** Units of softness at a distance. */
  readonly soft: (distance: number) => number
}

/** Units by which a band must stand out above the one before it, and a ridge below the sky, to be drawn. */
const LEAST_SEEN = 0.3
const LEAST_GAP = 1.5

interface Edges {
  readonly band: number
  readonly path: string
}

interface Drawing extends GroundStand {
  readonly seen: GroundLooks
  readonly bands: readonly GroundBand[]
  readonly ridges: readonly Ridge[]
}

function placesOf(drawing: Drawing, slopes: readonly number[]): ImagePoint[] {
  return slopes.flatMap((slope, index) => lookPlace(drawing, index, slope) ?? [])
}

/** Units by which a corner may lie off the straight line between its neighbours and be left out. */
const STRAIGHT = 0.04

function withoutStraight(points: readonly ImagePoint[]): ImagePoint[] {
  const kept: ImagePoint[] = []
  for (const [index, point] of points.entries()) {
    const [from, to] = [kept.at(-1), points[index + 1]]
    if (from !== undefined && to !== undefined && to.x > from.x) {
      const level = from.y + ((to.y - from.y) * (point.x - from.x)) / (to.x - from.x)
      if (Math.abs(level - point.y) < STRAIGHT) continue
    }
    kept.push(point)
  }
  return kept
}

/** Everything below a line from left to right. */
function areaUnder(drawing: Drawing, slopes: readonly number[]): string {
  const top = withoutStraight(placesOf(drawing, slopes))
  const [first, last] = [top[0], top.at(-1)]
  if (first === undefined || last === undefined) return ''
  const { sheet } = drawing
  const bottom = Math.max(sheet.bounds.bottom, first.y, last.y)
  return outlinePath([...top, { x: last.x, y: bottom }, { x: first.x, y: bottom }], sheet)
}

/** The water of a band as far as a cap lets it be seen: one area for each run of looks that meet it. */
function waterArea(drawing: Drawing, { water }: GroundBand, cap: readonly number[] | null): string {
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

/** Units across below which a piece of a ridge is but a crumb. */
const LEAST_RIDGE = 14

/** A line through points, as far as it lies in the drawing. */
function linePath(points: readonly ImagePoint[], { bounds }: Sheet): string {
  let path = ''
  let pen: ImagePoint | null = null
  for (const [index, to] of points.entries()) {
    const from = points[index - 1]
    const line = from === undefined ? null : clipLine(from, to, bounds)
    if (line === null) continue
    const [start, end] = line
    if (pen === null || start !== pen) path += `M${start.x.toFixed(1)} ${start.y.toFixed(1)}`
    path += `L${end.x.toFixed(1)} ${end.y.toFixed(1)}`
    pen = end
  }
  return path
}

/** The ridges as far as `shows` has them, each with the number of the band in which it comes nearest. */
function edgesOf(drawing: Drawing, shows: (index: number, distance: number) => boolean): Edges[] {
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
function standsOut({ bands, seen, sheet, footing }: Drawing, index: number, slope: number): boolean {
  if (slope < footing.slope) return false
  const sky = bands.at(-1)?.tops[index] ?? 0
  const top = seen.looks[index]?.slopes.at(-1) ?? 0
  return slope >= top - ROUNDING ? slope >= sky - ROUNDING : (sky - slope) * sheet.scale > LEAST_GAP
}

/** The areas of the bands from one down to another, cut at a cap where there is one. */
function piecesOf(
  drawing: Drawing,
  from: number,
  to: number,
  limit: readonly number[] | null,
  before: boolean,
): GroundPiece[] {
  const { bands, seen, sheet } = drawing
  const cap =
    before && limit !== null
      ? seen.looks.map((look, at) => coverWithin(look, limit[at] ?? Infinity, drawing.footing))
      : null
  const cut = (tops: readonly number[]): readonly number[] =>
    cap === null ? tops : tops.map((top, at) => Math.min(top, cap[at] ?? top))
  const shows = (index: number, distance: number): boolean =>
    limit === null || distance <= (limit[index] ?? Infinity) === before
  const edges = edgesOf(drawing, shows)
  const edgesIn = (band: number): string =>
    edges.flatMap((one) => (Math.max(one.band, to) === band ? one.path : [])).join('')
  const pieces: GroundPiece[] = []
  for (let at = from; at >= to; at--) {
    const band = bands[at]
    if (band === undefined) continue
    const { distance } = band
    const tops = cut(band.tops)
    const under = bands[at - 1]?.tops
    const out =
      under === undefined || tops.some((top, index) => (top - (under[index] ?? top)) * sheet.scale > LEAST_SEEN)
    if (!out && at !== to && at !== from) continue
    pieces.push(
      { kind: at === 0 ? 'near' : 'land', distance, path: areaUnder(drawing, tops) },
      { kind: 'water', distance, path: waterArea(drawing, band, cap) },
      { kind: 'edge', distance, path: edgesIn(at) },
    )
  }
  return pieces.filter(({ path }) => path !== '')
}

/** Neighbours of one softness together. */
function softly(pieces: readonly GroundPiece[], soft: (distance: number) => number): SoftGround[] {
  const groups: { deviation: number; pieces: GroundPiece[] }[] = []
  for (const piece of pieces) {
    const deviation = soft(piece.distance)
    const last = groups.at(-1)
    if (last?.deviation === deviation) last.pieces.push(piece)
    else groups.push({ deviation, pieces: [piece] })
  }
  return groups
}

/** Metres. */
const WATERLINES = [30_000, 12_000, 6_000, 3_000, 1_500, 700, 300, 100]

function waterlineOf(drawing: Drawing): Waterline[] {
  const { seen, view } = drawing
  const ahead = (view.bearing - seen.from) / seen.step
  return WATERLINES.flatMap((distance) => {
    const place = lookPlace(drawing, ahead, seaSlope(seen, distance))
    return place === null ? [] : { y: place.y, distance }
  })
}

export function groundPicture(
  seen: GroundLooks,
  stand: GroundStand,
  { farther, nearer }: GroundThings,
  obstructions: ObstructionStrips,
): GroundPicture {
  const bands = groundBands(seen, stand.footing)
  const ridges = ridgesOf(seen.looks, seen.from, seen.step, stand.cell)
  const drawing: Drawing = { ...stand, seen, bands, ridges }
  const last = bands.length - 1
  const bandOf = (distance: number): number => REACHES.findIndex((reach) => reach >= distance)
  const before = (limit: readonly number[] | null): GroundPiece[] =>
    limit === null ? [] : piecesOf(drawing, bandOf(Math.max(...limit)), 0, limit, true)
  const behind = piecesOf(drawing, last, farther === null ? 0 : bandOf(Math.min(...farther)), farther, false)
  const between = before(farther)
  const areas = between.filter(({ kind }) => kind === 'near' || kind === 'land')
  const own = (areas.length > 0 ? between : behind).findLast(({ kind }) => kind === 'near')
  return {
    behind: softly(behind, stand.soft),
    between: softly(between, stand.soft),
    before: softly(before(nearer), stand.soft),
    obstructions,
    waterline: waterlineOf(drawing),
    near: own?.path ?? '',
    front: areas[0]?.path ?? '',
  }
}
