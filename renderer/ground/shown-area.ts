/** The area shown over the map: what the board asks of the ground, and how far the answer is. */
import { computed, effect, signal } from '@preact/signals'
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { heightShowing } from '#core/ground/viewshed.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { SUN_RADIUS, sunAt } from '#core/light/sky.ts'
import { lensOn, mainPost } from '#core/plan/ground-reading.ts'
import type { Levels, Plan } from '#core/plan/plan.ts'
import type { Hearer } from '#renderer/job/ask-jobs.ts'
import { assessment, plan } from '#renderer/state/derived.ts'
import { type GroundShown, groundShown, seenAt, wantedShare } from '#renderer/state/ground-shown.ts'
import { liveShoot, liveSpot } from '#renderer/state/library.ts'
import { askerOn, groundNumber } from './ground-asker.ts'
import type { AreaJob, AreaUpdate } from './ground-job.ts'
import { type AreaState, NO_AREA, type WantedArea, keepArea } from './keep-area.ts'

/** Why nothing can be shown. */
export type NoArea = 'no-elevations' | 'no-landmark' | 'outside' | 'sun-down'

export interface AreaAsk {
  readonly grid: ElevationGrid
  readonly job: WantedArea
}

/** Degrees under which the sun reaches no ground at all, not even high peaks. */
const SUN_GONE = -3

export function areaAsk(
  shown: Exclude<GroundShown, 'none'>,
  now: Plan,
  levels: Levels,
  share: number,
  seen: 'ground' | 'subject',
): AreaAsk | NoArea {
  const grid = now.terrain
  if (grid === null) return 'no-elevations'
  const ground = groundNumber(grid)
  const { refraction } = now.shoot
  if (shown === 'shade') {
    const { azimuth, altitude } = sunAt(grid.centre, now.spot.when)
    const sun = { azimuth, altitude: apparentAltitude(altitude) + SUN_RADIUS }
    return sun.altitude < SUN_GONE ? 'sun-down' : { grid, job: { kind: 'shade', ground, sun, refraction } }
  }
  const eye = shown === 'landmark' ? landmarkEye(grid, now, levels, share) : standpointEye(grid, now, levels, seen)
  if (eye === null) return 'no-landmark'
  if (!holds(grid, eye.east, eye.north)) return 'outside'
  return { grid, job: { kind: 'exact', ground, ask: { ...eye, refraction, radius: null } } }
}

interface Eye {
  readonly east: number
  readonly north: number
  readonly height: number
  readonly targetHeight: number
}

/** Looked back from the landmark: what it sees at the lens's height above the ground sees it. */
function landmarkEye(grid: ElevationGrid, now: Plan, levels: Levels, share: number): Eye | null {
  const post = now.landmark === null ? null : mainPost(now.landmark, levels.landmark)
  if (post === null) return null
  return {
    ...gridPoint(grid, post.at),
    height: heightShowing(post.low, post.high - post.low, share),
    targetHeight: now.spot.standpoint.lensHeight,
  }
}

function standpointEye(grid: ElevationGrid, now: Plan, levels: Levels, seen: 'ground' | 'subject'): Eye {
  const { east, north, elevation } = lensOn(grid, now, levels)
  return { east, north, height: elevation, targetHeight: seen === 'subject' ? now.shoot.subject.height : 0 }
}

function holds({ west, north, cell, columns, rows }: ElevationGrid, atEast: number, atNorth: number): boolean {
  const column = (atEast - west) / cell
  const row = (north - atNorth) / cell
  return column >= 0 && row >= 0 && column <= columns - 1 && row <= rows - 1
}

export const shownArea = signal<AreaState>(NO_AREA)

/** What is asked now; null while nothing shall be shown. */
export const wantedArea = computed<AreaAsk | NoArea | null>(() => {
  const shown = groundShown.value
  const now = plan.value
  const reading = assessment.value
  if (shown === 'none' || now === null || reading === null) return null
  return areaAsk(shown, now, reading.levels, wantedShare.value, seenAt.value)
})

/** Keeps the area in step with the board; answers with what ends it. */
export function followArea(): () => void {
  let grid: ElevationGrid | null = null
  const keeper = keepArea({
    ask(job: AreaJob, hearer: Hearer<AreaUpdate>) {
      if (grid === null) throw new Error('an area is asked of no ground')
      return askerOn(grid)(job, hearer)
    },
    show: (state) => {
      shownArea.value = state
    },
  })
  const stop = effect(() => {
    const asked = wantedArea.value
    const moving = liveSpot.value !== null || liveShoot.value !== null
    const job = asked === null || typeof asked === 'string' ? null : asked
    if (job !== null) grid = job.grid
    keeper.want(job === null ? null : job.job, moving)
  })
  return () => {
    stop()
    keeper.want(null, false)
  }
}
