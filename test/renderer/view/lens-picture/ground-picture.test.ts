/** The true ground in the picture: ridges at their place, hidden parts covered, the level as before where it is level or unknown. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { projectLocal } from '#core/frame/projection.ts'
import { horizonDip } from '#core/geo/curvature-and-refraction.ts'
import { destination } from '#core/geo/geodesic.ts'
import { localFrame, toLocal } from '#core/geo/local-frame.ts'
import { type ElevationGrid, gridPoint, placeOnGrid } from '#core/ground/elevation-grid.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import { type Picture, pictureOf } from '#renderer/view/lens-picture/picture.ts'
import { describe as sentence } from '#renderer/view/lens-picture/picture-text.ts'
import { generator } from '#test/help/generator.ts'
import { cornersOf } from '#test/help/path.ts'
import { examplePlan } from '#test/help/plans.ts'
import { groundOf, mountains } from '#test/help/terrain.ts'

const CENTRE = { lat: 46.9, lon: 10.3 }
const WIDTH = 376

/** Looks due north from 1500 m south of the grid's centre at a tower 3000 m off. */
function northward(terrain: ElevationGrid | null, parts: Parameters<typeof examplePlan>[0] = {}): Plan {
  const at = placeOnGrid(
    groundOf(3, 10, () => 0),
    0,
    -1500,
  )
  const tower: Landmark = {
    id: 'tower',
    name: 'Tower',
    kind: 'upright',
    at: destination(at, 0, 3000),
    width: 30,
    height: 240,
    baseElevation: null,
    baseSlope: null,
    baseAspect: null,
  }
  const plan = examplePlan({ at, bearing: 0, landmark: tower, shot: { aperture: 22 }, ...parts })
  const { stop, standpoint } = plan.spot
  const spot = { ...plan.spot, stop: { ...stop, elevation: null }, standpoint: { ...standpoint, elevation: null } }
  return { ...plan, spot, terrain }
}

/** With every level told, so that elevations change none. */
function measured({ spot, landmark, ...rest }: Plan): Plan {
  const { stop, standpoint } = spot
  return {
    ...rest,
    landmark: landmark === null ? null : { ...landmark, baseElevation: 500 },
    spot: { ...spot, stop: { ...stop, elevation: 500 }, standpoint: { ...standpoint, elevation: 500 } },
  }
}

function picture(plan: Plan, found: Assessment = assess(plan)): Picture {
  const made = pictureOf(plan, found, WIDTH)
  if (made === null) throw new Error('framed')
  return made
}

/** Height in the drawing of the upper edge of an area at a place across it. */
function topAt(path: string, x: number): number {
  const corners = cornersOf(path)
  let top = Infinity
  for (const [index, to] of corners.entries()) {
    const from = corners.at(index - 1) ?? to
    const [low, high] = [Math.min(from.x, to.x), Math.max(from.x, to.x)]
    if (x < low || x > high || low === high) continue
    top = Math.min(top, from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x))
  }
  return top
}

function areas({ ground }: Picture, part: 'behind' | 'between' | 'before'): readonly string[] {
  return (ground?.[part] ?? []).flatMap(({ pieces }) =>
    pieces.filter(({ kind }) => kind === 'near' || kind === 'land').map(({ path }) => path),
  )
}

/** Of all areas drawn over each other. */
function coveredAt(paths: readonly string[], x: number): number {
  return Math.min(...paths.map((path) => topAt(path, x)))
}

const wall = groundOf(601, 10, (east, north) => 500 + (north === 0 && Math.abs(east) < 900 ? 90 : 0), CENTRE)
const flat = groundOf(601, 10, () => 500, CENTRE)

