/** The places of a scan: stopping ground sampled along its lines and over its areas, and the headings that the subject takes there. */
import { destination, geodesicDistance, geodesicLine } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { RADIANS_PER_DEGREE, turnBetween, wrapBearing } from '#core/units/angle.ts'
import { type PlaneShape, areaOf, planeBoxAround, holds, offPlane, onPlane, planeAt } from './drawn-shape.ts'
import { type KeptOutGround, keptOut, subjectKeptOut } from './kept-out.ts'
import type { ScanRequest } from './scan-request.ts'

export interface ScanPlace {
  /** Counts the places that are kept, in the order of the grounds. */
  readonly index: number
  readonly at: LatLon
  readonly ground: StoppingGround
  readonly headings: readonly number[]
}

/** A line with the lengths of its stretches; stretches without length are left out. */
export interface MeasuredLine {
  readonly stretches: readonly Stretch[]
  /** Metres. */
  readonly length: number
}

interface Stretch {
  readonly from: LatLon
  readonly to: LatLon
  readonly bearing: number
  /** Metres from the line's beginning to its own, and to its end. */
  readonly start: number
  readonly end: number
}

const measured = new WeakMap<readonly LatLon[], MeasuredLine>()

/** Measured once for as long as the points stay as they are: cost, troubles, samples and polishing all ask. */
export function measuredLine(points: readonly LatLon[]): MeasuredLine {
  const known = measured.get(points) ?? measureLine(points)
  measured.set(points, known)
  return known
}

function measureLine(points: readonly LatLon[]): MeasuredLine {
  const stretches: Stretch[] = []
  let length = 0
  points.forEach((from, index) => {
    const to = points[index + 1]
    if (to === undefined) return
    const { distance, bearing } = geodesicLine(from, to)
    if (bearing === null) return
    stretches.push({ from, to, bearing, start: length, end: length + distance })
    length += distance
  })
  return { stretches, length }
}

export interface OnLine {
  readonly at: LatLon
  /** Bearing of the line there, as it was drawn. */
  readonly bearing: number
}

/** Metres before a bend from which a point counts as on the stretch after it: rounding must not choose. */
const AT_BEND = 1e-6

/** The point so many metres along a line, kept within its ends; null for a line without length. */
export function pointAlong({ stretches, length }: MeasuredLine, metres: number): OnLine | null {
  const along = Math.min(length, Math.max(0, metres))
  const stretch = stretches.find(({ end }) => along < end - AT_BEND) ?? stretches.at(-1)
  return stretch === undefined ? null : pointOf(stretch, along)
}

function pointOf({ from, to, bearing, start, end }: Stretch, along: number): OnLine {
  const at = along >= end ? to : destination(from, bearing, along - start)
  const ahead = geodesicLine(at, to).bearing
  if (ahead !== null) return { at, bearing: ahead }
  const back = geodesicLine(at, from).bearing
  return { at, bearing: back === null ? bearing : wrapBearing(back + 180) }
}

/** Points at so many equal distances along a line, its ends among them: one walk from stretch to stretch. */
function pointsAlong({ stretches, length }: MeasuredLine, count: number): OnLine[] {
  const points: OnLine[] = []
  let on = 0
  for (let index = 0; index < count; index++) {
    const along = (length * index) / (count - 1)
    while (on < stretches.length - 1 && along >= (stretches[on]?.end ?? 0) - AT_BEND) on++
    const stretch = stretches[on]
    if (stretch !== undefined) points.push(pointOf(stretch, along))
  }
  return points
}

/** Metres along a line at which it comes nearest to a place. */
export function alongAt({ stretches }: MeasuredLine, at: LatLon): number {
  let [nearest, along] = [Infinity, 0]
  for (const { from, bearing, start, end } of stretches) {
    const { distance, bearing: toward } = geodesicLine(from, at)
    const ahead = toward === null ? 0 : distance * Math.cos(turnBetween(bearing, toward) * RADIANS_PER_DEGREE)
    const here = start + Math.min(end - start, Math.max(0, ahead))
    const off = geodesicDistance(destination(from, bearing, here - start), at)
    if (off < nearest) [nearest, along] = [off, here]
  }
  return along
}

