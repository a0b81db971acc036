/** The elevations around the spots: for each place at work the rings of cells that are at hand, laid together as one ground. */
import { steady } from '#renderer/job/steady.ts'
import { computed, effect } from '@preact/signals'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { laidTogether, seaRing } from '#core/ground/rings.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import { landmarkMiddle } from '#core/scene/bounding-points.ts'
import { type GroundWindowFound, groundChanged, groundVersion } from '#renderer/host/ground-windows.ts'
import { calmly } from './calmly.ts'
import {
  type RingAnswer,
  RINGS_KEPT,
  type WantedRings,
  ringAnswers,
  askRings,
  forgetRings,
  leaveRings,
  wholeAmong,
} from './ring-answers.ts'
import { PLANE_STRAY, type RingWindow, placeOfPlane, ringWindows, serves, standsIn } from './ring-plan.ts'
import { boardShoot, boardSpot } from '#renderer/state/library/library.ts'

const PLANES_KEPT = 8

/** The ground around a spot as far as it is at hand. */
export interface GroundAround {
  /** Null while nothing is at hand, and where no source knows any ground. */
  readonly grid: ElevationGrid | null
  /** The one window of it that the map draws. */
  readonly window: ElevationGrid | null
  readonly found: GroundWindowFound | null
  /** Why ground is missing, in a sentence; null when nothing is wrong. */
  readonly trouble: string | null
  /** Whether this is the answer: nothing better is on its way. */
  readonly settled: boolean
}

const NOTHING_YET: GroundAround = { grid: null, window: null, found: null, trouble: null, settled: false }

/** Where planes touch, the one used last first. Places near each other share one, and with it the wide rings. */
let planes: readonly LatLon[] = []

/** The plane that serves a place, or would be laid for it; changes nothing, so that lists may look. */
function planeNear(stop: LatLon): LatLon {
  const near = planes
    .map((plane) => ({ plane, away: geodesicDistance(plane, stop) }))
    .filter(({ away }) => away <= PLANE_STRAY)
  // The nearest, whichever was used last: so another spot's plane never takes over a place that has one.
  return near.toSorted((one, other) => one.away - other.away)[0]?.plane ?? placeOfPlane(stop)
}

/** For a place whose ground is wanted: its plane becomes the one used last. */
function layPlane(stop: LatLon): LatLon {
  const plane = planeNear(stop)
  planes = [plane, ...planes.filter((other) => other !== plane)].slice(0, PLANES_KEPT)
  return plane
}

function wantedOn(plane: LatLon, stop: LatLon, landmark: Landmark | null): WantedRings {
  return ringWindows(plane, stop, landmark === null ? null : landmarkMiddle(landmarkPoints(landmark)))
}

/** What has been answered for a place; until then whatever windows it lies well within, so that a drag far off keeps its ground. */
function around(stop: LatLon, landmark: Landmark | null): GroundAround {
  const plane = planeNear(stop)
  const wanted = wantedOn(plane, stop, landmark)
  const all = ringAnswers.value
  const exact = wanted.map((window) => all.find((answer) => serves(answer, window)))
  const whole = wholeAmong(exact)
  const settled = exact.every((answer, at) => answer !== undefined || (whole && isBeyond(wanted[at])))
  const found = laid(
    exact.map((answer, at) => answer ?? all.find((other) => standsIn(other, wanted[at] as RingWindow))),
  )
  if (found !== null) return { ...found, settled }
  // Beyond the old plane, until the first windows of the new one are there.
  for (const other of planes) {
    if (other === plane) continue
    const old = wantedOn(other, stop, landmark).map((window) => all.find((answer) => standsIn(answer, window)))
    const standIn = old.some((answer) => answer?.kind.name === 'near') ? laid(old) : null
    if (standIn !== null) return { ...standIn, settled: false }
  }
  return NOTHING_YET
}

function isBeyond(window: RingWindow | undefined): boolean {
  return window !== undefined && window.kind.name !== 'close' && window.kind.name !== 'near'
}

interface Laid {
  readonly parts: readonly (RingAnswer | undefined)[]
  readonly ground: Omit<GroundAround, 'settled'>
}

/** Grounds laid before: the same object for as long as all its windows are the same. */
let before: readonly Laid[] = []

/** Null without a window that the map could draw. */
function laid(parts: readonly (RingAnswer | undefined)[]): Laid['ground'] | null {
  const near = parts.find((part) => part?.kind.name === 'near')
  if (near === undefined) return null
  const known = before.find(
    (other) => parts.length === other.parts.length && parts.every((part, at) => part === other.parts[at]),
  )
  if (known !== undefined) return known.ground
  const window = knownGrid(near)
  const read = parts.flatMap((part) => (part === undefined ? [] : (knownGrid(part) ?? [])))
  const grids = window !== null && near.found?.seaBeyond === true ? [...read, seaRing(window.centre)] : read
  const ground = {
    grid: window === null ? null : laidTogether(grids),
    window,
    found: near.found,
    trouble: parts.find((part) => part?.trouble !== null && part?.trouble !== undefined)?.trouble ?? null,
  }
  before = [{ parts, ground }, ...before].slice(0, RINGS_KEPT.near + 2)
  return ground
}

function knownGrid({ found }: RingAnswer): ElevationGrid | null {
  return found !== null && found.known > 0 ? found.grid : null
}

/** The ground around a spot of a shoot; asked for when there is none yet. */
export function groundFor(stop: LatLon, landmark: Landmark | null): GroundAround {
  const plane = layPlane(stop)
  const now = around(stop, landmark)
  if (!now.settled) void askRings(wantedOn(plane, stop, landmark), false)
  return now
}

/** Elevations at hand, without asking: for lists of spots, which must not fetch ground for each. */
export function terrainAtHand(stop: LatLon, landmark: Landmark | null): ElevationGrid | null {
  return around(stop, landmark).grid
}

/** By identity the same while only other things move: a dragged standpoint wants no other ground. */
const boardStop = computed(() => boardSpot.value?.stop.at ?? null)
const boardLandmark = computed(
  () => boardShoot.value?.landmarks.find((candidate) => candidate.id === boardSpot.value?.landmarkId) ?? null,
)

/** The ground of the spot on the board. */
export const boardGround = steady<GroundAround>(() =>
  boardStop.value === null ? NOTHING_YET : around(boardStop.value, boardLandmark.value),
)

export const terrain = computed<ElevationGrid | null>(() => boardGround.value.grid)

/** The window of the board's ground that the map draws: the same while wider rings come. */
export const mapTerrain = computed<ElevationGrid | null>(() => boardGround.value.window)

/** Where the board's elevations come from and how fine they are; null while there are none. */
export const terrainSource = computed(() => boardGround.value.found)
/** Why the board's elevations could not be had, or not all; null when nothing is wrong. */
export const terrainTrouble = computed(() => boardGround.value.trouble)

/** Keeps asking for the ground of wherever the spot on the board goes, again when the sources change. */
export function followTerrain(): void {
  effect(() => {
    if (groundVersion.value > 0) forgetTerrain()
  })
  calmly(() => {
    const [stop, landmark] = [boardStop.value, boardLandmark.value]
    // Also where nothing had come yet that could be forgotten.
    void groundVersion.value
    if (stop === null) return
    const plane = layPlane(stop)
    if (boardGround.value.settled) return
    const wanted = wantedOn(plane, stop, landmark)
    leaveRings(wanted)
    void askRings(wanted, true)
  })
}

/** What is known is cut again. */
function forgetTerrain(): void {
  forgetRings()
  before = []
}

/** Asks once more for what could not be had. */
export function askTerrainAgain(): void {
  groundChanged()
}