describe('a wall between the camera and the tower', () => {
  const plan = northward(wall)
  const found = assess(plan)
  const made = picture(plan, found)
  const { view } = found
  if (view === null) throw new Error('framed')
  const tower = plan.landmark?.kind === 'upright' ? plan.landmark.at : CENTRE
  const towerAt = projectLocal(view, toLocal(view.frame, localFrame(tower, 580).origin))
  const x = WIDTH * (0.5 + (towerAt?.x ?? 0))

  test('its edge stands where the projection puts the point that hides the tower', () => {
    const hiding = found.ground?.toLandmark?.hiddenBy ?? null
    expect(hiding?.distance).toBeCloseTo(1500, 0)
    if (hiding === null) return
    const edge = projectLocal(view, toLocal(view.frame, localFrame(hiding.at, 590).origin))
    const y = made.height * (0.5 - (edge?.y ?? 0))
    // The earth's curve is in the geometry, refraction (0.02 m at 1.5 km) below what shows.
    expect(Math.abs(coveredAt(areas(made, 'between'), x) - y)).toBeLessThan(0.5)
    expect(y).toBeLessThan(made.horizon - 10)
  })

  test('what it hides of the tower is covered, what it does not is free', () => {
    const share = found.ground?.toLandmark?.share ?? 0
    // The line over the edge, 88.8 m above the lens at half the way, meets the tower about 179 of its 240 m up.
    expect(share).toBeCloseTo(1 - 179 / 240, 2)
    const paths = made.landmark?.layers.map(({ path }) => path) ?? []
    const all = paths.flatMap((path) => cornersOf(path))
    const [top, foot] = [Math.min(...all.map(({ y }) => y)), Math.max(...all.map(({ y }) => y))]
    const edge = coveredAt(areas(made, 'between'), x)
    expect((edge - top) / (foot - top)).toBeCloseTo(share, 1)
  })

  test('ground behind the tower is drawn before it, ground before it after', () => {
    const high = groundOf(601, 10, (_, north) => 500 + (north === 0 ? 20 : north === 2000 ? 300 : 0), CENTRE)
    const both = picture(northward(high))
    const [behind, between] = [coveredAt(areas(both, 'behind'), x), coveredAt(areas(both, 'between'), x)]
    expect(behind).toBeLessThan(both.horizon - 20)
    expect(between).toBeLessThan(both.horizon)
    expect(between).toBeGreaterThan(behind + 20)
  })

  test('is said in words, and not where nothing is hidden', () => {
    expect(sentence(plan, found)).toMatch(/2[56]\s% of the height of Tower is visible; the ground hides the rest\./u)
    const open = northward(flat)
    expect(sentence(open, assess(open))).not.toMatch(/ground hides|hidden by/u)
    const buried = northward(groundOf(601, 10, (_, north) => 500 + (north === 0 ? 300 : 0), CENTRE))
    expect(sentence(buried, assess(buried))).toContain('Tower is hidden by the ground.')
  })
})

