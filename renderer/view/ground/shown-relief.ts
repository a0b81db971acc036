/** The ground as a map of its own: which window of elevations is drawn, by what light, and how far from line to line. */
import { type ReadonlySignal, computed, signal } from '@preact/signals'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { holdsPoint } from '#core/ground/rings.ts'
import { MAP_LIGHT, type ReliefLight } from '#core/ground/relief.ts'
import { oneAtATime } from '#renderer/job/one-at-a-time.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { reliefLit } from '#renderer/state/session/ground-overlay.ts'
import { dark } from '#renderer/state/library/settings.ts'
import { steady } from '#renderer/job/steady.ts'
import { mapTerrain } from '#renderer/state/plan/terrain.ts'
import type { ContourDrawing } from './contour-drawing.ts'
import { askerOn, groundNumber } from './ground-asker.ts'
import type { ContoursJob, ContoursUpdate, ReliefJob, ReliefUpdate } from './ground-job.ts'
import type { ReliefPictures } from './relief-pictures.ts'
import { type MapWindow, cellsAround, holdsCells, sunLight } from './relief-region.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import type { Seas } from './water.ts'

let heldBefore: ElevationGrid | null = null

/** The newest window; the one before stays until then, as long as the spot lies in it. */
export const drawnGrid = computed<ElevationGrid | null>(() => {
  const now = mapTerrain.value
  const stop = plan.value?.spot.stop.at ?? null
  if (now !== null) heldBefore = now
  else if (stop === null || (heldBefore !== null && !holdsPoint(heldBefore, gridPoint(heldBefore, stop))))
    heldBefore = null
  return heldBefore
})

/** The sun's light on the ground drawn, the same as long as it stands where it stood; null while it is too low. */
const lightOfSun = steady<ReliefLight | null>(() => {
  const grid = drawnGrid.value
  const when = plan.value?.spot.when
  return grid === null || when === undefined ? null : sunLight(grid, when)
})

/** Which light the relief is drawn by: `low` when the sun was wished but stands too low. */
export const drawnLight = steady<{ readonly light: ReliefLight; readonly from: 'sun' | 'north-west' | 'low' } | null>(
  () => {
    if (drawnGrid.value === null || plan.value === null) return null
    if (reliefLit.value === 'north-west') return { light: MAP_LIGHT, from: 'north-west' }
    const light = lightOfSun.value
    return light === null ? { light: MAP_LIGHT, from: 'low' } : { light, from: 'sun' }
  },
)

const reliefShownSignal = signal<ReliefPictures | null>(null)
export const reliefShown: ReadonlySignal<ReliefPictures | null> = reliefShownSignal
const contoursShownSignal = signal<ContourDrawing | null>(null)
export const contoursShown: ReadonlySignal<ContourDrawing | null> = contoursShownSignal

interface Around {
  /** Whether the ground is drawn at all. */
  readonly on: () => boolean
  readonly window: () => MapWindow | null
  readonly seas: (grid: ElevationGrid) => Promise<Seas>
}

/** Keeps relief and contours in step with board and map. Returns a function that ends it. */
export function followRelief({ on, window, seas }: Around): () => void {
  let grid: ElevationGrid | null = null
  const seasHere = signal<{ readonly grid: ElevationGrid; readonly seas: Seas } | null>(null)
  const asker = (): ReturnType<typeof askerOn> => {
    if (grid === null) throw new Error('relief is asked of no ground')
    return askerOn(grid)
  }
  const relief = oneAtATime<ReliefJob, ReliefUpdate>(
    (job, hearer) => asker()(job, hearer),
    (_, { pictures }) => {
      if (pictures !== null) reliefShownSignal.value = pictures
    },
  )
  const lines = oneAtATime<ContoursJob, ContoursUpdate>(
    (job, hearer) => asker()(job, hearer),
    (_, { drawing }) => {
      contoursShownSignal.value = drawing
    },
  )
  let contoursJob: ContoursJob | null = null
  let reliefKey: string | null = null

  const stopSeas = calmly(() => {
    const now = on() ? drawnGrid.value : null
    if (now === null) {
      seasHere.value = null
      return
    }
    if (seasHere.peek()?.grid === now) return
    void seas(now).then((found) => {
      if (drawnGrid.peek() === now) seasHere.value = { grid: now, seas: found }
    })
  })
  const stopRelief = calmly(() => {
    const here = seasHere.value
    const light = drawnLight.value?.light ?? null
    const palette = dark.value ? 'dark' : 'light'
    if (here === null || light === null) {
      reliefKey = null
      relief.want(null)
      reliefShownSignal.value = null
      return
    }
    grid = here.grid
    const job = { kind: 'relief', ground: groundNumber(grid), light, palette, seas: here.seas } as const
    const key = `${job.ground} ${light.azimuth} ${light.altitude} ${palette}`
    if (key === reliefKey) return
    reliefKey = key
    relief.want(job)
  })
  const stopLines = calmly(() => {
    const here = seasHere.value
    const shown = window()
    const needed = here === null || shown === null ? null : cellsAround(here.grid, shown, 0)
    if (here === null || shown === null || needed === null) {
      contoursJob = null
      lines.want(null)
      contoursShownSignal.value = null
      return
    }
    grid = here.grid
    const ground = groundNumber(grid)
    const zoom = Math.round(shown.zoom)
    const serves = contoursJob?.ground === ground && contoursJob.zoom === zoom && holdsCells(contoursJob.cells, needed)
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
