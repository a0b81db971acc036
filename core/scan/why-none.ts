/** Why nothing was found: what each must and limit leaves out, by itself and at all, and the smallest change that gives a result. */
import type { ScanWishKind } from '#core/record/scan-wishes.ts'
import { wishesMade } from '#core/light/light-wish.ts'
import { parkingMeasured } from './demands.ts'
import type { LightMet } from './light-demand.ts'
import { nearLight, nearMiss } from './near-miss.ts'
import { type Arranged, type Beforehand, type Taken, takeGoodPicture, takePicture } from './picture.ts'
import { type PlaceLight, hoursByInstant, placeLight } from './place-light.ts'
import { couldShow } from './landmark-ball.ts'
import { type Glimpse, glimpseOf, knownBeforehand, viewMeasured, waysToCamera } from './place-pictures.ts'
import type { ScanRequest } from './scan-request.ts'
import type { Relaxation, ScanLimit, WhyNone } from './scan-found.ts'
import { type NearPlace, Tally, type WhyNonePart, closer } from './why-tally.ts'
import { type ScanPlace, scanPlaces, turnSamples } from './scan-places.ts'
import { type ScanTable, scanTable } from './scan-table.ts'
import { NEVER, meets } from './score.ts'
import { type TurnedSubject, guessedDistance, standForShare, stopPlace, turnedSubject } from './stand-place.ts'
import { type Try, thinning, triesOf, whyInstants } from './why-tries.ts'

export interface WhyStep {
  readonly share: number
  /** Null until the last step. */
  readonly part: WhyNonePart | null
}

interface Why {
  readonly request: ScanRequest
  readonly table: ScanTable
  readonly tries: readonly Try[]
  readonly within: number
  readonly lightMust: boolean
  readonly tally: Tally
}

const TRIES_A_STEP = 300

/**
 * One of so many parts of the looking. A large problem is looked at in part; what is told of it is true of what was looked at. The
 * last step has the result.
 */
export function* whyNonePart(request: ScanRequest, part = 0, of = 1): Generator<WhyStep, void> {
  const { instants, within } = whyInstants(request)
  const { light } = request.shoot.scanWishes
  // The light's margins are wanted where it is missed too: as a wish it tells them.
  const loose = { ...request.shoot.scanWishes, light: light === null ? null : { ...light, must: false } }
  const table = scanTable({ ...request, shoot: { ...request.shoot, scanWishes: loose } }, instants)
  const tally = new Tally()
  const why: Why = {
    request,
    table,
    tries: triesOf(table),
    within,
    lightMust: table.lit && light?.must === true,
    tally,
  }
  const musts = table.demands.filter((kind) => request.shoot.scanWishes[kind]?.must === true)
  const all = scanPlaces(request)
  const { places, stride } = thinning(table, all, turnSamples(request.steps.bearing))
  const own = places.filter((_, index) => index % of === part)
  const hours = hoursByInstant(table)
  yield { share: 0, part: null }
  for (const [done, place] of own.entries()) {
    for (const share of lookAround(why, place, stride, hours)) yield { share: (done + share) / own.length, part: null }
  }
  yield { share: 1, part: tally.result(musts) }
}

/** All tries at one place; tells the share that is done. */
function* lookAround(why: Why, place: ScanPlace, stride: number, hours: Float64Array | null): Generator<number, void> {
  const { request, table, tries, tally, within } = why
  const stop = stopPlace(table, place.at)
  const glimpse = glimpseOf(table, stop)
  const parking = parkingMeasured(table.wishes, place.at, request.parkings)
  const light = table.lit ? placeLight(table, stop, hours) : null
  const ways = waysToCamera(table, stop).filter((_, index) => index % stride === 0)
  let since = 0
  for (const [turned, heading] of place.headings.entries()) {
    const subject = turnedSubject(table, stop, heading)
    for (const [index, way] of ways.entries()) {
      const view = viewMeasured(table, heading, way)
      const known = knownBeforehand(parking, view)
      const hopeless = within === 0 || [...known.values()].some(({ must, margin }) => must && !meets(margin))
      for (const setting of table.settings) {
        for (const one of tries) {
          if (++since >= TRIES_A_STEP) {
            since = 0
            yield (turned + index / ways.length) / place.headings.length
          }
          if (one.beyond !== null) {
            if (hopeless || !mayShow(glimpse, one, subject, way, setting)) continue
            lookBeyond(why, place.index, one, arrange(one, subject, way, setting), known, light)
            continue
          }
          const arranged = arrange(one, subject, way, setting)
          if (arranged === null) {
            tally.looked += table.instants.length
            tally.exclude(['lens'], table.instants.length)
          } else lookAt(why, place.index, takePicture(table, arranged, known), light)
        }
      }
    }
  }
}

