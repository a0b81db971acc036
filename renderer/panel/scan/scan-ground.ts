/** The elevations a scan goes by: one window of cells over all stopping ground and the landmark, the board's own where that reaches. */
import { computed, signal } from '@preact/signals'
import { boundsCentre, boundsOf } from '#core/geo/bounds.ts'
import { geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import type { Shoot } from '#core/record/shoot.ts'
import { landmarkPoints } from '#core/scene/landmark.ts'
import { fetchWindow, groundVersion } from '#renderer/host/ground-windows.ts'
import { homeSpot, shoot } from '#renderer/state/library/library.ts'
import { steady } from '#renderer/job/steady.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { boardGround } from '#renderer/state/plan/terrain.ts'

/** Metres beyond the ground that cameras and near hills are looked for in. */
const BEYOND = 1_000
/** Cells across a window, as for the board: it stays near two million cells. */
const CELLS_ACROSS = 1_401
/** Metres between cells at the least. */
const FINEST = 10
/** Metres from the centre to the sides of the widest window that is asked for: a ground as long as a country ends somewhere. */
const FARTHEST = 200_000

/** The places that a window has to hold. */
export function placesToHold(home: Shoot, landmarkId: string | null): LatLon[] {
  const landmark = home.landmarks.find(({ id }) => id === landmarkId)
  return [
    ...home.stoppingGround.flatMap(({ points }) => points),
    ...(landmark === undefined ? [] : landmarkPoints(landmark)),
  ]
}

export interface GroundWanted {
  readonly centre: LatLon
  /** Metres from the centre to each side. */
  readonly reach: number
}

/** Null without any place. */
export function groundWanted(places: readonly LatLon[]): GroundWanted | null {
  const bounds = boundsOf(places)
  if (bounds === null) return null
  const centre = boundsCentre(bounds)
  const farthest = places.reduce((most, at) => Math.max(most, geodesicDistance(centre, at)), 0)
  return { centre, reach: Math.min(FARTHEST, farthest + BEYOND) }
}

/** Whether a grid holds all places with some ground around them. */
export function gridHolds(grid: ElevationGrid, places: readonly LatLon[]): boolean {
  const [wide, high] = [(grid.columns - 1) * grid.cell, (grid.rows - 1) * grid.cell]
  return places.every((at) => {
    const { east, north } = gridPoint(grid, at)
    const [x, y] = [east - grid.west, grid.north - north]
    return x >= BEYOND && y >= BEYOND && x <= wide - BEYOND && y <= high - BEYOND
  })
}

interface Fetched extends GroundWanted {
  readonly version: number
  readonly grid: ElevationGrid | null
  readonly trouble: string | null
}

const fetched = signal<Fetched | null>(null)

const wanted = computed(() => {
  const home = shoot.value
  if (home === null || home.stoppingGround.length === 0) return null
  const places = placesToHold(home, homeSpot.value?.landmarkId ?? null)
  const around = groundWanted(places)
  return around === null ? null : { places, ...around }
})

function sameWindow(one: GroundWanted, other: GroundWanted): boolean {
  return geodesicDistance(one.centre, other.centre) < 1 && Math.abs(one.reach - other.reach) < 1
}

export interface ScanGround {
  readonly grid: ElevationGrid | null
  /** False while elevations are on their way. */
  readonly settled: boolean
  readonly trouble: string | null
}

/** The board's window serves as long as it holds everything: then the board and the scan tell the same of a place. */
export const scanGround = steady<ScanGround>(() => {
  const want = wanted.value
  const board = boardGround.value
  if (want === null) return { grid: board.grid, settled: true, trouble: null }
  if (board.settled && board.grid !== null && gridHolds(board.grid, want.places))
    return { grid: board.grid, settled: true, trouble: board.trouble }
  const own = fetched.value
  if (own !== null && own.version === groundVersion.value && sameWindow(own, want))
    return { grid: own.grid, settled: true, trouble: own.trouble }
  return { grid: null, settled: false, trouble: null }
})

/** Fetches what the board does not hold; returns the way to stop. */
export function followScanGround(): () => void {
  let stop = new AbortController()
  const end = calmly(() => {
    const want = wanted.value
    if (want === null || scanGround.value.settled || !boardGround.value.settled) return
    stop.abort()
    stop = new AbortController()
    void fetchGround(want, groundVersion.value, stop.signal)
  })
  return () => {
    end()
    stop.abort()
  }
}

async function fetchGround(want: GroundWanted, version: number, stop: AbortSignal): Promise<void> {
  const cell = Math.max(FINEST, Math.ceil((2 * want.reach) / CELLS_ACROSS))
  const answer = await fetchWindow(want.centre, cell, Math.ceil(want.reach / cell), stop)
  if (stop.aborted) return
  fetched.value = {
    ...want,
    version,
    grid: answer.ok && answer.value.known > 0 ? answer.value.grid : null,
    trouble: answer.ok ? answer.value.trouble : answer.fault.message,
  }
}
