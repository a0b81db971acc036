/** A span's own ruler: from a place along it, aside and up to metres in the frame of its first point. */
import { type EarthPoint, type LocalPoint, toEarth, toLocal } from '#core/geo/local-frame.ts'
import type { SpanLandmark } from '#core/scene/landmark.ts'
import { pierIndexes, spanStations } from '#core/scene/bounding-points.ts'
import type { Face, Material } from '#core/scene/solid.ts'
import { band, face } from './shape.ts'

/** A place along the span: 0 at its first point, 1 at its second, and so on. */
export type PlaceAlong = number

export interface SpanRule {
  readonly span: SpanLandmark
  readonly piers: readonly number[]
  /** Metres from each point to the next. */
  readonly lengths: readonly number[]
  /** Half the deck's width. */
  readonly half: number
  at(along: PlaceAlong, aside: number, up: number): LocalPoint
  /** A place `metres` further along, kept within the span. */
  onward(along: PlaceAlong, metres: number): PlaceAlong
}

export function spanRule(span: SpanLandmark, base: number): SpanRule {
  const stations = spanStations(span, base)
  const last = stations.length - 1
  const home = stations[0]?.frame
  if (home === undefined) throw new Error('a span has two or more points')
  const stationPoint = (index: number, aside: number, up: number): EarthPoint => {
    const { frame, across } = stations[Math.min(last, Math.max(0, index))] ?? { frame: home, across: [1, 0] as const }
    return toEarth(frame, across[0] * aside, across[1] * aside, up)
  }
  const place = (along: PlaceAlong, aside: number, up: number): LocalPoint => {
    const index = Math.min(last - 1, Math.max(0, Math.floor(along)))
    const share = along - index
    const from = stationPoint(index, aside, up)
    const to = stationPoint(index + 1, aside, up)
    // Along the straight chord, as the edges between the bounding points run: the drawing never leaves them.
    return toLocal(home, {
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
      z: from.z + (to.z - from.z) * share,
    })
  }
  const lengths = stations.slice(1).map((_, index) => {
    const a = place(index, 0, 0)
    const b = place(index + 1, 0, 0)
    return Math.hypot(a.east - b.east, a.north - b.north, a.up - b.up)
  })
  const onward = (along: PlaceAlong, metres: number): PlaceAlong => {
    const ahead = metres >= 0 ? Math.floor(along) : Math.ceil(along) - 1
    const length = lengths[Math.min(last - 1, Math.max(0, ahead))] ?? 0
    return length > 0 ? Math.min(last, Math.max(0, along + metres / length)) : along
  }
  return { span, piers: pierIndexes(span), lengths, half: span.width / 2, at: place, onward }
}

/** Which ends of a block are closed: one against which the next block stands is never seen. */
export type Ends = readonly [first: boolean, last: boolean]

/** A straight block from one place along to another, between two asides and two heights. */
export function spanBlock(
  rule: SpanRule,
  material: Material,
  along: readonly [PlaceAlong, PlaceAlong],
  aside: readonly [number, number],
  up: readonly [number, number],
  ends: Ends = [true, true],
): Face[] {
  const row = (side: number): LocalPoint[] => [
    rule.at(along[0], side, up[0]),
    rule.at(along[0], side, up[1]),
    rule.at(along[1], side, up[1]),
    rule.at(along[1], side, up[0]),
  ]
  const right = row(aside[1])
  const left = row(aside[0])
  const [first, top, end, bottom] = band(material, left, right)
  if (first === undefined || top === undefined || end === undefined || bottom === undefined)
    throw new Error('a block has four faces between its sides')
  const closed = [...(ends[0] ? [first] : []), ...(ends[1] ? [end] : [])]
  return [face(material, right.toReversed()), face(material, left), top, bottom, ...closed]
}

/** Places along a segment, evenly, both ends included; no farther apart than `apart` metres, no more than `most` steps. */
export function steps(rule: SpanRule, segment: number, apart: number, most: number): PlaceAlong[] {
  const length = rule.lengths[segment] ?? 0
  const count = Math.min(most, Math.max(1, Math.round(length / apart)))
  return Array.from({ length: count + 1 }, (_, index) => segment + index / count)
}