describe('level ground', () => {
  test('has its horizon where it is without elevations', () => {
    const [level, none] = [flat, null].map((terrain) => picture(measured(northward(terrain))))
    if (level === undefined || none === undefined) return
    expect(none.ground).toBeNull()
    expect(level.horizon).toBeCloseTo(none.horizon, 9)
    for (const x of [1, 100, 188, 375])
      expect(Math.abs(coveredAt(areas(level, 'behind'), x) - none.horizon)).toBeLessThan(0.1)
    expect(level.landmark?.layers).toEqual(none.landmark?.layers)
    expect(level.subject).toEqual(none.subject)
  })

  test('goes on where the ground is unknown', () => {
    const unknown = picture(northward(groundOf(601, 10, (_, north) => (north > -1000 ? Number.NaN : 500), CENTRE)))
    for (const x of [1, 188, 375])
      expect(Math.abs(coveredAt(areas(unknown, 'behind'), x) - unknown.horizon)).toBeLessThan(0.1)
    expect(coveredAt(areas(unknown, 'between'), 188)).toBeGreaterThan(unknown.horizon - 0.1)
  })

  test('is drawn too where no crossing of it lies between the lens and what stands near', () => {
    // Places found by trying many: in some directions the ground nearest to the lens lies beyond the subject.
    for (const number of [225, 261, 333]) {
      const land = groundOf(121, 17, (east, north) => 500 + 20 * Math.sin(east / 190 + number) + north / 90, CENTRE)
      const at = placeOnGrid(land, ((number * 7.3) % 90) - 45, ((number * 11.7) % 90) - 1500)
      const made = picture(northward(land, { bearing: (number * 37) % 360, turned: 70, distance: 3, at }))
      const paths = [...areas(made, 'behind'), ...areas(made, 'between'), ...areas(made, 'before')]
      expect(paths.length).toBeGreaterThan(0)
      expect(paths.join(' ')).not.toMatch(/NaN|Infinity/u)
    }
  })

  test('at the sea’s own level is water, up to the horizon', () => {
    const shore = groundOf(601, 10, (_, north) => (north > -1480 ? 0 : 80), CENTRE)
    const plan = northward(shore, { landmark: null })
    const [found, made] = [assess(plan), picture(plan)]
    const pieces = made.ground?.behind.flatMap((group) => group.pieces) ?? []
    const water = pieces.filter(({ kind }) => kind === 'water').map(({ path }) => path)
    // The elevations end 4.5 km out, 1.05 degrees down; the sea goes on to its own horizon, 0.25 degrees below the level.
    const { view } = found
    if (view === null) throw new Error('framed')
    const horizon = Math.tan((-horizonDip(81.2, 0.13) * Math.PI) / 180)
    const at = projectLocal(view, { east: 0, north: 1, up: horizon })
    const y = made.height * (0.5 - (at?.y ?? 0))
    expect(y - made.horizon).toBeGreaterThan(2)
    expect(Math.abs(coveredAt(water, 188) - y)).toBeLessThan(0.15)
    expect(
      picture(northward(flat)).ground?.behind.flatMap(({ pieces: own }) => own.map(({ kind }) => kind)),
    ).not.toContain('water')
  })
})

test('the subject is covered by ground before it alone, and only where that hides of it', () => {
  const subjectAt = (distance: number, height: number): Picture =>
    picture(
      northward(
        groundOf(601, 10, (_, north) => (north === -1470 ? 500 + height : 500), CENTRE),
        { distance, landmark: null },
      ),
    )
  expect(areas(subjectAt(60, 0), 'before')).toEqual([])
  expect(areas(subjectAt(60, 1.6), 'before').length).toBeGreaterThan(0)
  expect(areas(subjectAt(20, 1.6), 'before')).toEqual([])
})

test('a level measured off the elevations carries the subject', () => {
  // A quay the elevations don't know: 3 m above the level they have, which ends in water behind the subject.
  const coarse = groundOf(601, 20, (_, north) => (north > -1485 ? 0 : 1), CENTRE)
  const plan = northward(coarse, { distance: 12, landmark: null })
  const { stop, standpoint } = plan.spot
  const spot = { ...plan.spot, stop: { ...stop, elevation: 4 }, standpoint: { ...standpoint, elevation: 4 } }
  const [found, made] = [assess({ ...plan, spot }), picture({ ...plan, spot })]
  const { view } = found
  if (view === null) throw new Error('framed')
  const feet = projectLocal(view, toLocal(view.frame, localFrame(stop.at, 4).origin))
  const x = WIDTH * (0.5 + (feet?.x ?? 0))
  const y = made.height * (0.5 - (feet?.y ?? 0))
  expect(topAt(made.ground?.near ?? '', x)).toBeLessThan(y)
  expect(areas(made, 'before').every((path) => topAt(path, x) > y - 0.5)).toBe(true)
})

test('a level measured under the elevations does not bury the lens', () => {
  const plan = northward(flat, { landmark: null })
  const { stop, standpoint } = plan.spot
  const spot = { ...plan.spot, stop: { ...stop, elevation: 495 }, standpoint: { ...standpoint, elevation: 495 } }
  const made = picture({ ...plan, spot })
  // The ground rises from 1.2 m under the lens to 3.8 m over it within some 90 m, and no more.
  for (const x of [1, 188, 375]) {
    expect(coveredAt(areas(made, 'behind'), x)).toBeLessThan(made.horizon - 10)
    expect(coveredAt(areas(made, 'behind'), x)).toBeGreaterThan(made.horizon - 40)
  }
})

