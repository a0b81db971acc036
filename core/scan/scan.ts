/** The scan: every place of the stopping ground in turn, with what was found there; in parts that may run side by side. */
import { parkingMeasured } from './demands.ts'
import { bestAtPlace } from './place-best.ts'
import { hoursByInstant, placeLight } from './place-light.ts'
import { ENOUGH_WORK, type Tried, picturesAt, triedOnWay } from './place-pictures.ts'
import type { ScanRequest } from './scan-request.ts'
import type { PlaceFound } from './scan-found.ts'
import { type ScanPlace, scanPlaces, turnSamples } from './scan-places.ts'
import { type ScanTable, scanTable } from './scan-table.ts'
import { meets } from './score.ts'
import { stopPlace } from './stand-place.ts'

/** What one part of a scan tells every few milliseconds. */
export interface ScanStep {
  /** Share of the part that is done, 0..1. */
  readonly share: number
  /** Places finished since the last step. */
  readonly found: readonly PlaceFound[]
  /** Combinations looked at since the last step, or left out because they can't be among the best. */
  readonly evaluated: number
}

/**
 * One of so many parts. Places are dealt to them in turn, and what is found at one doesn't hang on the others: together the parts
 * find the same however many they are. Each step is some milliseconds' work.
 */
export function* scanPart(request: ScanRequest, part = 0, of = 1): Generator<ScanStep, void> {
  const table = scanTable(request)
  const hours = hoursByInstant(table)
  yield { share: 0, found: [], evaluated: 0 }
  const places = scanPlaces(request).filter(({ index }) => index % of === part)
  const tried: Tried = { pictures: [], count: 0, work: 0 }
  const found: PlaceFound[] = []
  let counter = 0
  let evaluated = 0
  for (const [done, place] of places.entries()) {
    const whole = place.headings.length * turnSamples(request.steps.bearing) * triedOnWay(table)
    const work = scanPlace(table, place, hours, tried)
    for (;;) {
      const step = work.next()
      if (step.done === true) {
        found.push(step.value)
        break
      }
      yield stepAt(done + Math.min(0.99, tried.count / Math.max(1, whole)))
    }
    // Left out whole: the rest counts as looked at.
    tried.count = Math.max(tried.count, whole)
    counted()
    tried.work += PLACE_WORK
    if (tried.work > ENOUGH_WORK) yield stepAt(done + 1)
  }
  yield stepAt(places.length)

  function counted(): void {
    evaluated += (tried.count - counter) * table.instants.length
    tried.count = 0
    counter = 0
  }

  function stepAt(done: number): ScanStep {
    evaluated += (tried.count - counter) * table.instants.length
    counter = tried.count
    tried.work = 0
    const step = { share: places.length > 0 ? done / places.length : 1, found: found.splice(0), evaluated }
    evaluated = 0
    return step
  }
}

/** What a place costs by itself, in pictures. */
const PLACE_WORK = 5

/** Everything at one place; puts the work down now and then. */
function* scanPlace(
  table: ScanTable,
  place: ScanPlace,
  hours: Float64Array | null,
  tried: Tried,
): Generator<void, PlaceFound> {
  const nothing: PlaceFound = { place: place.index, at: place.at, ground: place.ground.id, score: null, best: [] }
  const parking = parkingMeasured(table.wishes, place.at, table.request.parkings)
  if (parking !== null && parking.must && !meets(parking.margin)) return nothing
  const stop = stopPlace(table, place.at)
  const light = table.lit ? placeLight(table, stop, hours) : null
  if (light !== null && light.order.length === 0) return nothing
  if (light !== null) yield
  tried.pictures.length = 0
  yield* picturesAt(table, stop, place.headings, parking, tried)
  const best = yield* bestAtPlace(table, place, tried.pictures, light)
  return { ...nothing, score: best[0]?.score ?? null, best }
}

/** All parts of a scan one after the other: what was found at every place, in their order. */
export function scanWhole(request: ScanRequest, of = 1): PlaceFound[] {
  const found: PlaceFound[] = []
  for (let part = 0; part < of; part++) for (const step of scanPart(request, part, of)) found.push(...step.found)
  return found.toSorted((one, other) => one.place - other.place)
}
