/** The way from an eye that stands off a grid up to its edge: whether the ground there hides a cell of the grid, over the rings around it. */
import type { ElevationGrid } from './elevation-grid.ts'
import { AT_END } from './grid-line.ts'
import { gapsOf, ringLines } from './rings.ts'
import { GRAZE, type OutsideLook } from './sight-walk.ts'
import { lowestBetween, sightElevation, walkRings } from './sight.ts'
import type { ViewshedRequest } from './viewshed-request.ts'

export function lookFromOutside(grid: ElevationGrid, request: ViewshedRequest): OutsideLook {
  const { height: eye, refraction } = request
  return (column, row, height) => {
    const cell = { east: grid.west + column * grid.cell, north: grid.north - row * grid.cell }
    const whole = Math.hypot(cell.east - request.east, cell.north - request.north)
    const lines = ringLines(grid, request, cell)
    const outside = lines.filter((line) => line.grid !== grid)
    let unsure = gapsOf(lines, AT_END).length > 0
    const hidden = walkRings(outside, {
      passes: (highest, from, to) => highest <= lowestBetween(eye, height, whole, refraction, from, to),
      seeksUnknown: () => !unsure,
      meets: (met) => {
        for (let at = 0; at < met.count; at++) {
          const distance = met.distances[at] as number
          if (distance < AT_END * grid.cell) continue
          if (met.unknown[at] === 1) unsure = true
          if ((met.heights[at] as number) > sightElevation(eye, height, distance, whole, refraction) + GRAZE)
            return true
        }
        return false
      },
    })
    return hidden ? 0 : unsure ? 2 : 1
  }
}
