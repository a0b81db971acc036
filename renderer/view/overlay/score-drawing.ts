/** The score along lines and over areas as ink: thicker or larger is better, dotted where nothing meets the musts. */
import type { DrawnForm } from '#core/record/stopping-ground.ts'
import type { PlaceFound } from '#core/scan/scan-found.ts'
import { type Box, type PlanView, type Point, distanceBetween } from '#renderer/view/drawing/plan-view.ts'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { inset } from '#renderer/view/drawing/pixel-lines.ts'

/** Steps of thickness and size that the eye tells apart. */
export const SCORE_CLASSES = 4
/** Scores nearer together than this, all in all, are not spread over the classes: the difference would be made up. */
const LEAST_SPREAD = 0.08
/** Pixels along a line, and across an area, within which places are told by their best. */
const FINEST = 4

export interface ScoreRange {
  readonly least: number
  readonly most: number
}

/** Null where nothing was found. */
export function scoreRange(places: readonly PlaceFound[]): ScoreRange | null {
  let [least, most] = [Infinity, -Infinity]
  for (const { score } of places) {
    if (score === null) continue
    least = Math.min(least, score)
    most = Math.max(most, score)
  }
  return most < least ? null : { least: Math.min(least, most - LEAST_SPREAD), most }
}

/** 0 to SCORE_CLASSES - 1, the best last. */
export function scoreClass(score: number, { least, most }: ScoreRange): number {
  const share = (score - least) / (most - least)
  return Math.max(0, Math.min(SCORE_CLASSES - 1, Math.floor(share * SCORE_CLASSES)))
}

export interface ScoreDrawing {
  /** Paths by class. */
  readonly lines: readonly string[]
  /** Filled squares by class. */
  readonly squares: readonly string[]
  /** Where nothing meets the musts: a line to be dotted, and the dots of areas. */
  readonly none: string
  readonly noneDots: string
}

interface Pieces {
  readonly lines: string[]
  readonly squares: string[]
  none: string
  noneDots: string
}

export interface ScoreGround {
  readonly id: string
  readonly form: DrawnForm
}

/** `step` in metres between the places. */
export function drawScores(
  places: readonly PlaceFound[],
  grounds: readonly ScoreGround[],
  step: number,
  view: PlanView,
): ScoreDrawing {
  const range = scoreRange(places)
  const pieces: Pieces = { lines: emptyClasses(), squares: emptyClasses(), none: '', noneDots: '' }
  const byGround = Map.groupBy(places, ({ ground }) => ground)
  for (const { id, form } of grounds) {
    const own = byGround.get(id)
    if (own === undefined) continue
    if (form === 'line') addLine(own, range, step, view, pieces)
    else addArea(own, range, step, view, pieces)
  }
  return pieces
}

function emptyClasses(): string[] {
  return Array.from({ length: SCORE_CLASSES }, () => '')
}

function within({ x, y }: Point, box: Box): boolean {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom
}

function better(one: number | null, other: number | null): number | null {
  if (one === null || other === null) return one ?? other
  return Math.max(one, other)
}

/** The stretch of a place reaches half way to its neighbours; where those are not known yet, half a step. */
function addLine(
  places: readonly PlaceFound[],
  range: ScoreRange | null,
  step: number,
  view: PlanView,
  pieces: Pieces,
): void {
  const room = inset(view.box, -60)
  const points = places.map(({ at }) => view.toPoint(at))
  const first = places[0]
  if (first === undefined) return
  const reach = (step * view.pixelsPerMetre(first.at)) / 2
  let open: Point[] = []
  let score: number | null = null
  const close = (): void => {
    if (open.length > 1 && open.some((point) => within(point, room))) draw(open, score, range, pieces)
    open = []
    score = null
  }
  places.forEach((place, index) => {
    const at = points[index]
    if (at === undefined) return
    const joined = (other: number): boolean => isNext(place, places[other], at, points[other], reach)
    const before = edgeTo(at, points[index - 1], joined(index - 1), reach)
    const after = edgeTo(at, points[index + 1], joined(index + 1), reach)
    if (open.length === 0) open.push(before ?? at)
    open.push(at)
    score = better(score, place.score)
    if (after !== null) open.push(after)
    // A place with neither neighbour known is told by a stretch of its own size.
    if (before === null && after === null) open.push({ x: at.x + Math.max(reach, 1), y: at.y })
    const long = distanceBetween(open[0] ?? at, open.at(-1) ?? at) >= FINEST
    if (long || !joined(index + 1)) close()
  })
  close()
}

/** Steps between two places of a line beyond which something lies between them where nobody may stop. */
const NEXT_WITHIN = 1.5

function isNext(
  one: PlaceFound,
  other: PlaceFound | undefined,
  at: Point,
  to: Point | undefined,
  half: number,
): boolean {
  if (other === undefined || to === undefined || Math.abs(other.place - one.place) !== 1) return false
  return distanceBetween(at, to) <= Math.max(1, 2 * half * NEXT_WITHIN)
}

function edgeTo(at: Point, other: Point | undefined, joined: boolean, reach: number): Point | null {
  if (other === undefined) return null
  const apart = distanceBetween(at, other)
  if (apart === 0) return null
  const far = joined ? apart / 2 : Math.min(apart / 2, reach)
  return { x: at.x + ((other.x - at.x) * far) / apart, y: at.y + ((other.y - at.y) * far) / apart }
}

function draw(points: readonly Point[], score: number | null, range: ScoreRange | null, pieces: Pieces): void {
  const path = linePath(points, false)
  if (score === null || range === null) pieces.none += path
  else {
    const kind = scoreClass(score, range)
    pieces.lines[kind] = (pieces.lines[kind] ?? '') + path
  }
}

/** Share of its cell that a square of each class fills. */
const SIZES = [0.34, 0.52, 0.7, 0.9]
const LEAST_SQUARE = 2.5

function addArea(
  places: readonly PlaceFound[],
  range: ScoreRange | null,
  step: number,
  view: PlanView,
  pieces: Pieces,
): void {
  const room = inset(view.box, -20)
  const first = places[0]
  if (first === undefined) return
  const cell = Math.max(step * view.pixelsPerMetre(first.at), FINEST)
  const cells = new Map<string, { readonly at: Point; readonly score: number | null }>()
  const crowded = step * view.pixelsPerMetre(first.at) < FINEST
  for (const place of places) {
    const at = view.toPoint(place.at)
    if (!within(at, room)) continue
    const key = crowded ? `${Math.floor(at.x / cell)} ${Math.floor(at.y / cell)}` : String(place.place)
    const before = cells.get(key)
    if (before === undefined) cells.set(key, { at, score: place.score })
    else if (better(before.score, place.score) !== before.score) cells.set(key, { at, score: place.score })
  }
  for (const { at, score } of cells.values()) {
    if (score === null || range === null) pieces.noneDots += `M${figure(at.x)},${figure(at.y)}h0`
    else {
      const kind = scoreClass(score, range)
      const side = Math.max(LEAST_SQUARE, cell * (SIZES[kind] ?? 1))
      pieces.squares[kind] =
        (pieces.squares[kind] ?? '') +
        `M${figure(at.x - side / 2)},${figure(at.y - side / 2)}h${figure(side)}v${figure(side)}h${figure(-side)}Z`
    }
  }
}
