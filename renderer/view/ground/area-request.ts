/** What the ground's worker is asked for a way of showing the ground, by the plan as it is now. */
import { type ElevationGrid, gridPoint } from '#core/ground/elevation-grid.ts'
import { ringAt, widestFine } from '#core/ground/rings.ts'
import { heightShowing } from '#core/ground/viewshed.ts'
import { apparentAltitude } from '#core/light/refraction.ts'
import { SUN_RADIUS, sunAt } from '#core/light/sky.ts'
import { lensOn } from '#core/plan/ground-reading.ts'
import { footOnGrid, mainPost, onGrid } from '#core/plan/landmark-shown.ts'
import { highestOfSummit } from '#core/plan/summit-shown.ts'
import type { Levels, Plan } from '#core/plan/plan.ts'
import type { GroundOverlay } from '#renderer/state/session/ground-overlay.ts'
import { groundNumber } from './ground-asker.ts'
import type { WantedArea } from './keep-area.ts'

/** Why nothing can be shown. */
export type NoArea = 'no-elevations' | 'no-landmark' | 'outside' | 'sun-down'

export interface AreaRequest {
  readonly grid: ElevationGrid
  readonly job: WantedArea
}

/** Metres between the cells of an area at the most: that of the window that the map draws. */
const LARGEST_CELL = 36

/** Degrees under which the sun reaches no ground at all, not even high peaks. */
const SUN_GONE = -3

export function areaRequest(
  shown: Exclude<GroundOverlay, 'none'>,
  now: Plan,
  levels: Levels,
  share: number,
  seen: 'ground' | 'subject',
): AreaRequest | NoArea {
  if (now.terrain === null) return 'no-elevations'
  const grid = widestFine(now.terrain, LARGEST_CELL)
  const ground = groundNumber(grid)
  const { refraction } = now.shoot
  if (shown === 'shade') {
    const { azimuth, altitude } = sunAt(grid.centre, now.spot.when)
    const sun = { azimuth, altitude: apparentAltitude(altitude) + SUN_RADIUS }
    return sun.altitude < SUN_GONE ? 'sun-down' : { grid, job: { kind: 'shade', ground, sun, refraction } }
  }
  const eye = shown === 'landmark' ? landmarkEye(grid, now, levels, share) : standpointEye(grid, now, levels, seen)
  if (eye === null) return 'no-landmark'
  if (ringAt(grid, eye) === null) return 'outside'
  // Without their names: what is asked stays the same when one is renamed.
  const obstructions = now.shoot.obstructions.map(({ line, height }) => ({ line, height }))
  return { grid, job: { kind: 'exact', ground, request: { ...eye, refraction, radius: null, obstructions } } }
}

interface Eye {
  readonly east: number
  readonly north: number
  readonly height: number
  readonly targetHeight: number
}

/** Looked back from the landmark: what it sees at the lens's height above the ground sees it. */
function landmarkEye(grid: ElevationGrid, now: Plan, levels: Levels, share: number): Eye | null {
  const { landmark, spot } = now
  if (landmark === null) return null
  const post = mainPost(landmark, footOnGrid(grid, landmark, levels.landmark, levels.from.landmark))
  if (post === null) return null
  const targetHeight = spot.standpoint.lensHeight
  if (landmark.kind === 'summit') {
    const { elevation, ...at } = highestOfSummit(grid, onGrid(grid, post))
    return { ...at, height: elevation, targetHeight }
  }
  return { ...gridPoint(grid, post.at), height: heightShowing(post.low, post.high - post.low, share), targetHeight }
}

function standpointEye(grid: ElevationGrid, now: Plan, levels: Levels, seen: 'ground' | 'subject'): Eye {
  const { east, north, elevation } = lensOn(grid, now, levels)
  return { east, north, height: elevation, targetHeight: seen === 'subject' ? now.shoot.subject.height : 0 }
}
