/** The true ground in the picture: areas from far to near, before and behind what stands on it, each with its haze and softness. */
import { ridgesOf } from '#core/ground/ridges.ts'
import { areaUnder, waterArea } from './ground-areas.ts'
import { REACHES, coverWithin, groundBands, seaSlope } from './ground-bands.ts'
import type { GroundLooks } from './ground-looks.ts'
import type { GroundDrawing, GroundStand } from './ground-stand.ts'
import { lookPlace } from './look-place.ts'
import type { ObstructionStrips } from './obstruction-strips.ts'
import { ridgeEdges } from './ridge-edges.ts'

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

/** Units by which a band must stand out above the one before it to be drawn. */
const LEAST_SEEN = 0.3

/** The areas of the bands from one down to another, cut at a cap where there is one. */
function piecesOf(
  drawing: GroundDrawing,
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
  const edges = ridgeEdges(drawing, shows)
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

function waterlineOf(drawing: GroundDrawing): Waterline[] {
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
  const drawing: GroundDrawing = { ...stand, seen, bands, ridges }
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
