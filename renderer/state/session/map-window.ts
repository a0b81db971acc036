/** What the map shows, for the rest of the page: its bounds to read, and wishes for where it should look next. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { boundsCentre, boundsOf } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { Plan } from '#core/plan/plan.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { boardShoot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { mapWords } from '#renderer/words/en-map.ts'

/** The part of the world in a window; west is greater than east across the antimeridian. */
export interface MapBounds {
  readonly south: number
  readonly north: number
  readonly west: number
  readonly east: number
}

const mapBoundsSignal = signal<MapBounds | null>(null)
/** What of the world is in the map's window; null before the first look. */
export const mapBounds: ReadonlySignal<MapBounds | null> = mapBoundsSignal

const lookedAtSignal = signal<LatLon | null>(null)
/** Where the map looked last, for as long as another page is shown in its place; null before the first look. */
export const lookedAt: ReadonlySignal<LatLon | null> = lookedAtSignal

const headedForSignal = signal<LatLon | null>(null)
/** The place the map is flying to; null while it stands. */
export const headedFor: ReadonlySignal<LatLon | null> = headedForSignal

/** The map sets out for a place. Called by the map alone. */
export function setOutFor(at: LatLon): void {
  headedForSignal.value = at
}

/** The map stands, with this in its window and that in the middle of it. Called by the map alone. */
export function tellMapBounds(bounds: MapBounds, middle: LatLon): void {
  headedForSignal.value = null
  mapBoundsSignal.value = bounds
  lookedAtSignal.value = middle
}

/** The map is closed; where it looked last is kept. Called by the map alone. */
export function forgetMapBounds(): void {
  headedForSignal.value = null
  mapBoundsSignal.value = null
}

/** Where the map shall look. It stays wished until the map has a size to do it in. */
export type LookRequest =
  | { readonly kind: 'fly'; readonly at: LatLon; readonly zoom: number | null }
  | { readonly kind: 'fit'; readonly places: readonly LatLon[]; readonly closest: number }

const wantedLookSignal = signal<LookRequest | null>(null)
/** The wish that the map has not yet met; the map takes it and puts null in its place. */
export const wantedLook: ReadonlySignal<LookRequest | null> = wantedLookSignal

/** Hands the wish to the map, which meets it. */
export function takeWantedLook(): LookRequest | null {
  const look = wantedLookSignal.peek()
  wantedLookSignal.value = null
  return look
}

/** Nearer than this a fit shows paving stones rather than a place. */
const CLOSEST_FIT = 18
/** A landmark alone is shown with the country around it, where the spots will be. */
const LANDMARK_FIT = 15

/** The middle of the map: where it will look if that is wished, looks, or looked last; null before the first look. */
export function mapMiddle(): LatLon | null {
  const look = wantedLook.peek()
  if (look?.kind === 'fly') return look.at
  const wantedBounds = look === null ? null : boundsOf(look.places)
  if (wantedBounds !== null) return boundsCentre(wantedBounds)
  if (headedFor.peek() !== null) return headedFor.peek()
  const bounds = mapBounds.peek()
  return bounds === null ? lookedAt.peek() : boundsCentre(bounds)
}

/** Moves the map to a place; without a zoom it keeps its own, but comes near enough to see a street. */
export function flyTo(at: LatLon, zoom: number | null = null): void {
  wantedLookSignal.value = { kind: 'fly', at, zoom }
}

/** Shows places together, as near as their points can be told apart. */
export function fitPlaces(places: readonly LatLon[]): void {
  wantedLookSignal.value = { kind: 'fit', places, closest: CLOSEST_FIT }
}

/** Everything of a plan that should be in sight together. */
export function placesOf(now: Plan): LatLon[] {
  const { stop, standpoint } = now.spot
  return [stop.at, standpoint.at, ...(now.landmark === null ? [] : landmarkPoints(now.landmark))]
}

/** Shows subject, standpoint and landmark together; of a shoot without spots its landmarks. False when there is nothing to show. */
export function fitPlan(): boolean {
  const now = plan.peek()
  const places = now === null ? (boardShoot.peek()?.landmarks ?? []).flatMap(landmarkPoints) : placesOf(now)
  if (places.length === 0) return false
  wantedLookSignal.value = { kind: 'fit', places, closest: now === null ? LANDMARK_FIT : CLOSEST_FIT }
  return true
}

/** The same for a user who asks for it, and is told when there is nothing. */
export function showTogether(): void {
  if (!fitPlan()) tell('done', mapWords.nothingTogether)
}
