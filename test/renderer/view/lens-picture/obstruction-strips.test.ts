/** Trees and walls in the picture, held pixel by pixel against rays: each meets the obstruction and no ground before it, or it does not. */
import { describe, expect, test } from 'vitest'
import type { View } from '#core/frame/projection.ts'
import { type ElevationGrid, type GridPoint, elevationAt, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { alongBearing, trueAxesAt } from '#core/ground/true-north.ts'
import { assess } from '#core/plan/assess.ts'
import { lensOn } from '#core/plan/ground-reading.ts'
import { type Plan, levelsOf } from '#core/plan/plan.ts'
import type { ObstructionRecord } from '#core/record/shoot.ts'
import { type Picture, pictureOf } from '#renderer/view/lens-picture/picture.ts'
import type { ObstructionStrips } from '#renderer/view/lens-picture/obstruction-strips.ts'
import { plainSill } from '#test/help/brute-sight.ts'
import { generator } from '#test/help/generator.ts'
import { cornersOf } from '#test/help/path.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const WIDTH = 376
const RADIUS = 6_371_008.8

function planOn(
  grid: ElevationGrid,
  stand: GridPoint,
  obstructions: readonly ObstructionRecord[],
  focalLength = 35,
): Plan {
  const at = placeOnGrid(grid, stand.east, stand.north)
  const landmark = { ...bridgeAt(at, 0, 600), baseElevation: null }
  const plan = examplePlan({
    at,
    bearing: 0,
    distance: 7,
    landmark,
    shoot: { obstructions },
    shot: { focalLength, aperture: 22 },
    spot: { hold: 'focal-length' },
  })
  const { stop, standpoint } = plan.spot
  const spot = { ...plan.spot, stop: { ...stop, elevation: null }, standpoint: { ...standpoint, elevation: null } }
  return { ...plan, spot, terrain: grid }
}

function drawn(plan: Plan): { picture: Picture; view: View } {
  const found = assess(plan)
  const picture = pictureOf(plan, found, WIDTH)
  if (picture === null || found.view === null) throw new Error('framed')
  return { picture, view: found.view }
}

const obstruction = (grid: ElevationGrid, height: number, ...corners: readonly GridPoint[]): ObstructionRecord => ({
  id: String(height),
  name: '',
  height,
  line: corners.map(({ east, north }) => placeOnGrid(grid, east, north)),
})

interface Corner {
  readonly x: number
  readonly y: number
}

function within(corners: readonly Corner[], { x, y }: Corner): boolean {
  let inside = false
  corners.forEach((to, index) => {
    const from = corners.at(index - 1) ?? to
    if (from.y > y !== to.y > y && x < from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y)) inside = !inside
  })
  return inside
}

/** Units from a point to the nearest edge of an outline. */
function toEdge(corners: readonly Corner[], { x, y }: Corner): number {
  return corners.reduce((least, to, index) => {
    const from = corners.at(index - 1) ?? to
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const share = Math.max(0, Math.min(1, ((x - from.x) * dx + (y - from.y) * dy) / Math.max(1e-9, dx * dx + dy * dy)))
    return Math.min(least, Math.hypot(x - from.x - share * dx, y - from.y - share * dy))
  }, Infinity)
}

const outlines = (strips: ObstructionStrips): Corner[][] =>
  [...strips.behind, ...strips.between, ...strips.before].flatMap(({ path }) =>
    path
      .split('Z')
      .filter((part) => part !== '')
      .map((part) => cornersOf(`${part}Z`)),
  )

/** Whether a ray meets an obstruction before it meets any ground; its own arithmetic throughout. */
function meetsObstruction(plan: Plan, azimuth: number, slope: number): boolean {
  const grid = plan.terrain
  if (grid === null) throw new Error('over ground')
  const eye = lensOn(grid, plan, levelsOf(plan))
  const way = alongBearing(trueAxesAt(grid, eye), azimuth)
  const curve = (1 - plan.shoot.refraction) / (2 * RADIUS)
  return plan.shoot.obstructions.some(({ line, height }) => {
    const corners = line.map((place) => gridPoint(grid, place))
    return corners.slice(1).some((other, index) => {
      const one = corners[index] ?? other
      // One + s (other - one) = eye + t way, by Cramer's rule.
      const [a, b] = [other.east - one.east, -way.east]
      const [c, d] = [other.north - one.north, -way.north]
      const [e, f] = [eye.east - one.east, eye.north - one.north]
      const whole = a * d - b * c
      const [s, t] = [(e * d - b * f) / whole, (a * f - e * c) / whole]
      if (!(s >= 0 && s <= 1 && t > 0)) return false
      const at = { east: eye.east + t * way.east, north: eye.north + t * way.north }
      const away = Math.hypot(at.east - eye.east, at.north - eye.north)
      const ground = elevationAt(grid, at.east, at.north) ?? Number.NaN
      const ray = eye.elevation + slope * away + curve * away * away
      return ray >= ground && ray <= ground + height && ray >= plainSill(grid, eye, at, plan.shoot.refraction)
    })
  })
}

