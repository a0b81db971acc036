/** What the user saw and the elevations do not know: a row of trees, a wall, houses; a line with a height that hides what is behind it. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { type ElevationGrid, type GridPoint, elevationAt, gridPoint } from './elevation-grid.ts'

export interface Screen {
  /** Its foot, from corner to corner. */
  readonly line: readonly LatLon[]
  /** Metres above the ground along it. */
  readonly height: number
}

/** Where a line of sight crosses a screen. */
export interface ScreenCrossing {
  /** Index among the screens. */
  readonly screen: number
  /** Metres from the line's start. */
  readonly distance: number
  /** Metres above the sea of the screen's top there; null where the ground under it is unknown. */
  readonly top: number | null
}

/** Every crossing of a line with the screens; a stretch exactly parallel to the line has none. */
export function screenCrossings(
  grid: ElevationGrid,
  from: GridPoint,
  to: GridPoint,
  screens: readonly Screen[],
): ScreenCrossing[] {
  return screens.flatMap((screen, index) => {
    const corners = screen.line.map((place) => gridPoint(grid, place))
    return corners.flatMap((corner, at) => {
      const next = corners[at + 1]
      const share = next === undefined ? null : shareOfCrossing(from, to, corner, next)
      if (share === null) return []
      const ground = elevationAt(
        grid,
        from.east + share * (to.east - from.east),
        from.north + share * (to.north - from.north),
      )
      const distance = share * Math.hypot(to.east - from.east, to.north - from.north)
      return [{ screen: index, distance, top: ground === null ? null : ground + screen.height }]
    })
  })
}

/** How far along the first line, 0..1, it meets the second; null when it does not. */
function shareOfCrossing(from: GridPoint, to: GridPoint, one: GridPoint, other: GridPoint): number | null {
  const [east, north] = [to.east - from.east, to.north - from.north]
  const [across, along] = [other.east - one.east, other.north - one.north]
  const turn = east * along - north * across
  if (turn === 0) return null
  const [offEast, offNorth] = [one.east - from.east, one.north - from.north]
  const share = (offEast * along - offNorth * across) / turn
  const shareOfOther = (offEast * north - offNorth * east) / turn
  return share >= 0 && share <= 1 && shareOfOther >= 0 && shareOfOther <= 1 ? share : null
}
