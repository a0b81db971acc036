/** The windows of which the ground around a place is laid, on one plane: fine cells about it, coarser ones out to where nothing is seen. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { latLon } from '#core/geo/lat-lon.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import type { GridPoint } from '#core/ground/elevation-grid.ts'
import { GROUND_REACH } from '#core/ground/rings.ts'

export interface RingKind {
  readonly name: 'close' | 'near' | 'landmark' | 'middle' | 'far'
  /** Metres from the window's middle to its sides, and between its cells. */
  readonly reach: number
  readonly cell: number
  readonly peaks: boolean
  /** Metres that a place may have moved from a window's middle before another is cut. */
  readonly stray: number
}

/** Metres that a place may lie off where its plane touches; so far beyond the reach the last ring goes. */
export const PLANE_STRAY = 6_000

/** Nearer than 3 km a sample missed by a metre is seen in the skyline. */
const CLOSE: RingKind = { name: 'close', reach: 2_700, cell: 6, peaks: false, stray: 1_200 }
/** The window that the map draws, and areas are told on. */
const NEAR: RingKind = { name: 'near', reach: 12_000, cell: 18, peaks: false, stray: 2_000 }
/** Around a landmark that lies beyond it: its own flanks hide its foot. */
const LANDMARK: RingKind = { name: 'landmark', reach: 3_000, cell: 15, peaks: false, stray: 800 }
const MIDDLE: RingKind = { name: 'middle', reach: 45_000, cell: 60, peaks: true, stray: Infinity }
const FAR: RingKind = {
  name: 'far',
  reach: GROUND_REACH + PLANE_STRAY - 1_000,
  cell: 200,
  peaks: true,
  stray: Infinity,
}

/** A window of a plane. */
export interface RingWindow extends GridPoint {
  readonly kind: RingKind
  /** Where the plane touches. */
  readonly plane: LatLon
}

/** Where a plane is laid for a place: rounded, so that what is sent is what is reckoned with. */
export function placeOfPlane({ lat, lon }: LatLon): LatLon {
  return latLon(Number(lat.toFixed(5)), Number(lon.toFixed(5)))
}

function onPlane(plane: LatLon, place: LatLon): GridPoint {
  const { east, north } = toLocal(localFrame(plane, 0), localFrame(place, 0).origin)
  return { east, north }
}

function windowOn(kind: RingKind, plane: LatLon, { east, north }: GridPoint): RingWindow {
  const rounded = (metres: number): number => Math.round(metres / kind.cell) * kind.cell
  return { kind, plane, east: rounded(east), north: rounded(north) }
}

/** What the ground around a place is laid of, the finest first: in the order in which they are looked through. */
export function ringWindows(plane: LatLon, place: LatLon, landmark: LatLon | null): RingWindow[] {
  const here = onPlane(plane, place)
  const there = landmark === null ? null : onPlane(plane, landmark)
  const beyond =
    there !== null &&
    Math.max(Math.abs(there.east - here.east), Math.abs(there.north - here.north)) > NEAR.reach - LANDMARK.reach &&
    Math.hypot(there.east, there.north) < FAR.reach
  const middle = { east: 0, north: 0 }
  return [
    windowOn(CLOSE, plane, here),
    windowOn(NEAR, plane, here),
    ...(beyond ? [windowOn(LANDMARK, plane, there)] : []),
    windowOn(MIDDLE, plane, middle),
    windowOn(FAR, plane, middle),
  ]
}

function sameRing(one: RingWindow, other: RingWindow): boolean {
  return one.kind === other.kind && one.plane.lat === other.plane.lat && one.plane.lon === other.plane.lon
}

/** Whether a window answers what is wanted of another. */
export function serves(window: RingWindow, wanted: RingWindow): boolean {
  return sameRing(window, wanted) && apart(window, wanted) <= wanted.kind.stray
}

/** Whether it may stand in until that one is there: the middle of what is wanted lies well within it. */
export function standsIn(window: RingWindow, wanted: RingWindow): boolean {
  return sameRing(window, wanted) && apart(window, wanted) < wanted.kind.reach / 2
}

function apart(one: GridPoint, other: GridPoint): number {
  return Math.hypot(one.east - other.east, one.north - other.north)
}