/** Compares pixels away from edges; answers how many lay on a strip and how many beside. */
function compare(plan: Plan): { on: number; beside: number } {
  const { picture, view } = drawn(plan)
  const { width, height, ground } = picture
  if (ground === null) throw new Error('over ground')
  const shapes = outlines(ground.obstructions)
  const scale = (view.imageDistance / view.frameWidth) * width
  let [on, beside] = [0, 0]
  for (let x = 3.5; x < width; x += 9) {
    for (let y = 3.5; y < height; y += 5) {
      if (shapes.some((corners) => toEdge(corners, { x, y }) < 1.5)) continue
      const [right, up] = [(x - width / 2) / scale, (height / 2 - y) / scale]
      const ahead = view.cosPitch - view.sinPitch * up
      const rise = view.sinPitch + view.cosPitch * up
      const azimuth = view.bearing + (Math.atan2(right, ahead) * 180) / Math.PI
      const shows = shapes.some((corners) => within(corners, { x, y }))
      expect(shows, `${x} ${y}`).toBe(meetsObstruction(plan, azimuth, rise / Math.hypot(right, ahead)))
      if (shows) on++
      else beside++
    }
  }
  return { on, beside }
}

describe('on level ground', () => {
  const grid = groundOf(301, 10, () => 100)
  const stand = { east: 0, north: -600 }

  test('a wall stands where rays meet it, and only there', () => {
    const wall = obstruction(grid, 6, { east: -12, north: -550 }, { east: 20, north: -540 })
    expect(compare(planOn(grid, stand, [wall])).on).toBeGreaterThan(100)
  })

  test('one that passes beside the lens comes into the picture from behind it', () => {
    const wall = obstruction(grid, 4, { east: 3, north: -640 }, { east: 9, north: -500 })
    expect(compare(planOn(grid, stand, [wall])).on).toBeGreaterThan(100)
  })

  test('stands behind the landmark, between it and the subject, or before both, as its distance says', () => {
    const across = (north: number) => obstruction(grid, 3, { east: -200, north }, { east: 200, north })
    const { picture } = drawn(planOn(grid, stand, [across(-597), across(-400), across(250)]))
    const { behind, between, before } = picture.ground?.obstructions ?? { behind: [], between: [], before: [] }
    expect([behind, between, before].map((group) => group.length)).toEqual([1, 1, 1])
    const oblique = obstruction(grid, 8, { east: -60, north: -300 }, { east: 60, north: 400 })
    const both = drawn(planOn(grid, stand, [oblique])).picture.ground?.obstructions
    expect([both?.behind.length, both?.between.length]).toEqual([1, 1])
  })

  test('there is none without obstructions, nor of one corner, nor out of the picture', () => {
    const none = { behind: [], between: [], before: [] }
    const south = obstruction(grid, 9, { east: -50, north: -900 }, { east: 50, north: -900 })
    const lone = obstruction(grid, 9, { east: 0, north: -500 })
    for (const obstructions of [[], [south], [lone]])
      expect(drawn(planOn(grid, stand, obstructions)).picture.ground?.obstructions).toEqual(none)
  })
})

test('among mountains the ground before them hides their feet, or all of them', () => {
  const grid = mountains(241, 20, 3)
  const random = generator(11)
  let [on, beside] = [0, 0]
  for (let round = 0; round < 6; round++) {
    const stand = { east: 600 * (random() - 0.5), north: 400 * (random() - 0.5) - 300 }
    const obstructions = Array.from({ length: 3 }, () => {
      const start = { east: stand.east + 160 * (random() - 0.5), north: stand.north + 40 + 300 * random() }
      const next = { east: start.east + 120 * (random() - 0.5), north: start.north + 120 * (random() - 0.5) }
      return obstruction(grid, 6 + 30 * random(), start, next)
    })
    const found = compare(planOn(grid, stand, obstructions))
    on += found.on
    beside += found.beside
  }
  expect(on).toBeGreaterThan(300)
  expect(beside).toBeGreaterThan(300)
})

test('the place of a wall is true: its ends stand at their bearings', () => {
  const grid = groundOf(301, 10, () => 100)
  const plan = planOn(grid, { east: 0, north: -600 }, [
    obstruction(grid, 5, { east: -20, north: -500 }, { east: 20, north: -500 }),
  ])
  const { picture, view } = drawn(plan)
  const [corners = []] = outlines(picture.ground?.obstructions ?? { behind: [], between: [], before: [] })
  const scale = (view.imageDistance / view.frameWidth) * picture.width
  const xs = corners.map(({ x }) => x)
  const turn = Math.atan2(20, 100) - (view.bearing > 180 ? view.bearing - 360 : view.bearing) * (Math.PI / 180)
  expect(Math.max(...xs)).toBeCloseTo(picture.width / 2 + scale * Math.tan(turn), -0.5)
})
