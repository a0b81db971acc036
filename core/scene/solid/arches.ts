/** A row of arches: round openings between piers, walk and parapet above. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { legLengths } from '#core/geo/line-length.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { Face, Part, Solid } from '#core/scene/solid.ts'
import { face, part } from './shape.ts'
import { type PlaceAlong, type SpanRule, spanBlock } from './span-rule.ts'
import { walkHeight } from './walk.ts'

const ARCH_STEPS = 14
/** Between two points. */
const MOST_ARCHES = 24

/** How one bay is cut: shares of its length for the opening, heights of springing and crown. */
interface Opening {
  readonly from: PlaceAlong
  readonly to: PlaceAlong
  readonly springing: number
  readonly crown: number
}

/** Metres above the foot of the highest point of an opening. */
function crownHeight(height: number): number {
  return Math.max(0, walkHeight(height) - Math.max(0.3, height * 0.07))
}

/** Openings a little narrower than high; a stretch between two points holds as many as fit. */
function archesWithin(length: number, height: number): number {
  return Math.max(1, Math.min(MOST_ARCHES, Math.round(length / Math.max(1, crownHeight(height) * 0.85))))
}

/** How many arches a row is drawn with, from point to point along it. */
export function archCount(line: readonly LatLon[], height: number): number {
  return legLengths(line).reduce((count, length) => count + archesWithin(length, height), 0)
}

export function archesSolid(rule: SpanRule): Solid {
  const { height } = rule.span
  const crownTop = crownHeight(height)
  return rule.lengths.flatMap((length, segment) => {
    const bays = archesWithin(length, height)
    return Array.from({ length: bays }, (_, bay): Part => {
      const from = segment + bay / bays
      const to = segment + (bay + 1) / bays
      const pier = 0.14
      const opening: Opening = {
        from: from + ((to - from) * pier) / 2,
        to: to - ((to - from) * pier) / 2,
        springing: Math.max(0, crownTop - (length / bays) * (1 - pier) * 0.5),
        crown: crownTop,
      }
      return bayPart(rule, from, to, opening)
    })
  })
}

/** The curve of an opening from its first pier up and down to the next. */
function archCurve(opening: Opening): (readonly [PlaceAlong, number])[] {
  return Array.from({ length: ARCH_STEPS + 1 }, (_, index) => {
    const turn = Math.PI * (1 - index / ARCH_STEPS)
    const along = (opening.from + opening.to) / 2 + ((opening.to - opening.from) / 2) * Math.cos(turn)
    return [along, opening.springing + (opening.crown - opening.springing) * Math.sin(turn)] as const
  })
}

function bayPart(rule: SpanRule, from: PlaceAlong, to: PlaceAlong, opening: Opening): Part {
  const { half } = rule
  const walk = walkHeight(rule.span.height)
  const curve: (readonly [PlaceAlong, number])[] = [[opening.from, 0], ...archCurve(opening), [opening.to, 0]]
  const outline: (readonly [PlaceAlong, number])[] = [
    [from, 0],
    [from, walk],
    [to, walk],
    [to, 0],
    ...curve.toReversed(),
  ]
  const side = (aside: number): LocalPoint[] => outline.map(([along, up]) => rule.at(along, aside, up))
  const inside: Face[] = curve.slice(1).map(([along, up], index) => {
    const [before, below] = curve[index] ?? [along, up]
    return face('hue', [
      rule.at(before, -half, below),
      rule.at(along, -half, up),
      rule.at(along, half, up),
      rule.at(before, half, below),
    ])
  })
  const top = [rule.at(from, -half, walk), rule.at(from, half, walk), rule.at(to, half, walk), rule.at(to, -half, walk)]
  return part(
    inside,
    face('hue', side(half).toReversed()),
    face('hue', side(-half)),
    face('hue', top),
    ends(rule, from, to),
    parapet(rule, from, to),
  )
}

/** The row's own two ends, seen only where it begins and stops. */
function ends(rule: SpanRule, from: PlaceAlong, to: PlaceAlong): Face[] {
  const { half, lengths } = rule
  const walk = walkHeight(rule.span.height)
  const end = (along: PlaceAlong): LocalPoint[] => [
    rule.at(along, half, 0),
    rule.at(along, half, walk),
    rule.at(along, -half, walk),
    rule.at(along, -half, 0),
  ]
  return [
    ...(from === 0 ? [face('hue', end(from))] : []),
    ...(Math.abs(to - lengths.length) < 1e-9 ? [face('hue', end(to).toReversed())] : []),
  ]
}

function parapet(rule: SpanRule, from: PlaceAlong, to: PlaceAlong): Face[] {
  const { half } = rule
  const { height } = rule.span
  const walk = walkHeight(height)
  if (height - walk < 0.05) return []
  const thick = Math.min(half * 0.2, 0.6)
  return [
    ...spanBlock(rule, 'ink', [from, to], [-half, thick - half], [walk, height]),
    ...spanBlock(rule, 'ink', [from, to], [half - thick, half], [walk, height]),
  ]
}