/** Samples along a line of a length: its ends and as many between them, evenly, as keep them no farther apart than a step. */
export function samplesAlong(length: number, step: number): number {
  return Math.max(1, Math.ceil(length / step - 1e-9)) + 1
}

/** How many headings a full turn is cut into. */
export function turnSamples(step: number): number {
  return Math.max(1, Math.round(360 / step))
}

function allRound(step: number): number[] {
  const count = turnSamples(step)
  return Array.from({ length: count }, (_, index) => (index * 360) / count)
}

/** Headings on a line of a bearing. */
function headingsAlong({ turn }: StoppingGround, bearing: number, round: readonly number[]): readonly number[] {
  if (turn === 'free') return round
  return turn === 'along' ? [bearing] : [bearing, wrapBearing(bearing + 180)]
}

interface Sampled {
  readonly at: LatLon
  readonly headings: readonly number[]
}

function sampledLine(ground: StoppingGround, step: number, round: readonly number[]): Sampled[] {
  const line = measuredLine(ground.points)
  if (line.length === 0) return []
  return pointsAlong(line, samplesAlong(line.length, step)).map(({ at, bearing }) => ({
    at,
    headings: headingsAlong(ground, bearing, round),
  }))
}

interface Cells {
  readonly columns: number
  readonly rows: number
  /** Square metres of all of them. */
  readonly box: number
}

/** The cells laid over an area, whose middles are its samples. */
export function cellsOver(shape: PlaneShape, step: number): Cells {
  const { west, east, south, north } = planeBoxAround(shape)
  const along = (length: number): number => Math.max(1, Math.round(length / step))
  return { columns: along(east - west), rows: along(north - south), box: (east - west) * (north - south) }
}

/** A step halved so often that an area too narrow for it has samples too. */
const HALVINGS = 5

function cellMiddles(shape: PlaneShape, step: number): (readonly [number, number])[] {
  const { west, east, south, north } = planeBoxAround(shape)
  for (let halving = 0; halving <= HALVINGS; halving++) {
    const { columns, rows } = cellsOver(shape, step / 2 ** halving)
    const middles: (readonly [number, number])[] = []
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const x = west + ((column + 0.5) * (east - west)) / columns
        const y = south + ((row + 0.5) * (north - south)) / rows
        if (holds(shape, { east: x, north: y })) middles.push([x, y])
      }
    }
    if (middles.length > 0) return middles
  }
  return []
}

function sampledArea({ points }: StoppingGround, step: number, round: readonly number[]): Sampled[] {
  const [first] = points
  if (first === undefined || points.length < 3) return []
  const plane = planeAt(first)
  const shape = points.map((at) => onPlane(plane, at))
  if (areaOf(shape) === 0) return []
  return cellMiddles(shape, step).map(([east, north]) => ({ at: offPlane(plane, east, north), headings: round }))
}

/** Whether an area holds a place. */
export function holdsPlace({ points }: StoppingGround, at: LatLon): boolean {
  const plane = planeAt(at)
  return holds(
    points.map((corner) => onPlane(plane, corner)),
    { east: 0, north: 0 },
  )
}

/** One ground's samples, keep-outs for the subject taken out. */
export function sampledPlaces(
  ground: StoppingGround,
  request: Pick<ScanRequest, 'steps'>,
  out: KeptOutGround,
): Sampled[] {
  const round = allRound(request.steps.heading)
  const sampled =
    ground.form === 'line'
      ? sampledLine(ground, request.steps.place, round)
      : sampledArea(ground, request.steps.place, round)
  return sampled.filter(({ at }) => !subjectKeptOut(out, at))
}

/** The keep-outs of a scan, on a plane at its ground. */
export function keptOutOf({ shoot, spot }: Pick<ScanRequest, 'shoot' | 'spot'>): KeptOutGround {
  return keptOut(shoot.keepOuts, shoot.stoppingGround[0]?.points[0] ?? spot.stop.at)
}

/** All places, always in the same order. */
export function scanPlaces(request: Pick<ScanRequest, 'shoot' | 'spot' | 'steps'>): ScanPlace[] {
  const out = keptOutOf(request)
  return request.shoot.stoppingGround
    .flatMap((ground) => sampledPlaces(ground, request, out).map((sampled) => ({ ...sampled, ground })))
    .map((place, index) => ({ ...place, index }))
}
