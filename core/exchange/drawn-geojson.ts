/** Lines and areas out of a GeoJSON text (RFC 7946), to be taken as drawn ground: read, checked, and told what was left out. */
import { geodesicDistance } from '#core/geo/geodesic.ts'
import { type LatLon, latLon } from '#core/geo/lat-lon.ts'
import { simplifiedTo } from '#core/geo/simplify.ts'
import { type Result, done, failed } from '#core/result.ts'
import { type DrawnShape, MOST_DRAWN_POINTS, shapeFault, withoutRepeats } from '#core/record/drawn-ground.ts'
import { type FoundLine, type GeojsonReason, gatherLines } from './geojson-lines.ts'

export interface DrawnPiece {
  /** The feature's name, at most 200 characters; empty when it has none. */
  readonly name: string
  readonly shape: DrawnShape
}

export type DrawnNote =
  /** Single points; areas whose holes were filled; outlines that cross themselves; shapes without length or area; features without a place. */
  | { readonly what: 'points' | 'holes' | 'crossing' | 'no-size' | 'empty'; readonly count: number }
  /** Lines of too many points: those within so many metres of the line were left out. */
  | { readonly what: 'simplified'; readonly count: number; readonly metres: number }
  /** All of it lies this many metres or more from the spot. */
  | { readonly what: 'far'; readonly metres: number }

export interface DrawnRead {
  readonly pieces: readonly DrawnPiece[]
  readonly notes: readonly DrawnNote[]
}

export type DrawnGeojsonReason = GeojsonReason | 'nothing-usable' | 'too-many'

/** Metres: farther from the spot than the first is told; farther than the second, and near when turned about, is swapped. */
const FAR = 50_000
const VERY_FAR = 1_000_000

/**
 * Reads a text. `near` is the place of the spot at work, by which swapped coordinates are recognised even where both orders
 * are places on the earth; `most` is how many pieces there is room for.
 */
export function readDrawnGeojson(
  text: string,
  near: LatLon | null,
  most: number,
): Result<DrawnRead, DrawnGeojsonReason> {
  const gathered = gatherLines(text)
  if (!gathered.ok) return gathered
  const { lines, points, empty } = gathered.value
  if (lines.length > most) return failed('too-many', tooMany(lines.length, most))
  if (near !== null && swappedAway(lines, near)) {
    return failed(
      'swapped',
      'Its positions are far away, but right with the two numbers swapped. Save it with longitude first.',
    )
  }
  const counts = { crossing: 0, 'no-size': 0, holes: 0 }
  let simplified = { count: 0, metres: 0 }
  const pieces = lines.flatMap(({ name, form, points: all, holes }): DrawnPiece[] => {
    const whole = { form, points: withoutRepeats({ form, points: all }) }
    const { shape, metres } = simpleEnough(whole)
    const fault = shapeFault(shape)
    if (fault !== null) {
      counts[fault === 'crosses-itself' ? 'crossing' : 'no-size'] += 1
      return []
    }
    if (metres > 0) simplified = { count: simplified.count + 1, metres: Math.max(simplified.metres, metres) }
    if (holes > 0) counts.holes += 1
    return [{ name, shape }]
  })
  if (pieces.length === 0) return failed('nothing-usable', nothingUsable(counts.crossing, points))
  const away =
    near === null
      ? 0
      : nearest(
          pieces.map(({ shape }) => shape.points),
          near,
        )
  const counted = [
    { what: 'points', count: points },
    { what: 'empty', count: empty },
    { what: 'holes', count: counts.holes },
    { what: 'crossing', count: counts.crossing },
    { what: 'no-size', count: counts['no-size'] },
  ] as const
  return done({
    pieces,
    notes: [
      ...counted.filter(({ count }) => count > 0),
      ...(simplified.count > 0 ? [{ what: 'simplified', ...simplified } as const] : []),
      ...(away > FAR ? [{ what: 'far', metres: away } as const] : []),
    ],
  })
}

function tooMany(count: number, most: number): string {
  if (most <= 0) return 'There is no room for more. Remove some of what is drawn first.'
  return `The file has ${count} lines and areas; there is room for ${most}. Save only those that are needed.`
}

function nothingUsable(crossing: number, points: number): string {
  if (crossing > 0) return 'Its outlines cross themselves, so none of them encloses an area. Fix them and try again.'
  if (points > 0) return 'It has points only. Lines and areas are needed.'
  return 'It has no line and no area of any size.'
}

function simpleEnough(shape: DrawnShape): { shape: DrawnShape; metres: number } {
  const { places: points, metres } = simplifiedTo(shape.points, MOST_DRAWN_POINTS)
  return { shape: { ...shape, points }, metres }
}

function nearest(lines: readonly (readonly LatLon[])[], near: LatLon): number {
  let least = Infinity
  // One point of each is enough where it is a matter of tens of kilometres.
  for (const [first] of lines) if (first !== undefined) least = Math.min(least, geodesicDistance(first, near))
  return least
}

function swappedAway(lines: readonly FoundLine[], near: LatLon): boolean {
  const all = lines.map(({ points }) => points)
  if (all.length === 0 || nearest(all, near) < VERY_FAR) return false
  if (all.some(([first]) => first !== undefined && Math.abs(first.lon) > 90)) return false
  return (
    nearest(
      all.map((line) => line.slice(0, 1).map(({ lat, lon }) => latLon(lon, lat))),
      near,
    ) < FAR
  )
}
