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

/** A screen on a grid's plane. */
export interface PlacedScreen {
  /** Index among the screens. */
  readonly screen: number
  readonly height: number
  readonly corners: readonly GridPoint[]
}

const placedBefore = new WeakMap<
  readonly Screen[],
  { readonly grid: ElevationGrid; readonly placed: readonly PlacedScreen[] }
>()

/** The screens on a grid, kept for as long as both are the same objects. */
export function placedScreens(grid: ElevationGrid, screens: readonly Screen[]): readonly PlacedScreen[] {
  const before = placedBefore.get(screens)
  if (before !== undefined && before.grid === grid) return before.placed
  const placed = screens.map(({ line, height }, screen): PlacedScreen => {
    const corners = line.map((place) => gridPoint(grid, place))
    return { screen, height, corners }
  })
  placedBefore.set(screens, { grid, placed })
  return placed
}

/** Every crossing of a line with the screens; a stretch exactly parallel to the line has none. */
export function screenCrossings(
  grid: ElevationGrid,
  from: GridPoint,
  to: GridPoint,
  screens: readonly Screen[],
): ScreenCrossing[] {
  if (screens.length === 0) return []
  return placedScreens(grid, screens).flatMap(({ screen, height, corners }) =>
    corners.flatMap((corner, at) => {
      const next = corners[at + 1]
      const share = next === undefined ? null : shareOfCrossing(from, to, corner, next)
      if (share === null) return []
      const distance = share * Math.hypot(to.east - from.east, to.north - from.north)
      return [{ screen, distance, top: screenTop(grid, from, to, share, height) }]
    }),
  )
}

/** Metres above the sea of a screen's top where a line crosses it; null where the ground under it is unknown. */
export function screenTop(
  grid: ElevationGrid,
  from: GridPoint,
  to: GridPoint,
  share: number,
  height: number,
): number | null {
  const ground = elevationAt(
    grid,
    from.east + share * (to.east - from.east),
    from.north + share * (to.north - from.north),
  )
  return ground === null ? null : ground + height
}

/** How far along the first line, 0..1, it meets the second; null when it does not. */
export function shareOfCrossing(from: GridPoint, to: GridPoint, one: GridPoint, other: GridPoint): number | null {
  const [east, north] = [to.east - from.east, to.north - from.north]
  const [across, along] = [other.east - one.east, other.north - one.north]
  const turn = east * along - north * across
  if (turn === 0) return null
  const [offEast, offNorth] = [one.east - from.east, one.north - from.north]
  const share = (offEast * along - offNorth * across) / turn
  const shareOfOther = (offEast * north - offNorth * east) / turn
  return share >= 0 && share <= 1 && shareOfOther >= 0 && shareOfOther <= 1 ? share : null
}