/** Whether a must that needs the landmark in the frame could be met at all. */
function mayShow(
  glimpse: Glimpse | null,
  { table, focal, share }: Try,
  { heading }: TurnedSubject,
  way: number,
  setting: ScanTable['settings'][number],
): boolean {
  if (glimpse === null) return true
  const guess = guessedDistance(table, setting, way, heading, focal.focalLength, share)
  return couldShow(glimpse.from, setting, focal.focalLength, way, guess, guess + table.shoot.subject.length)
}

function arrange(
  { table, focal, share, lensHeight }: Try,
  subject: TurnedSubject,
  way: number,
  setting: ScanTable['settings'][number],
): Arranged | null {
  const guess = guessedDistance(table, setting, way, subject.heading, focal.focalLength, share)
  const stood = standForShare(table, subject, way, focal, setting, share, lensHeight, guess)
  return stood === null ? null : { subject, bearing: way, focal, setting, stood }
}

/** One of the scan's own combinations, at all instants: everything it misses is counted. */
function lookAt(why: Why, place: number, taken: Taken, light: PlaceLight | null): void {
  const { table, request, within, lightMust, tally } = why
  const missed = taken.picture.measured.filter(({ must, margin }) => must && !meets(margin))
  const by: (ScanWishKind | ScanLimit)[] = [...missed.map(({ kind }) => kind), ...taken.limits]
  const count = table.instants.length
  tally.looked += count
  const [only] = missed
  const near = by.length === 1 && only !== undefined ? nearMiss(table, only, taken) : null
  const at = lightMust && light !== null ? light.of(taken.picture) : null
  if (at === null) {
    tally.exclude(by, within)
    tally.exclude([...by, 'hours'], count - within)
    if (near !== null && within > 0) tally.miss(place, near)
    return
  }
  let best: LightMet | null = null
  for (let index = 0; index < count; index++) {
    const met = at(index)
    const lit = met !== null && meets(met.margin)
    const inHours = index < within
    tally.exclude([...by, ...(lit ? [] : (['light'] as const)), ...(inHours ? [] : (['hours'] as const))], 1)
    if (!inHours) continue
    if (lit && near !== null) tally.miss(place, near)
    if (!lit && met !== null && (best === null || met.value > best.value)) best = met
  }
  if (by.length === 0 && best !== null) tally.miss(place, nearLight(best, wishesMade(request.shoot.light).length))
}

/** One beyond what is wished: it counts only where everything else is met. */
function lookBeyond(
  { within, lightMust, tally }: Why,
  place: number,
  { table, beyond }: Try,
  arranged: Arranged | null,
  known: Beforehand,
  light: PlaceLight | null,
): void {
  if (arranged === null || beyond === null) return
  const picture = takeGoodPicture(table, arranged, known)
  if (picture === null) return
  if (lightMust && light !== null) {
    const at = light.of(picture)
    let lit = false
    for (let index = 0; index < within && !lit; index++) lit = meets(at(index)?.margin ?? NEVER)
    if (!lit) return
  }
  tally.miss(place, beyond)
}

/** All parts together. */
export function whyNone(parts: readonly WhyNonePart[]): WhyNone {
  const kinds = parts[0]?.excluded.map(({ by }) => by) ?? []
  const excluded = kinds.map((by) => {
    const same = parts.flatMap((part) => part.excluded.filter((one) => one.by === by))
    return {
      by,
      count: same.reduce((sum, { count }) => sum + count, 0),
      alone: same.reduce((sum, { alone }) => sum + alone, 0),
    }
  })
  return {
    looked: parts.reduce((sum, { looked }) => sum + looked, 0),
    excluded: excluded.filter(({ count }) => count > 0),
    relaxations: relaxationsOf(parts.flatMap(({ near }) => near)),
  }
}

/** For each thing and end the smallest change, with the places that it is enough for. */
function relaxationsOf(near: readonly NearPlace[]): Relaxation[] {
  const groups = Map.groupBy(near, ({ of, end }) => `${of} ${end}`)
  const least = [...groups.values()].flatMap((group) => {
    const [first, ...rest] = group
    if (first === undefined) return []
    const best = rest.reduce((one, other) => (closer(other, one) ? other : one), first)
    const reach = Math.abs(best.to - best.now)
    const places = group.filter(({ to, now }) => Math.abs(to - now) <= reach).length
    return [{ best, places }]
  })
  least.sort((one, other) => one.best.pain - other.best.pain || one.best.of.localeCompare(other.best.of))
  return least.map(({ best: { of, now, to, end }, places }) => ({ of, now, to, end, places }))
}
