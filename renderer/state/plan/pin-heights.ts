/** Heights read exactly from their sources where things stand: asked for as things come to rest, kept by place while the sources stay. */
import { computed, effect, signal } from '@preact/signals'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { PinHeight } from '#core/plan/height-read.ts'
import { landmarkOf } from '#core/plan/plan.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { groundVersion } from '#renderer/host/ground-windows.ts'
import { ask } from '#renderer/host/host.ts'
import { boardShoot, boardSpot, moving } from '#renderer/state/library/library.ts'

/** Places kept: more than are looked at in a day's work. */
const MOST_KEPT = 500

/** By place, oldest first; null where no source knows the ground. */
const knownHeights = signal<ReadonlyMap<string, PinHeight | null>>(new Map())
/** On its way, or not to be had from the sources as they are. */
let askedPlaces = new Set<string>()
/** Not to be had from the sources as they are: asked for again when they change. */
let failed = new Set<string>()

function keyOf({ lat, lon }: LatLon): string {
  return `${lat} ${lon}`
}

/** The places of a spot whose heights count. */
export function pinPlaces(shoot: Pick<Shoot, 'landmarks'>, spot: Spot): LatLon[] {
  const landmark = landmarkOf(shoot, spot)
  const middle = landmark === null ? null : landmarkMiddle(landmarkPoints(landmark))
  const { parking } = spot.access
  return [
    spot.standpoint.at,
    spot.stop.at,
    ...(middle === null ? [] : [middle]),
    ...(parking === null ? [] : [parking]),
  ]
}

const NONE: readonly PinHeight[] = []

/** What was given last for the same places. */
const lists = new Map<string, readonly PinHeight[]>()

/** What is at hand of places, without asking; the same object while it stays the same. */
export function pinsAtHand(places: readonly LatLon[]): readonly PinHeight[] {
  const found = places.flatMap((at) => knownHeights.value.get(keyOf(at)) ?? [])
  if (found.length === 0) return NONE
  const key = places.map(keyOf).join(' ')
  const last = lists.get(key)
  if (last !== undefined && same(last, found)) return last
  if (lists.size >= MOST_KEPT) lists.clear()
  lists.set(key, found)
  return found
}

export interface Pins {
  readonly pins: readonly PinHeight[]
  /** Whether every place was answered for, or can't be. */
  readonly settled: boolean
}

/** What is known of places; asked for where nothing is. */
export function pinsFor(places: readonly LatLon[]): Pins {
  void askPins(places)
  return { pins: pinsAtHand(places), settled: areAnswered(places) }
}

/** Whether every place was answered for, or can't be; heights are given again with each answer, so whoever looks on hears of it. */
function areAnswered(places: readonly LatLon[]): boolean {
  const heights = knownHeights.value
  return places.every((at) => heights.has(keyOf(at)) || failed.has(keyOf(at)))
}

async function askPins(places: readonly LatLon[]): Promise<void> {
  const version = groundVersion.peek()
  const missing = places.filter((at) => !knownHeights.peek().has(keyOf(at)) && !askedPlaces.has(keyOf(at)))
  if (missing.length === 0) return
  for (const at of missing) askedPlaces.add(keyOf(at))
  const answer = await ask('ground.heights', { places: missing })
  // Other sources than were asked may tell otherwise.
  if (version !== groundVersion.peek()) return
  const kept = new Map(knownHeights.peek())
  missing.forEach((at, index) => {
    const found = answer.ok ? (answer.value.heights[index] ?? null) : null
    const troubled = !answer.ok || (found === null && answer.value.trouble !== null)
    if (troubled) {
      failed.add(keyOf(at))
      return
    }
    askedPlaces.delete(keyOf(at))
    kept.set(
      keyOf(at),
      found === null
        ? null
        : { at, height: found.height, step: found.resolution, source: found.source, sea: found.sea },
    )
  })
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) break
    kept.delete(oldest)
  }
  knownHeights.value = kept
}

function same(one: readonly PinHeight[], other: readonly PinHeight[]): boolean {
  return one.length === other.length && one.every((pin, index) => pin === other[index])
}

let before: readonly PinHeight[] = NONE

/**
 * Those of the spot on the board, the same object while they stay the same. For as long as a place is not answered for, those of before
 * stay beside it: while a thing is dragged and just after, its level leads over from where it stood and does not leap.
 */
export const boardPins = computed<readonly PinHeight[]>(() => {
  const [shoot, spot] = [boardShoot.value, boardSpot.value]
  if (shoot === null || spot === null) return NONE
  const places = pinPlaces(shoot, spot)
  const here = pinsAtHand(places)
  const still = areAnswered(places)
    ? []
    : before.filter((pin) => !here.includes(pin) && knownHeights.value.get(keyOf(pin.at)) === pin)
  const all = [...here, ...still]
  if (!same(all, before)) before = all
  return before
})

/** Keeps asking for wherever the things on the board come to rest, again when the sources change. */
export function followPins(): void {
  effect(() => {
    if (groundVersion.value === 0) return
    askedPlaces = new Set()
    failed = new Set()
    knownHeights.value = new Map()
  })
  effect(() => {
    const [shoot, spot] = [boardShoot.value, boardSpot.value]
    void groundVersion.value
    if (shoot === null || spot === null || moving.value) return
    void askPins(pinPlaces(shoot, spot))
  })
}
