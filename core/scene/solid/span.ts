/** The span's solid: suspension bridge, arches, girder bridge or wall along its points, on piers at the inner ones. */
import { exhaustive } from '#core/exhaustive.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import type { SpanLandmark } from '#core/scene/landmark.ts'
import type { Part, Solid } from '#core/scene/solid.ts'
import { archesSolid } from './arches.ts'
import { walkHeight } from './walk.ts'
import { part, rod } from './shape.ts'
import { type Ends, type PlaceAlong, type SpanRule, spanBlock, spanRule, steps } from './span-rule.ts'

/** Most steps of the drawing in one stretch between two points: enough for the eye, few enough for the drag. */
const MOST_STEPS = 28
const SIDES = [-1, 1] as const

export function spanSolid(span: SpanLandmark, base: number): Solid {
  const rule = spanRule(span, base)
  switch (span.form) {
    case 'suspension':
      return suspension(rule)
    case 'girder':
      return girder(rule)
    case 'arches':
      return archesSolid(rule)
    case 'wall':
      return wall(rule)
    default:
      return exhaustive(span.form)
  }
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value))
}

/** Only where the line begins or ends is a block of it free at its end. */
function freeEnds(rule: SpanRule, along: readonly [PlaceAlong, PlaceAlong]): Ends {
  return [along[0] <= 0, along[1] >= rule.lengths.length]
}

/** The deck in steps, so that each is drawn in its own order of distance. */
function deck(rule: SpanRule, top: number, thick: number, apart: number): Part[] {
  const { half } = rule
  return rule.lengths.flatMap((_, segment) => {
    const places = steps(rule, segment, apart, MOST_STEPS)
    return places.slice(1).map((place, index) => {
      const along = [places[index] ?? segment, place] as const
      return part(spanBlock(rule, 'hue', along, [-half, half], [Math.max(0, top - thick), top], freeEnds(rule, along)))
    })
  })
}

function suspension(rule: SpanRule): Solid {
  const { span } = rule
  const { height, deckHeight } = span
  const thick = clamp(height * 0.05, 0.5, 4)
  const leg = clamp(span.width * 0.2, 0.4, 6)
  const cableWidth = clamp(height * 0.016, 0.12, 1)
  const apart = clamp((height - deckHeight) * 0.22, 4, 40)
  return [
    ...deck(rule, deckHeight, thick, apart),
    ...rule.piers.flatMap((pier) => tower(rule, pier, leg, thick)),
    ...cables(rule, leg, cableWidth, apart),
  ]
}

/** Two legs with cross-beams; at the end of a line the tower stands wholly inside it. */
function tower(rule: SpanRule, pier: PlaceAlong, leg: number, thick: number): Part[] {
  const { span, half } = rule
  const { height, deckHeight } = span
  const along: [PlaceAlong, PlaceAlong] = [rule.onward(pier, -leg * 0.6), rule.onward(pier, leg * 0.6)]
  const beam = (from: number, to: number): Part =>
    part(spanBlock(rule, 'ink', along, [leg - half, half - leg], [from, to]))
  const legs = SIDES.flatMap((side) => {
    const aside: [number, number] = side < 0 ? [-half, leg - half] : [half - leg, half]
    return [
      part(spanBlock(rule, 'ink', along, aside, [0, deckHeight - thick])),
      part(spanBlock(rule, 'ink', along, aside, [deckHeight - thick, height])),
    ]
  })
  const above = height - deckHeight
  return [
    ...legs,
    beam(Math.max(0, deckHeight - thick * 2.2), deckHeight - thick),
    beam(deckHeight + above * 0.52, deckHeight + above * 0.6),
    beam(height - above * 0.1, height - above * 0.02),
  ]
}

/**
 * Main cables and hangers. A cable that bears a level deck hangs in a parabola (a catenary bears only itself), between
 * towers down to just above the deck, from a tower to the end of the line down to the deck.
 */
