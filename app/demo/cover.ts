/** What lies on the demo island's land as areas: land itself, contours, woods, beaches, crags, the lake. */
import { BEACHES, Ground, lakeOval } from './ground.ts'
import { type IslandPoint, islandDistance, step } from './island-frame.ts'
import { LAKE_PLAN } from './island-places.ts'
import { type ScalarField, isolines, type IslandRing, sampleField } from './isolines.ts'
import type { Nearness } from './nearness.ts'
import { layeredNoise } from './noise.ts'
import { polygons, islandRingArea, thinRing } from './outline.ts'
import { woodland } from './settlement.ts'
import { fromShore, REACH_EAST, REACH_NORTH } from './terrain.ts'

const ORIGIN: IslandPoint = { east: -REACH_EAST, north: -REACH_NORTH }

function wholeMap(spacing: number): { readonly columns: number; readonly rows: number; readonly spacing: number } {
  return { columns: (REACH_EAST * 2) / spacing + 1, rows: (REACH_NORTH * 2) / spacing + 1, spacing }
}

/** Heights every ten metres, from which shore and contours are drawn. */
export function fineHeights(ground: Ground): ScalarField {
  return sampleField(ORIGIN, wholeMap(10), (point) => ground.heightAt(point))
}

/** The land's polygons, the largest first. */
export function landAreas(heights: ScalarField): IslandRing[][] {
  const areas = polygons(isolines(heights, 0), 250).map((rings) => rings.map((ring) => thinRing(ring, 0.9)))
  return areas.toSorted((left, right) => islandRingArea(right[0] ?? []) - islandRingArea(left[0] ?? []))
}

export interface Contour {
  readonly elevation: number
  /** Closed: the first point is repeated at the end. */
  readonly line: IslandRing
}

export const CONTOUR_INTERVAL = 10

export function coverOutlines(heights: ScalarField): Contour[] {
  let highest = 0
  for (const height of heights.values) highest = Math.max(highest, height)
  const found: Contour[] = []
  for (let elevation = CONTOUR_INTERVAL; elevation < highest; elevation += CONTOUR_INTERVAL) {
    for (const ring of isolines(heights, elevation)) {
      if (Math.abs(islandRingArea(ring)) < 900) continue
      const line = thinRing(ring, 3.8)
      if (line[0] !== undefined) found.push({ elevation, line: [...line, line[0]] })
    }
  }
  return found
}

export function woods(ground: Ground, ways: Nearness, houses: Nearness, fields: Nearness): IslandRing[][] {
  const field = sampleField(ORIGIN, wholeMap(20), (point) => woodland(ground, point, ways, houses, fields))
  return polygons(isolines(field, 0), 4000).map((rings) => rings.map((ring) => thinRing(ring, 3.2)))
}

/** Sand between the water and the foot of the land, in the bays that have it. */
export function beaches(): IslandRing[][] {
  return BEACHES.flatMap((beach) => {
    const half = Math.ceil((beach.reach * 1.1) / 10)
    const origin = { east: beach.at.east - half * 10, north: beach.at.north - half * 10 }
    const field = sampleField(origin, { columns: half * 2 + 1, rows: half * 2 + 1, spacing: 10 }, (point) => {
      const inside = fromShore(point)
      const width = 52 + layeredNoise(point.east, point.north, 180, 2, 151) * 40
      return Math.min(inside + 2, width - inside, (beach.reach - islandDistance(point, beach.at)) * 0.5)
    })
    return polygons(isolines(field, 0), 1500).map((rings) => rings.map((ring) => thinRing(ring, 1)))
  })
}

/** Crags: ground steeper than a person walks up. */
export function crags(ground: Ground): IslandRing[][] {
  const field = sampleField(ORIGIN, wholeMap(10), (point) => {
    const inside = fromShore(point)
    if (inside < -12 || lakeOval(point) < 1.3) return -1
    const east = ground.heightAt(step(point, 90, 5)) - ground.heightAt(step(point, 270, 5))
    const north = ground.heightAt(step(point, 0, 5)) - ground.heightAt(step(point, 180, 5))
    return Math.hypot(east, north) / 10 - 0.72 + layeredNoise(point.east, point.north, 60, 2, 163) * 0.25
  })
  return polygons(isolines(field, 0), 800).map((rings) => rings.map((ring) => thinRing(ring, 1.4)))
}

/** The lake's shore, anticlockwise, not closed. */
export function lake(): IslandRing {
  const ring: IslandPoint[] = []
  for (let angle = 0; angle < 360; angle += 5) {
    let reach = 10
    while (lakeOval(step(LAKE_PLAN.middle, -angle, reach)) < 1) reach += 0.5
    ring.push(step(LAKE_PLAN.middle, -angle, reach))
  }
  return ring
}
