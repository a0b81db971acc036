/** The building's solid: its footprint raised, a gentle hipped roof over four corners, else a flat one; bands of windows. */
import { type LocalPoint, localFrame, toLocal } from '#core/geo/local-frame.ts'
import type { Building } from '#core/scene/landmark.ts'
import type { Face, Solid } from '#core/scene/solid.ts'
import { divide, face, mix, part, patch } from './shape.ts'

/** Metres of a storey (common practice, no source). */
const STOREY = 3.4
const MOST_STOREYS = 8
const EAVES = 0.74

function footprintOf(building: Building, base: number): LocalPoint[] {
  const [first] = building.footprint
  if (first === undefined) return []
  const home = localFrame(first, base)
  const points = building.footprint.map((corner) => toLocal(home, localFrame(corner, base).origin))
  let area = 0
  points.forEach((point, index) => {
    const next = points[(index + 1) % points.length] ?? point
    area += point.east * next.north - next.east * point.north
  })
  // Anticlockwise seen from above, whichever way it was drawn.
  return area < 0 ? points.toReversed() : points
}

function raised(point: LocalPoint, up: number): LocalPoint {
  return { ...point, up: point.up + up }
}

function apart(a: LocalPoint | undefined, b: LocalPoint | undefined): number {
  return a === undefined || b === undefined ? 0 : Math.hypot(a.east - b.east, a.north - b.north)
}

/** The roof's two ridge ends over a four-cornered plan: in from the middles of its shorter sides. */
function ridge(foot: readonly LocalPoint[], height: number): readonly [LocalPoint, LocalPoint, number] | null {
  const [a, b, c, d] = foot
  if (a === undefined || b === undefined || c === undefined || d === undefined || foot.length !== 4) return null
  const alongFirst = apart(a, b) + apart(c, d) >= apart(b, c) + apart(d, a)
  const shorter = Math.min(apart(a, b) + apart(c, d), apart(b, c) + apart(d, a)) / 2
  // A hall wider than it is high has a flat roof: a hipped one would be all roof.
  if (shorter > height * 2.2) return null
  const ends = alongFirst ? [mix(a, d, 0.5), mix(b, c, 0.5)] : [mix(b, a, 0.5), mix(c, d, 0.5)]
  const [from, to] = ends
  if (from === undefined || to === undefined) return null
  const inward = Math.min(0.42, (shorter * 0.5) / Math.max(1e-9, apart(from, to)))
  return [raised(mix(from, to, inward), height), raised(mix(to, from, inward), height), alongFirst ? 0 : 1]
}

function roofFaces(foot: readonly LocalPoint[], height: number): { faces: Face[]; eaves: number } {
  const found = ridge(foot, height)
  if (found === null)
    return {
      faces: [
        face(
          'hue',
          foot.map((corner) => raised(corner, height)),
        ),
      ],
      eaves: height,
    }
  const [from, to, turned] = found
  const eaves = height * EAVES
  const corner = (index: number): LocalPoint => {
    const point = foot[(index + turned) % 4]
    if (point === undefined) throw new Error('a hipped roof has four corners')
    return raised(point, eaves)
  }
  const [a, b, c, d] = [corner(0), corner(1), corner(2), corner(3)]
  return {
    faces: [
      face('ink', [a, b, to, from]),
      face('ink', [b, c, to]),
      face('ink', [c, d, from, to]),
      face('ink', [d, a, from]),
    ],
    eaves,
  }
}

function wallFace(from: LocalPoint, to: LocalPoint, top: number): Face {
  const corners = [from, to, raised(to, top), raised(from, top)]
  const storeys = Math.min(MOST_STOREYS, Math.floor(top / STOREY))
  const columns = Math.min(14, Math.floor(apart(from, to) / 3.2))
  const windows = Array.from({ length: storeys }, (_, storey) =>
    Array.from({ length: columns }, (_, column) =>
      patch(
        'glass',
        corners,
        [(column + 0.3) / columns, (column + 0.7) / columns],
        [(storey + 0.32) / storeys, (storey + 0.78) / storeys],
      ),
    ),
  ).flat()
  return face('hue', corners, windows)
}

export function buildingSolid(building: Building, base: number): Solid {
  const foot = footprintOf(building, base)
  const { faces, eaves } = roofFaces(foot, building.height)
  const walls = foot.map((corner, index) => wallFace(corner, foot[(index + 1) % foot.length] ?? corner, eaves))
  const level = { east: 0, north: 0, up: eaves }
  return [divide(level, { east: 0, north: 0, up: 1 }, [part(faces)], [part(walls)])]
}