test('in mountains the subject’s feet stand on the ground that is drawn, however coarse the elevations', () => {
  const land = mountains(401, 30, 5)
  const next = generator(4)
  let stood = 0
  for (let round = 0; round < 60; round++) {
    const at = placeOnGrid(land, (next() - 0.5) * 9000, (next() - 0.5) * 9000)
    const plan = northward(land, { at, bearing: next() * 360, distance: 6 + next() * 25, landmark: null, shot: {} })
    const found = assess(plan)
    const { levels, view } = found
    if (view === null || levels.standpoint + 1.1 < levels.stop) continue
    const made = picture(plan, found)
    const feet = projectLocal(view, toLocal(view.frame, localFrame(plan.spot.stop.at, levels.stop).origin))
    if (feet === null || Math.abs(feet.x) > 0.5) continue
    stood++
    const y = made.height * (0.5 - feet.y)
    expect(topAt(made.ground?.near ?? '', WIDTH * (0.5 + feet.x))).toBeLessThan(y + 0.1)
  }
  expect(stood).toBeGreaterThan(20)
})

test('sun and moon behind a hill are not drawn', () => {
  const plan = northward(wall)
  const found = assess(plan)
  const placed = { azimuth: 0, apparent: 2, altitude: 2, up: true, behindGround: false }
  const lightWith = (behindGround: boolean): Assessment['light'] => ({
    ...found.light,
    sun: { ...found.light.sun, ...placed, behindGround },
    moon: { ...found.light.moon, ...placed, behindGround },
  })
  const seen = picture(plan, { ...found, light: lightWith(false) })
  expect(seen.sun).not.toBeNull()
  expect(seen.moon).not.toBeNull()
  const hidden = picture(plan, { ...found, light: lightWith(true) })
  expect(hidden.sun).toBeNull()
  expect(hidden.moon).toBeNull()
})

test('from mountains, at any place and aim, every number is finite and within reach', () => {
  const land = mountains(401, 30, 5)
  const reach = fc.double({ min: -5500, max: 5500, noNaN: true })
  const around = fc.double({ min: 0, max: 360, noNaN: true })
  let drawn = 0
  fc.assert(
    fc.property(
      reach,
      reach,
      around,
      fc.constantFrom(8, 300),
      fc.constantFrom(0.3, 0.9),
      (east, north, bearing, distance, hole) => {
        const heights = land.heights.map((height, index) => (Math.sin(index * hole) > 0.98 ? Number.NaN : height))
        const terrain = { ...land, heights }
        const at = placeOnGrid(terrain, east, north)
        const bridge = examplePlan({ at, bearing, distance }).landmark
        const landmark = bridge === null ? null : { ...bridge, baseElevation: null }
        const plan = { ...northward(terrain, { at, bearing, distance, landmark, shot: {} }) }
        const made = pictureOf(plan, assess(plan), WIDTH)
        if (made === null || made.ground === null) return
        drawn++
        const groups = [...made.ground.behind, ...made.ground.between, ...made.ground.before]
        const text = groups.flatMap(({ pieces }) => pieces.map(({ path }) => path)).join(' ')
        expect(`${text} ${groups.map(({ deviation }) => deviation).join(' ')}`).not.toMatch(/NaN|Infinity|e/u)
        for (const { x, y } of cornersOf(text)) expect(Math.max(Math.abs(x), Math.abs(y))).toBeLessThan(700)
      },
    ),
    { numRuns: 60 },
  )
  expect(drawn).toBeGreaterThan(40)
})

test('the same looks serve while the lens stays and the aim moves', () => {
  const plan = northward(wall)
  const aimed = { ...plan, spot: { ...plan.spot, shot: { ...plan.spot.shot, placement: { across: 0.3, up: -0.2 } } } }
  const fresh = northward({ ...wall })
  const again = { ...fresh, spot: aimed.spot }
  picture(plan)
  expect(picture(aimed).ground).toEqual(picture(again).ground)
  expect(gridPoint(wall, plan.spot.standpoint.at).north).toBeCloseTo(-1500, 3)
})
