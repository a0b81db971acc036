/** The ground as a map of its own: which window of elevations is drawn, by what light, and how far from line to line. */
import { computed, effect, signal } from '@preact/signals'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { MAP_LIGHT, type ReliefLight } from '#core/ground/relief.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { sunAt } from '#core/light/sky.ts'
import { oneAtATime } from '#renderer/job/one-at-a-time.ts'
import { plan } from '#renderer/state/derived.ts'
import { reliefLit } from '#renderer/state/ground-shown.ts'
import { dark } from '#renderer/state/settings.ts'
import { terrain } from '#renderer/state/terrain.ts'
import { type Cells, type ContourDrawing, strideFor } from './contour-drawing.ts'
import { askerOn, groundNumber } from './ground-asker.ts'
import type { ContoursJob, ContoursUpdate, ReliefJob, ReliefUpdate } from './ground-job.ts'
import { laidGrid } from './map-raster.ts'
import type { ReliefPictures } from './relief-pictures.ts'
import { warped } from './warp.ts'
import type { Seas } from './water.ts'

/** Degrees above the horizon from which the sun lights the drawn relief. */
const SUN_HIGH = 3
/** Degrees in which the light turns: less is not seen, and would draw the map anew with every minute. */
const TURN = 2

/** The sun's own light at an instant; null while it is too low to draw by. */
export function sunLight(grid: ElevationGrid, instant: number): ReliefLight | null {
  const { azimuth, altitude } = sunAt(grid.centre, instant)
  const apparent = apparentAltitude(altitude)
  if (apparent < SUN_HIGH) return null
  return { azimuth: (Math.round(azimuth / TURN) * TURN) % 360, altitude: Math.max(SUN_HIGH, Math.round(apparent)) }
}

let heldBefore: ElevationGrid | null = null

/** The newest window; the one before stays until then, as long as the spot lies in it. */
export const drawnGrid = computed<ElevationGrid | null>(() => {
  const now = terrain.value
  const stop = plan.value?.spot.stop.at ?? null
  if (now !== null) heldBefore = now
  else if (stop === null || (heldBefore !== null && !lies(heldBefore, gridPoint(heldBefore, stop)))) heldBefore = null
  return heldBefore
})

function lies({ west, north, cell, columns, rows }: ElevationGrid, point: { east: number; north: number }): boolean {
  const [right, down] = [point.east - west, north - point.north]
  return right >= 0 && down >= 0 && right <= (columns - 1) * cell && down <= (rows - 1) * cell
}

/** Which light the relief is drawn by: `low` when the sun was wished but stands too low. */
export const drawnLight = computed<{ readonly light: ReliefLight; readonly from: 'sun' | 'north-west' | 'low' } | null>(
  () => {
    const grid = drawnGrid.value
    const when = plan.value?.spot.when
    if (grid === null || when === undefined) return null
    if (reliefLit.value === 'north-west') return { light: MAP_LIGHT, from: 'north-west' }
    const light = sunLight(grid, when)
    return light === null ? { light: MAP_LIGHT, from: 'low' } : { light, from: 'sun' }
  },
)

export const reliefShown = signal<ReliefPictures | null>(null)
export const contoursShown = signal<ContourDrawing | null>(null)

/** What the map shows, in world coordinates, at a zoom. */
export interface MapWindow {
  readonly zoom: number
  readonly west: number
  readonly north: number
  readonly east: number
  readonly south: number
}

/** Cells by which a region of contours is rounded outward, times the cells that are skipped. */
const BLOCK = 32

