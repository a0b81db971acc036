/** The elevations around the spots: one window of cells for each place at work, cut by the services, kept while it serves. */
import { computed, effect, signal } from '@preact/signals'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { type GroundWindowFound, fetchWindow, groundChanged, groundVersion } from '#renderer/host/ground-windows.ts'
import { calmly } from './calmly.ts'
import { boardShoot, boardSpot } from '#renderer/state/library/library.ts'

/** Metres around a spot that its hills are looked for in; farther landmarks are reached all the same, up to FARTHEST. */
const REACH = 12_000
const FARTHEST = 30_000
/** Metres between cells by the reach: hills far away need no finer ones, and a window stays near two million cells. */
const CELLS_ACROSS = 1_401
const FINEST = 10
/** Metres that a spot may have moved from a window's middle before another is cut. */
const STRAY = 2_000
/** Windows kept: that of the board, those of four spots side by side, and the board's before. */
const KEPT = 6

interface Wanted {
  readonly centre: LatLon
  readonly reach: number
}

/** What came of asking: a window, or why there is none. */
interface Answered extends Wanted {
  readonly found: GroundWindowFound | null
  readonly trouble: string | null
}

/** The ground around a spot as far as it is at hand. */
export interface GroundAround {
  /** Null while nothing is at hand, and where no source knows any ground. */
  readonly grid: ElevationGrid | null
  readonly found: GroundWindowFound | null
  /** Why ground is missing, in a sentence; null when nothing is wrong. */
  readonly trouble: string | null
  /** Whether this is the answer: nothing better is on its way. */
  readonly settled: boolean
}

const NOTHING_YET: GroundAround = { grid: null, found: null, trouble: null, settled: false }

/** Newest first. */
const answered = signal<readonly Answered[]>([])

interface Asking extends Wanted {
  readonly stop: AbortController
  readonly forBoard: boolean
}

let asking: readonly Asking[] = []

function wantedFor(stop: LatLon, landmark: Landmark | null): Wanted {
  const places = landmark === null ? [] : landmarkPoints(landmark)
  const farthest = places.reduce((most, at) => Math.max(most, geodesicDistance(stop, at)), 0)
  return { centre: stop, reach: Math.min(FARTHEST, Math.max(REACH, farthest * 1.15 + STRAY)) }
}

function serves(window: Wanted, wanted: Wanted): boolean {
  return geodesicDistance(window.centre, wanted.centre) <= STRAY && window.reach >= wanted.reach - STRAY
}

function cellFor(reach: number): number {
  return Math.max(FINEST, Math.ceil((2 * reach) / CELLS_ACROSS))
}

/** What has been answered for a place; until then whatever window it lies well within, so that a drag far off keeps its ground. */
function around(wanted: Wanted): GroundAround {
  const answer = answered.value.find((window) => serves(window, wanted))
  if (answer !== undefined) return { ...gridOf(answer), settled: true }
  const standIn = answered.value.find(
    (window) => window.found !== null && geodesicDistance(window.centre, wanted.centre) < window.reach / 2,
  )
  return standIn === undefined ? NOTHING_YET : { ...gridOf(standIn), settled: false }
}

function gridOf({ found, trouble }: Answered): Omit<GroundAround, 'settled'> {
  return { grid: found !== null && found.known > 0 ? found.grid : null, found, trouble }
}

async function ask(wanted: Wanted, forBoard: boolean): Promise<void> {
  if (answered.peek().some((window) => serves(window, wanted)) || asking.some((other) => serves(other, wanted))) return
  const mine: Asking = { ...wanted, forBoard, stop: new AbortController() }
  asking = [...asking, mine]
  const cell = cellFor(wanted.reach)
  const answer = await fetchWindow(wanted.centre, cell, Math.ceil(wanted.reach / cell), mine.stop.signal)
  asking = asking.filter((other) => other !== mine)
  if (mine.stop.signal.aborted) return
  const [found, trouble] = answer.ok ? [answer.value, answer.value.trouble] : [null, answer.fault.message]
  answered.value = [{ ...wanted, found, trouble }, ...answered.peek()].slice(0, KEPT)
}

/** Gives up what was on its way for where the board was before. */
function leave(wanted: Wanted): void {
  const left = asking.filter((other) => other.forBoard && !serves(other, wanted))
  asking = asking.filter((other) => !left.includes(other))
  for (const { stop } of left) stop.abort()
}

/** The ground around a spot of a shoot; asked for when there is none yet. */
export function groundFor(stop: LatLon, landmark: Landmark | null): GroundAround {
  const wanted = wantedFor(stop, landmark)
  const now = around(wanted)
  if (!now.settled) void ask(wanted, false)
  return now
}

/** Elevations at hand, without asking: for lists of spots, which must not fetch ground for each. */
export function terrainAtHand(stop: LatLon, landmark: Landmark | null): ElevationGrid | null {
  return around(wantedFor(stop, landmark)).grid
}

/** By identity the same while only other things move: a dragged standpoint wants no other ground. */
const boardStop = computed(() => boardSpot.value?.stop.at ?? null)
const boardLandmark = computed(
  () => boardShoot.value?.landmarks.find((candidate) => candidate.id === boardSpot.value?.landmarkId) ?? null,
)

const boardWanted = computed<Wanted | null>(() =>
  boardStop.value === null ? null : wantedFor(boardStop.value, boardLandmark.value),
)

/** The ground of the spot on the board. */
export const boardGround = computed<GroundAround>(() => {
  const wanted = boardWanted.value
  return wanted === null ? NOTHING_YET : around(wanted)
})

export const terrain = computed<ElevationGrid | null>(() => boardGround.value.grid)

/** Where the board's elevations come from and how fine they are; null while there are none. */
export const terrainSource = computed(() => boardGround.value.found)
/** Why the board's elevations could not be had, or not all; null when nothing is wrong. */
export const terrainTrouble = computed(() => boardGround.value.trouble)

/** Keeps asking for the ground of wherever the spot on the board goes, anew when the sources change. */
export function followTerrain(): void {
  effect(() => {
    if (groundVersion.value > 0) forgetTerrain()
  })
  calmly(() => {
    const wanted = boardWanted.value
    if (wanted === null || boardGround.value.settled) return
    leave(wanted)
    void ask(wanted, true)
  })
}

/** What is known is cut anew. */
function forgetTerrain(): void {
  for (const other of asking) other.stop.abort()
  asking = []
  answered.value = []
}

/** Asks once more for what could not be had. */
export function askTerrainAgain(): void {
  groundChanged()
}
