/** What is drawn on the ground for a scan, stopping ground and keep-outs alike: its shape, what is wrong with one, and changes of it in a shoot. */
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { ringCrossesItself } from '#core/geo/ring-crossing.ts'
import { ringArea } from '#core/geo/shape.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type KeepOut, type KeepOutKind, USUAL_WIDTH } from './keep-out.ts'
import type { Shoot } from './shoot.ts'
import type { DrawnForm, StoppingGround } from './stopping-ground.ts'

/** The two sorts of drawn ground: where the subject may stop, and where nobody may stand. */
export type DrawnSort = 'stopping' | 'keep-out'

export interface DrawnShape {
  readonly form: DrawnForm
  /** Of a line from end to end; of an area its corners in order, the first not repeated. */
  readonly points: readonly LatLon[]
}

export type Drawn = StoppingGround | KeepOut

/** As many as a stored shoot may have of each sort, and as many points as each of them. */
export const MOST_DRAWN: Readonly<Record<DrawnSort, number>> = { stopping: 200, 'keep-out': 500 }
export const MOST_DRAWN_POINTS = 5_000

/** Metres and square metres below which a shape has no size that a hand could have meant. */
const NO_LENGTH = 0.01
const NO_AREA = 0.1

export const FEWEST_POINTS: Readonly<Record<DrawnForm, number>> = { line: 2, area: 3 }

export type ShapeFault = 'too-few' | 'too-many' | 'no-size' | 'crosses-itself'

/** Points without those that repeat the one before; of an area the last may not repeat the first either. */
export function withoutRepeats({ form, points }: DrawnShape): readonly LatLon[] {
  const same = (one: LatLon, other: LatLon | undefined): boolean => one.lat === other?.lat && one.lon === other.lon
  const kept = points.filter((at, index) => index === 0 || !same(at, points[index - 1]))
  const [first] = kept
  const closed = form === 'area' && kept.length > 1 && first !== undefined && same(first, kept.at(-1))
  return closed ? kept.slice(0, -1) : kept
}

/** As soon as it is long enough, the rest need not be measured. */
function isLong(points: readonly LatLon[]): boolean {
  let length = 0
  for (const [index, at] of points.entries()) {
    length += geodesicDistance(points[index - 1] ?? at, at)
    if (length >= NO_LENGTH) return true
  }
  return false
}

/** What makes a shape useless; null when nothing does. A line may cross itself, as hairpins over a bridge do; an outline may not. */
export function shapeFault(shape: DrawnShape): ShapeFault | null {
  const points = withoutRepeats(shape)
  if (points.length < FEWEST_POINTS[shape.form]) return 'too-few'
  if (points.length > MOST_DRAWN_POINTS) return 'too-many'
  if (shape.form === 'line') return isLong(points) ? null : 'no-size'
  if (ringCrossesItself(points)) return 'crosses-itself'
  return ringArea(points) < NO_AREA ? 'no-size' : null
}

/** Legs from point to point: of an area also the one from the last back to the first. */
export function legCount({ form, points }: DrawnShape): number {
  return form === 'area' ? points.length : Math.max(0, points.length - 1)
}

/** The middle of a leg, 0 for the first; null when there is no such leg. */
export function legMiddle(shape: DrawnShape, leg: number): LatLon | null {
  const from = shape.points[leg]
  const to = shape.points[(leg + 1) % shape.points.length]
  return from === undefined || to === undefined || leg >= legCount(shape) ? null : landmarkMiddle([from, to])
}

/** The points with one more on a leg. */
export function withPointOn(points: readonly LatLon[], leg: number, at: LatLon): readonly LatLon[] {
  return points.toSpliced(leg + 1, 0, at)
}

/** The points without one of them; null when the shape needs them all. */
export function withoutPoint({ form, points }: DrawnShape, index: number): readonly LatLon[] | null {
  if (points[index] === undefined || points.length <= FEWEST_POINTS[form]) return null
  return points.toSpliced(index, 1)
}

/** What is left of a line cut at one of its points, from there on or up to there; null when that is no line. */
export function cutAt(points: readonly LatLon[], index: number, keep: 'from' | 'until'): readonly LatLon[] | null {
  const left = keep === 'from' ? points.slice(index) : points.slice(0, index + 1)
  return left.length < FEWEST_POINTS.line || left.length === points.length ? null : left
}

export function drawnOf(shoot: Shoot, sort: DrawnSort): readonly Drawn[] {
  return sort === 'stopping' ? shoot.stoppingGround : shoot.keepOuts
}

/** The shoot with other points for one thing drawn. */
export function withDrawnPoints(shoot: Shoot, sort: DrawnSort, id: string, points: readonly LatLon[]): Shoot {
  const changed = <One extends Drawn>(all: readonly One[]): One[] =>
    all.map((one) => (one.id === id ? { ...one, points } : one))
  return sort === 'stopping'
    ? { ...shoot, stoppingGround: changed(shoot.stoppingGround) }
    : { ...shoot, keepOuts: changed(shoot.keepOuts) }
}

export function withStoppingGround(shoot: Shoot, after: StoppingGround): Shoot {
  return { ...shoot, stoppingGround: shoot.stoppingGround.map((one) => (one.id === after.id ? after : one)) }
}

export function withKeepOut(shoot: Shoot, after: KeepOut): Shoot {
  return { ...shoot, keepOuts: shoot.keepOuts.map((one) => (one.id === after.id ? after : one)) }
}

export function withoutDrawn(shoot: Shoot, sort: DrawnSort, id: string): Shoot {
  const left = <One extends Drawn>(all: readonly One[]): One[] => all.filter((one) => one.id !== id)
  return sort === 'stopping'
    ? { ...shoot, stoppingGround: left(shoot.stoppingGround) }
    : { ...shoot, keepOuts: left(shoot.keepOuts) }
}

/** New stopping ground: on a line the subject stands along it, either way; in an area as it likes. */
export function newStoppingGround(id: string, name: string, shape: DrawnShape): StoppingGround {
  const { form } = shape
  return { id, name, form, points: withoutRepeats(shape), turn: form === 'line' ? 'either-way' : 'free' }
}

/** A new keep-out of a kind, of that kind's usual width; rails alone are taken as a thing nobody steps across (common practice, no source). */
export function newKeepOut(id: string, name: string, kind: KeepOutKind, shape: DrawnShape): KeepOut {
  const { form } = shape
  const width = USUAL_WIDTH[kind]
  return { id, name, kind, form, points: withoutRepeats(shape), width, whom: 'both', noCrossing: kind === 'rail' }
}
