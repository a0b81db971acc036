/** The first spot of a shoot that has its landmark: on the side that the sun lights longest, where both sizes fit, in that light. */
import { geodesicLine } from '#core/geo/geodesic.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { Span } from '#core/light/crossing.ts'
import { dayWindows, totalOf } from '#core/light/light-window.ts'
import { type LightWishes, NO_WISHES } from '#core/light/light-wish.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { type Landmark, landmarkPoints } from '#core/scene/landmark.ts'
import type { CivilDay, Zone } from '#core/time/civil.ts'
import { MINUTE } from '#core/time/duration.ts'
import { wrapBearing } from '#core/units/angle.ts'
import { lightSceneOf } from './day-light.ts'
import { DAYS_AHEAD, daysAhead, middleOfDaylight, timeWithin } from './first-time.ts'
import { type NewSpotParts, type SideArrangement, arrangedOnSide, focalLengthsToTry } from './side-arrangement.ts'

export interface FirstSpot {
  readonly spot: Spot
  /** The light that it is planned in; null when that is daylight alone. */
  readonly light: LightWishes | null
}

/** The sides to look at: a span has two, square to the line from end to end; all else is looked at from eight, a building square to its first edge. */
export function sidesOf(landmark: Landmark): readonly number[] {
  const points = landmarkPoints(landmark)
  const [first, second] = [points[0], landmark.kind === 'span' ? points.at(-1) : points[1]]
  const along = first === undefined || second === undefined ? null : geodesicLine(first, second).bearing
  const square = wrapBearing((along ?? 90) + 90)
  const turns = landmark.kind === 'span' && along !== null ? [0, 180] : [0, 180, 90, 270, 45, 135, 225, 315]
  return turns.map((turn) => wrapBearing(square + turn))
}

function spansOf({ plan, found }: SideArrangement, wishes: LightWishes, day: CivilDay, zone: Zone): readonly Span[] {
  return dayWindows(lightSceneOf(plan, found, null), wishes, day, zone).common
}

/** Sides whose hours differ by less are as good as each other: then the first named stays. */
const ALIKE = 20 * MINUTE

/** The side that has this light longest on the first day on which any has it; null when none has. */
function sunniest(
  sides: readonly SideArrangement[],
  wishes: LightWishes,
  days: readonly CivilDay[],
  zone: Zone,
): SideArrangement | null {
  for (const day of days) {
    let best: SideArrangement | null = null
    let most = 0
    for (const side of sides) {
      const total = totalOf(spansOf(side, wishes, day, zone))
      if (total <= most + (best === null ? 0 : ALIKE)) continue
      best = side
      most = total
    }
    if (best !== null) return best
  }
  return null
}

/** All sides at the first focal length at which any fits. */
function arrangedSides(shoot: Shoot, landmark: Landmark, parts: NewSpotParts, terrain: ElevationGrid | null) {
  let first: readonly SideArrangement[] = []
  for (const focal of focalLengthsToTry(shoot)) {
    const sides = sidesOf(landmark).flatMap((bearing) => arrangedOnSide(shoot, parts, bearing, focal, terrain) ?? [])
    const fitting = sides.filter(({ fits }) => fits)
    if (fitting.length > 0) return fitting
    if (first.length === 0) first = sides
  }
  return first
}

/** What is looked for, the most wanted first: the landmark lit besides what the shoot wants, then only lit. */
function lightsToTry({ light }: Shoot): readonly LightWishes[] {
  const wanted = { ...light, landmark: light.landmark ?? 'lit' } as const
  return [wanted, { ...NO_WISHES, landmark: 'lit' }]
}

/** Null when the shoot has no landmark that anybody could stand before. Time is from `now` on, days are those of `zone`. */
export function firstSpot(
  shoot: Shoot,
  named: Pick<NewSpotParts, 'id' | 'rank'>,
  now: number,
  zone: Zone,
  terrain: ElevationGrid | null = null,
): FirstSpot | null {
  const [landmark] = shoot.landmarks
  if (landmark === undefined) return null
  const sides = arrangedSides(shoot, landmark, { ...named, when: now }, terrain)
  const days = daysAhead(now, zone, DAYS_AHEAD)
  for (const light of lightsToTry(shoot)) {
    const side = sunniest(sides, light, days, zone)
    if (side === null) continue
    const { spot } = side.plan
    for (const day of days) {
      const when = timeWithin(spot.stop.at, spansOf(side, light, day, zone), now)
      if (when !== null) return { spot: { ...spot, when }, light }
    }
  }
  const [any] = sides
  if (any === undefined) return null
  const { spot } = any.plan
  return { spot: { ...spot, when: middleOfDaylight(spot.stop.at, now, zone) }, light: null }
}