function cables(rule: SpanRule, leg: number, width: number, apart: number): Part[] {
  const { span, half, piers } = rule
  const { height, deckHeight } = span
  const towers = new Set(piers)
  const top = height - width / 2
  const low = Math.min(deckHeight + (top - deckHeight) * 0.1, top)
  const hanger = width * 0.32
  return rule.lengths.flatMap((_, segment) => {
    const from = towers.has(segment)
    const to = towers.has(segment + 1)
    if (!from && !to) return []
    const rise = (share: number): number => {
      if (from && to) return low + (top - low) * (2 * share - 1) ** 2
      const fromTower = from ? share : 1 - share
      const straight = top + (deckHeight - top) * fromTower
      return straight - (top - deckHeight) * 0.35 * fromTower * (1 - fromTower)
    }
    const places = steps(rule, segment, apart, MOST_STEPS)
    return SIDES.flatMap((side) => {
      const aside = side * (half - leg / 2)
      const points = places.map((place): LocalPoint => rule.at(place, aside, rise(place - segment)))
      return places.slice(1).map((place, index) => {
        const [a, b] = [points[index], points[index + 1]]
        if (a === undefined || b === undefined) throw new Error('a cable has a point for every step')
        const hangs = index + 1 < places.length - 1
        return part(rod('ink', width, a, b), hangs ? [rod('ink', hanger, b, rule.at(place, aside, deckHeight))] : [])
      })
    })
  })
}

function pierBlocks(rule: SpanRule, top: number, thick: number): Part[] {
  const { half, piers } = rule
  return piers.map((pier) =>
    part(
      spanBlock(
        rule,
        'ink',
        [rule.onward(pier, -thick / 2), rule.onward(pier, thick / 2)],
        [-half * 0.86, half * 0.86],
        [0, top],
      ),
    ),
  )
}

/** A level girder; where the top lies above the deck, trusses of posts and diagonals along both sides. */
function girder(rule: SpanRule): Solid {
  const { span } = rule
  const { height, deckHeight } = span
  const thick = clamp(Math.max(height * 0.09, height - deckHeight > 0.3 ? 0.4 : height * 0.14), 0.3, 5)
  const bottom = Math.max(0, deckHeight - thick)
  const deep = height - deckHeight
  const apart = deep > 0.3 ? Math.max(deep * 1.1, 3) : 15
  const piers = pierBlocks(rule, bottom, clamp(height * 0.1, 0.6, 5))
  const level = deck(rule, deckHeight, thick, apart)
  return deep > 0.3 ? [...piers, ...level, ...truss(rule, apart)] : [...piers, ...level]
}

function truss(rule: SpanRule, apart: number): Part[] {
  const { span, half } = rule
  const { height, deckHeight } = span
  const bar = clamp((height - deckHeight) * 0.09, 0.15, 0.9)
  const aside = half - bar / 2
  const top = height - bar / 2
  return rule.lengths.flatMap((_, segment) => {
    const places = steps(rule, segment, apart, MOST_STEPS)
    return places.slice(1).flatMap((place, index) => {
      const before = places[index] ?? segment
      return SIDES.map((side) => {
        const at = (along: PlaceAlong, up: number): LocalPoint => rule.at(along, side * aside, up)
        const leaning =
          index % 2 === 0 ? [at(before, deckHeight), at(place, top)] : [at(before, top), at(place, deckHeight)]
        return part(
          rod('ink', bar, at(before, top), at(place, top)),
          rod('ink', bar * 0.8, ...leaning),
          rod('ink', bar * 0.7, at(place, deckHeight), at(place, top)),
          index === 0 ? [rod('ink', bar * 0.7, at(before, deckHeight), at(before, top))] : [],
        )
      })
    })
  })
}

/** A wall: solid to its walk, above it a parapet of merlons; a plain top where it is low. */
function wall(rule: SpanRule): Solid {
  const { half } = rule
  const { height } = rule.span
  const walk = walkHeight(height)
  const parapet = height - walk > 0.2
  const body = parapet ? walk : height
  const apart = parapet ? clamp((height - walk) * 2.4, 1.5, 60) : 30
  return rule.lengths.flatMap((_, segment) => {
    const places = steps(rule, segment, apart, 60)
    return places.slice(1).flatMap((place, index) => {
      const before = places[index] ?? segment
      const ends = freeEnds(rule, [before, place])
      const block = part(spanBlock(rule, 'hue', [before, place], [-half, half], [0, body], ends))
      if (!parapet) return [block]
      const edge = (share: number): PlaceAlong => before + (place - before) * share
      const isLast = segment === rule.lengths.length - 1 && index === places.length - 2
      const isFirst = segment === 0 && index === 0
      const merlon: [PlaceAlong, PlaceAlong] = [isFirst ? before : edge(0.2), isLast ? place : edge(0.8)]
      const thick = Math.min(half * 0.5, (height - walk) * 0.4)
      return [
        block,
        ...SIDES.map((side) => {
          const aside: [number, number] = side < 0 ? [-half, thick - half] : [half - thick, half]
          return part(
            spanBlock(rule, 'hue', [before, place], aside, [body, body + (height - body) * 0.45], ends),
            spanBlock(rule, 'hue', merlon, aside, [body + (height - body) * 0.45, height]),
          )
        }),
      ]
    })
  })
}
