/** What the user saw and the elevations do not know: a row of trees, a wall, houses; a line with a height that hides what is behind it. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { keptWith } from '#core/kept-with.ts'
import { type ElevationGrid, type GridPoint, elevationAt, gridPoint } from './elevation-grid.ts'

export interface Obstruction {
  /** Its foot, from corner to corner. */
  readonly line: readonly LatLon[]
  /** Metres above the ground along it. */
  readonly height: number
}

/** Where a line of sight crosses an obstruction. */
export interface ObstructionCrossing {
  /** Index among the obstructions. */
  readonly obstruction: number
  /** Metres from the line's start. */
  readonly distance: number
  /** Metres above the sea of the obstruction's top there; null where the ground under it is unknown. */
  readonly top: number | null
}

/** An obstruction on a grid's plane. */
export interface PlacedObstruction {
  /** Index among the obstructions. */
  readonly obstruction: number
  readonly height: number
  readonly corners: readonly GridPoint[]
}

const placedOn = keptWith((obstructions: readonly Obstruction[], grid: ElevationGrid): readonly PlacedObstruction[] =>
  obstructions.map(({ line, height }, obstruction) => ({
    obstruction,
    height,
    corners: line.map((place) => gridPoint(grid, place)),
  })),
)

/** The obstructions on a grid, kept for as long as both are the same objects. */
export function placedObstructions(
  grid: ElevationGrid,
  obstructions: readonly Obstruction[],
): readonly PlacedObstruction[] {
  return placedOn(obstructions, grid)
}

/** Every crossing of a line with the obstructions; a stretch exactly parallel to the line has none. */
export function obstructionCrossings(
  grid: ElevationGrid,
  from: GridPoint,
  to: GridPoint,
  obstructions: readonly Obstruction[],
): ObstructionCrossing[] {
  if (obstructions.length === 0) return []
  return placedObstructions(grid, obstructions).flatMap(({ obstruction, height, corners }) =>
    corners.flatMap((corner, at) => {
      const next = corners[at + 1]
      const share = next === undefined ? null : shareOfCrossing(from, to, corner, next)
      if (share === null) return []
      const distance = share * Math.hypot(to.east - from.east, to.north - from.north)
      return [{ obstruction, distance, top: obstructionTop(grid, from, to, share, height) }]
    }),
  )
}

/** Metres above the sea of an obstruction's top where a line crosses it; null where the ground under it is unknown. */
export function obstructionTop(
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