/** The cells in a window and about it; null when it shows none of the grid. */
export function cellsAround(grid: ElevationGrid, window: MapWindow, beyond: number): Cells | null {
  const { raster, toGrid } = laidGrid(grid)
  const middle = raster.west + (raster.columns * raster.pixel) / 2
  const turn = Math.round((window.west + window.east) / 2 - middle)
  const width = (window.east - window.west) * beyond
  const height = (window.south - window.north) * beyond
  const corners = [window.west - width, window.east + width].flatMap((x) =>
    [window.north - height, window.south + height].map((y) =>
      warped(toGrid, (x - turn - raster.west) / raster.pixel, (y - raster.north) / raster.pixel),
    ),
  )
  const block = BLOCK * strideFor(grid, window.zoom)
  const round = (value: number, way: (value: number) => number, most: number): number =>
    Math.max(0, Math.min(most, way(value / block) * block))
  const cells = {
    left: round(Math.min(...corners.map(({ x }) => x)), Math.floor, grid.columns),
    right: round(Math.max(...corners.map(({ x }) => x)), Math.ceil, grid.columns),
    top: round(Math.min(...corners.map(({ y }) => y)), Math.floor, grid.rows),
    bottom: round(Math.max(...corners.map(({ y }) => y)), Math.ceil, grid.rows),
  }
  return cells.right - cells.left < 2 || cells.bottom - cells.top < 2 ? null : cells
}

function holds(outer: Cells, inner: Cells): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}

interface Around {
  /** Whether the ground is drawn at all. */
  readonly on: () => boolean
  readonly window: () => MapWindow | null
  readonly seas: (grid: ElevationGrid) => Promise<Seas>
}

/** Keeps relief and contours in step with board and map; answers with what ends it. */
export function followRelief({ on, window, seas }: Around): () => void {
  let grid: ElevationGrid | null = null
  const told = signal<{ readonly grid: ElevationGrid; readonly seas: Seas } | null>(null)
  const asker = (): ReturnType<typeof askerOn> => {
    if (grid === null) throw new Error('relief is asked of no ground')
    return askerOn(grid)
  }
  const relief = oneAtATime<ReliefJob, ReliefUpdate>(
    (job, hearer) => asker()(job, hearer),
    (_, { pictures }) => {
      if (pictures !== null) reliefShown.value = pictures
    },
  )
  const lines = oneAtATime<ContoursJob, ContoursUpdate>(
    (job, hearer) => asker()(job, hearer),
    (_, { drawing }) => {
      contoursShown.value = drawing
    },
  )
  let contoursJob: ContoursJob | null = null
  let reliefKey: string | null = null

  const stopSeas = effect(() => {
    const now = on() ? drawnGrid.value : null
    if (now === null) {
      told.value = null
      return
    }
    if (told.peek()?.grid === now) return
    void seas(now).then((found) => {
      if (drawnGrid.peek() === now) told.value = { grid: now, seas: found }
    })
  })
  const stopRelief = effect(() => {
    const here = told.value
    const light = drawnLight.value?.light ?? null
    const palette = dark.value ? 'dark' : 'light'
    if (here === null || light === null) {
      reliefKey = null
      relief.want(null)
      reliefShown.value = null
      return
    }
    grid = here.grid
    const job = { kind: 'relief', ground: groundNumber(grid), light, palette, seas: here.seas } as const
    const key = `${job.ground} ${light.azimuth} ${light.altitude} ${palette}`
    if (key === reliefKey) return
    reliefKey = key
    relief.want(job)
  })
  const stopLines = effect(() => {
    const here = told.value
    const shown = window()
    const needed = here === null || shown === null ? null : cellsAround(here.grid, shown, 0)
    if (here === null || shown === null || needed === null) {
      contoursJob = null
      lines.want(null)
      contoursShown.value = null
      return
    }
    grid = here.grid
    const ground = groundNumber(grid)
    const zoom = Math.round(shown.zoom)
    const serves = contoursJob?.ground === ground && contoursJob.zoom === zoom && holds(contoursJob.cells, needed)
    if (serves) return
    contoursJob = { kind: 'contours', ground, zoom, cells: cellsAround(grid, shown, 0.6) ?? needed, seas: here.seas }
    lines.want(contoursJob)
  })
  return () => {
    stopSeas()
    stopRelief()
    stopLines()
    relief.want(null)
    lines.want(null)
  }
}
