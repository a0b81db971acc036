/** The landmark as a few convex parts whose shadows together are its own, but for cables, hangers and other open work. */
import { type LocalFrame, type LocalPoint, localFrame, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { keptWith } from '#core/kept-with.ts'
import { type Building, type Landmark, type SpanLandmark, landmarkPoints } from './landmark.ts'
import { landmarkBoundingPoints } from './bounding-points.ts'
import { type PlaceAlong, type SpanRule, spanRule } from '#core/scene/solid/span-rule.ts'

/** Corners of one convex part, in any order. */
export type ConvexPart = readonly LocalPoint[]

export interface PlacedParts {
  /** At the landmark's first point, at its foot. */
  readonly frame: LocalFrame
  readonly parts: readonly ConvexPart[]
}

/** Metres: a deck's least thickness, and its share of the height it lies at. */
const LEAST_DECK = 0.5
const DECK_SHARE = 0.06
/** A tower's leg as a share of the deck's width. */
const LEG_SHARE = 0.2

function block(
  rule: SpanRule,
  along: readonly [PlaceAlong, PlaceAlong],
  asides: readonly [number, number],
  ups: readonly [number, number],
): ConvexPart {
  return along.flatMap((place) => asides.flatMap((aside) => ups.map((up) => rule.at(place, aside, up))))
}

function slabs(rule: SpanRule, ups: readonly [number, number]): ConvexPart[] {
  return rule.lengths.map((_, index) => block(rule, [index, index + 1], [-rule.half, rule.half], ups))
}

/** Two legs at each pier, from the foot to a height. */
function legs(rule: SpanRule, height: number): ConvexPart[] {
  const { half, piers, span } = rule
  const leg = span.width * LEG_SHARE
  return piers.flatMap((pier) => {
    const along = [rule.onward(pier, -leg / 2), rule.onward(pier, leg / 2)] as const
    return [block(rule, along, [-half, leg - half], [0, height]), block(rule, along, [half - leg, half], [0, height])]
  })
}

/** Walls and rows of arches are closed from the foot up; bridges let the light through under their deck. */
function spanParts(span: SpanLandmark, base: number): ConvexPart[] {
  if (span.line.length < 2) return []
  const rule = spanRule(span, base)
  const { height, deckHeight, form } = span
  if (form === 'wall' || form === 'arches') return slabs(rule, [0, height])
  const under = Math.max(0, deckHeight - Math.max(LEAST_DECK, deckHeight * DECK_SHARE))
  if (form === 'girder') return [...slabs(rule, [under, height]), ...legs(rule, under)]
  return [...slabs(rule, [under, deckHeight]), ...legs(rule, height)]
}

/** Its walls: the roof's shadow on the ground lies within theirs or under the building, whatever its footprint. */
function buildingParts(building: Building, base: number, frame: LocalFrame): ConvexPart[] {
  const posts = building.footprint.map((at): readonly LocalPoint[] => {
    const own = localFrame(at, base)
    return [toLocal(frame, own.origin), toLocal(frame, toEarth(own, 0, 0, building.height))]
  })
  return posts.map((post, index) => [...post, ...(posts[(index + 1) % posts.length] ?? post)])
}

function partsOf(landmark: Landmark, base: number): PlacedParts | null {
  const [first] = landmarkPoints(landmark)
  if (first === undefined) return null
  const frame = localFrame(first, base)
  if (landmark.kind === 'span') return { frame, parts: spanParts(landmark, base) }
  if (landmark.kind === 'building') return { frame, parts: buildingParts(landmark, base, frame) }
  return { frame, parts: [landmarkBoundingPoints(landmark, base).map((point) => toLocal(frame, point))] }
}

/**
 * `base` is the foot's height in metres above the ellipsoid. Null for a landmark without points. Cut once for as long as the landmark
 * stays as it is.
 */
export const convexParts = keptWith(partsOf)
