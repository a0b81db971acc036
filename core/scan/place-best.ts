/** The best arrangements at one place: its pictures, the best first, held against the instants, the most promising first. */
import type { LightMet } from './light-demand.ts'
import { type MeasuredDemand, metBy, metOf } from './demands.ts'
import { apartInBearing, apartInTime } from './apart.ts'
import type { ScanPicture } from './picture.ts'
import type { PlaceLight } from './place-light.ts'
import type { Candidate } from './scan-found.ts'
import type { ScanPlace } from './scan-places.ts'
import type { ScanTable } from './scan-table.ts'
import { scoreOf } from './score.ts'

/** Arrangements kept at each place. */
const KEPT = 3
/** Looks at the light between two moments at which the work may be put down. */
const LOOKS = 4000

interface Ranked {
  readonly picture: ScanPicture
  readonly instant: number
  readonly light: LightMet | null
  readonly score: number
}

/** The best few of a list, apart from one another in bearing or time; the list has the better first, ties in their order. */
function apart(ranked: readonly Ranked[]): Ranked[] {
  const kept: Ranked[] = []
  for (const one of ranked) {
    if (kept.length === KEPT) break
    const distinct = kept.every(
      (other) => apartInTime(one.instant, other.instant) || apartInBearing(one.picture.bearing, other.picture.bearing),
    )
    if (distinct) kept.push(one)
  }
  return kept
}

/** A stable order: of equal scores the earlier stays first. */
function byScore(one: Ranked, other: Ranked): number {
  return other.score - one.score
}

function scoreWith({ weights, wishes }: ScanTable, { worth }: ScanPicture, light: number): number {
  const weight = wishes.light?.weight ?? 0
  return weights > 0 ? (worth + weight * light) / weights : 1
}

/** Picture by picture until none can be among the best any more; puts the work down now and then. */
export function* bestAtPlace(
  table: ScanTable,
  place: ScanPlace,
  pictures: readonly ScanPicture[],
  light: PlaceLight | null,
): Generator<void, Candidate[]> {
  const sorted = pictures.toSorted((one, other) => other.worth - one.worth)
  let best: Ranked[] = []
  if (light === null) {
    const instant = table.instants[0] ?? table.spot.when
    const weights = table.weights
    best = apart(
      sorted.map((picture) => ({
        picture,
        instant,
        light: null,
        score: weights > 0 ? picture.worth / weights : 1,
      })),
    )
  } else {
    const brightest = light.atBest[light.order[0] ?? 0] ?? 0
    let looks = 0
    for (const picture of sorted) {
      const third = best[KEPT - 1]
      if (third !== undefined && scoreWith(table, picture, brightest) <= third.score) break
      const found = yield* bestInstants(table, picture, light, third?.score ?? -1)
      looks += found.looks
      if (looks > LOOKS) {
        looks = 0
        yield
      }
      if (found.ranked.length > 0) best = apart([...best, ...found.ranked].toSorted(byScore))
    }
  }
  return best.map((one) => candidateOf(table, place, one))
}

/** The best instants of one picture, apart from one another, as far as they are better than a score. */
function* bestInstants(
  table: ScanTable,
  picture: ScanPicture,
  light: PlaceLight,
  than: number,
): Generator<void, { ranked: Ranked[]; looks: number }> {
  const at = light.of(picture)
  // Setting the light up for a picture costs as much as many looks.
  let looks = 100
  let best: Ranked[] = []
  for (const index of light.order) {
    const bound = scoreWith(table, picture, light.atBest[index] ?? 0)
    // Sums of what is no larger are no larger, rounded or not: the bound needs no slack.
    if (bound <= Math.max(than, best[KEPT - 1]?.score ?? than)) break
    const met = at(index)
    if (++looks % LOOKS === 0) yield
    if (met === null) continue
    const score = scoreWith(table, picture, met.degree)
    if (score <= Math.max(than, best[KEPT - 1]?.score ?? than)) continue
    const one = { picture, instant: table.instants[index] ?? 0, light: met, score }
    best = insertApart(best, one)
  }
  return { ranked: best, looks }
}

/** Keeps a list of the best, apart in time: a better one takes the place of those it isn't apart from. */
function insertApart(best: readonly Ranked[], one: Ranked): Ranked[] {
  const near = best.filter((other) => !apartInTime(one.instant, other.instant))
  if (near.some((other) => other.score >= one.score)) return [...best]
  return [...best.filter((other) => !near.includes(other)), one].toSorted(byScore).slice(0, KEPT)
}

/** The demands in their order, the light among them. */
function demandsOf(table: ScanTable, { picture, light }: Ranked): MeasuredDemand[] {
  let next = 0
  return table.demands.flatMap((kind) => {
    if (kind === 'light') return light === null ? [] : [metBy(kind, table.wishes, light, light.degree)]
    const demand = picture.measured[next++]
    return demand === undefined ? [] : [demand]
  })
}

function candidateOf(table: ScanTable, place: ScanPlace, ranked: Ranked): Candidate {
  const { picture, instant } = ranked
  const { subject, stood, focal, setting } = picture
  const met = demandsOf(table, ranked).map(metOf)
  return {
    place: place.index,
    ground: place.ground.id,
    at: place.at,
    heading: subject.heading,
    standpoint: stood.at,
    lensHeight: stood.lensHeight,
    focalLength: focal.focalLength,
    lensId: focal.lens.id,
    across: setting.placement.across,
    up: setting.placement.up,
    instant,
    score: scoreOf(met),
    met,
  }
}
