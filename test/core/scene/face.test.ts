/** Faces: outward, where they should look, as large as they should be, closed around the thing. */
import { assert, constantFrom, integer, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import type { LocalPoint } from '#core/geo/local-frame.ts'
import { type PlacedFaces, type ThingFace, landmarkFaces, subjectFaces } from '#core/scene/face.ts'
import type { Building, Landmark, SpanLandmark, SpanForm } from '#core/scene/landmark.ts'
import { turnBetween } from '#core/units/angle.ts'
import { BICYCLE } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const place = record({ lat: number(-85, 85), lon: number(-180, 179.9) })
const PLACE = { lat: -41.2, lon: 12.4 }
const common = { id: 'thing', name: 'Thing', height: 30, baseElevation: 0, baseSlope: null, baseAspect: null }

function placed(landmark: Landmark): PlacedFaces {
  const found = landmarkFaces(landmark, 5)
  if (found === null) throw new Error('has a place')
  return found
}

function building(footprint: readonly LatLon[]): Building {
  return { ...common, kind: 'building', footprint }
}

function span(form: SpanForm, line: readonly LatLon[], width = 8): SpanLandmark {
  return { ...common, kind: 'span', form, line, deckHeight: 20, width }
}

function named(faces: readonly ThingFace[], id: string): ThingFace {
  const found = faces.find((face) => face.id === id)
  if (found === undefined) throw new Error(`no face ${id}`)
  return found
}

const minus = (a: LocalPoint, b: LocalPoint): LocalPoint => ({
  east: a.east - b.east,
  north: a.north - b.north,
  up: a.up - b.up,
})
const dot = (a: LocalPoint, b: LocalPoint): number => a.east * b.east + a.north * b.north + a.up * b.up
const cross = (a: LocalPoint, b: LocalPoint): LocalPoint => ({
  east: a.north * b.up - a.up * b.north,
  north: a.up * b.east - a.east * b.up,
  up: a.east * b.north - a.north * b.east,
})

function middleOf(points: readonly LocalPoint[]): LocalPoint {
  const sum = points.reduce((a, b) => ({ east: a.east + b.east, north: a.north + b.north, up: a.up + b.up }))
  const count = points.length
  return { east: sum.east / count, north: sum.north / count, up: sum.up / count }
}

/** Corners anticlockwise from outside, a unit normal square to them, a bearing that agrees; outward for a convex thing. */
function expectSound(faces: readonly ThingFace[]): void {
  const inside = middleOf(faces.flatMap((face) => face.corners))
  for (const face of faces) {
    const [a, b, c] = face.corners
    if (a === undefined || b === undefined || c === undefined) throw new Error('too few corners')
    const turned = cross(minus(b, a), minus(c, b))
    expect(dot(turned, face.normal), face.id).toBeGreaterThan(0)
    expect(Math.abs(dot(face.normal, face.normal) - 1)).toBeLessThan(1e-12)
    const size = Math.sqrt(dot(turned, turned))
    expect(Math.abs(dot(turned, face.normal) / size - 1), face.id).toBeLessThan(1e-6)
    expect(dot(minus(middleOf(face.corners), inside), face.normal), face.id).toBeGreaterThan(0)
    expect(face.bearing === null).toBe(!face.upright)
    if (face.bearing !== null) {
      const bearing = (Math.atan2(face.normal.east, face.normal.north) * 180) / Math.PI
      expect(Math.abs(turnBetween(face.bearing, bearing))).toBeLessThan(1e-9)
    }
  }
}

/** Normals weighted by area add up to nothing over a closed surface. */
function leftOpen(faces: readonly ThingFace[]): LocalPoint {
  return faces.reduce(
    (sum, { normal, area }) => ({
      east: sum.east + normal.east * area,
      north: sum.north + normal.north * area,
      up: sum.up + normal.up * area,
    }),
    { east: 0, north: 0, up: 0 },
  )
}

describe('the subject', () => {
  test('has five faces, front ahead and right to the right of it', () => {
    assert(
      property(number(0, 360), (heading) => {
        const faces = subjectFaces(BICYCLE, heading)
        expect(faces.map((face) => face.id)).toEqual(['front', 'rear', 'left', 'right', 'top'])
        expectSound(faces)
        const turns = { front: 0, right: 90, rear: 180, left: 270 }
        for (const [id, turn] of Object.entries(turns))
          expect(Math.abs(turnBetween(named(faces, id).bearing ?? Number.NaN, heading + turn))).toBeLessThan(1e-9)
      }),
    )
  })

  test('whose sizes are its own', () => {
    const faces = subjectFaces(BICYCLE, 33)
    expect(named(faces, 'front').area).toBeCloseTo(0.65 * 1.2, 12)
    expect(named(faces, 'right').area).toBeCloseTo(2.5 * 1.2, 12)
    expect(named(faces, 'top').area).toBeCloseTo(2.5 * 0.65, 12)
    expect(named(faces, 'top').normal.up).toBeCloseTo(1, 12)
  })
})

describe('an upright', () => {
  const upright: Landmark = { ...common, kind: 'upright', at: PLACE, width: 10 }

  test('has sixteen sides, the first to the north, then clockwise', () => {
    const { faces } = placed(upright)
    expect(faces).toHaveLength(16)
    expectSound(faces)
    faces.forEach((face, index) => {
      expect(face.id).toBe(`facet-${index}`)
      expect(Math.abs(turnBetween(face.bearing ?? Number.NaN, index * 22.5))).toBeLessThan(1e-9)
    })
  })

  test('leans back by its taper', () => {
    const [face] = placed(upright).faces
    // The middle of a side comes in by 0.4 of the inscribed radius over the height.
    const lean = Math.atan((0.4 * 5 * Math.cos(Math.PI / 16)) / 30)
    expect(Math.asin(face?.normal.up ?? 0)).toBeCloseTo(lean, 12)
  })
})

test('a summit has sixteen flanks that look up and out', () => {
  const { faces } = placed({ ...common, kind: 'summit', at: PLACE, width: 200, height: 100 })
  expect(faces).toHaveLength(16)
  expectSound(faces)
  const slope = Math.atan2(100, 100 * Math.cos(Math.PI / 16))
  for (const face of faces) {
    expect(face.upright).toBe(true)
    expect(Math.asin(face.normal.up)).toBeCloseTo(Math.PI / 2 - slope, 12)
  }
  expect(named(faces, 'flank-4').bearing).toBeCloseTo(90, 9)
})

describe('a building', () => {
  const corners = (at: LatLon, turn: number, count: number): LatLon[] =>
    Array.from({ length: count }, (_, index) => destination(at, turn + (index * 360) / count, 20))

  test('has a side for every edge and a roof, whichever way round its corners were set, and is closed', () => {
    assert(
      property(place, number(0, 360), integer({ min: 3, max: 9 }), (at, turn, count) => {
        const ring = corners(at, turn, count)
        const clockwise = placed(building(ring)).faces
        const other = placed(building(ring.toReversed())).faces
        expect(clockwise).toHaveLength(count + 1)
        expectSound(clockwise)
        expectSound(other)
        expect(other).toHaveLength(count + 1)
        const open = leftOpen(clockwise)
        expect(Math.hypot(open.east, open.north)).toBeLessThan(0.02)
        // The two frames stand at different corners, up to 40 m apart: a hundredth of a degree near the pole.
        for (const { normal } of other) expect(clockwise.some((one) => dot(one.normal, normal) > 1 - 1e-7)).toBe(true)
      }),
    )
  })

  test('whose side i begins at corner i', () => {
    // A square with its corners to north, east, south and west: the side from north to east looks north-east.
    const { faces } = placed(building(corners(PLACE, 0, 4)))
    const found = faces.map((face) => (face.bearing === null ? face.id : `${face.id} ${Math.round(face.bearing)}`))
    expect(found).toEqual(['side-0 45', 'side-1 135', 'side-2 225', 'side-3 315', 'roof'])
  })

  test('keeps its numbers when two corners fall on one place', () => {
    const ring = corners(PLACE, 0, 4)
    const doubled = [ring[0], ring[0], ring[1], ring[2], ring[3]].filter((at) => at !== undefined)
    expect(placed(building(doubled)).faces.map((face) => face.id)).toEqual([
      'side-1',
      'side-2',
      'side-3',
      'side-4',
      'roof',
    ])
  })

  test.each([
    ['all corners at one place', [0, 0, 0]],
    ['corners in one line', [0, 50, 100]],
    ['corners in one long line', [0, 500, 1000]],
  ])('has no face with %s', (_, distances) => {
    const ring = distances.map((distance) => destination({ lat: 60, lon: 10 }, 90, distance))
    expect(placed(building(ring)).faces).toEqual([])
  })
})

describe('a span', () => {
  test('has a left and a right side for every segment, square to it', () => {
    assert(
      property(
        place,
        number(0, 360),
        number(-80, 80),
        constantFrom<SpanForm>('suspension', 'arches', 'girder', 'wall'),
        (at, along, bend, form) => {
          const elbow = destination(at, along, 150)
          const { faces } = placed(span(form, [at, elbow, destination(elbow, along + bend, 90)]))
          const sides = faces.filter((face) => face.id.startsWith('segment') && face.upright)
          expect(sides.map((face) => face.id)).toEqual([
            'segment-0-left',
            'segment-0-right',
            'segment-1-left',
            'segment-1-right',
          ])
          // Meridians draw together over the span: 240 m at 85 degrees turn its frames by 0.025 degrees against each other.
          for (const [id, looks] of [
            ['segment-0-left', along - 90],
            ['segment-0-right', along + 90],
            ['segment-1-left', along + bend - 90],
            ['segment-1-right', along + bend + 90],
          ] as const)
            expect(Math.abs(turnBetween(named(faces, id).bearing ?? Number.NaN, looks))).toBeLessThan(0.03)
          expect(Math.abs(named(faces, 'segment-0-left').area / (150 * 30) - 1)).toBeLessThan(1e-4)
          expect(faces).toHaveLength(form === 'wall' ? 8 : 4)
        },
      ),
    )
  })

  test('a straight wall is closed but for its foot; its ends look along the line', () => {
    const { faces } = placed(span('wall', [PLACE, destination(PLACE, 30, 100)]))
    expectSound(faces)
    const open = leftOpen(faces)
    expect(Math.hypot(open.east, open.north)).toBeLessThan(0.02)
    expect(open.up).toBeCloseTo(800, 0)
    expect(named(faces, 'end-0').bearing).toBeCloseTo(210, 2)
    expect(named(faces, 'end-1').bearing).toBeCloseTo(30, 2)
  })

  test('follows the curve of the earth', () => {
    const far = 10_000
    const { faces } = placed(span('girder', [PLACE, destination(PLACE, 0, far)]))
    const lowest = Math.min(...named(faces, 'segment-0-right').corners.map((corner) => corner.up))
    // d^2 / 2R, with the radius of the meridian at this latitude, 6363 km (WGS84).
    expect(lowest).toBeCloseTo(-(far ** 2) / 2 / 6_363_000, 2)
  })

  test('leaves out segments without length, and has no face when all points are at one place', () => {
    const end = destination(PLACE, 30, 100)
    const doubled = placed(span('wall', [PLACE, PLACE, end, end])).faces.map((face) => face.id)
    expect(doubled).toEqual(['segment-1-left', 'segment-1-right', 'segment-1-roof', 'end-0', 'end-1'])
    expect(placed(span('wall', [PLACE, PLACE])).faces).toEqual([])
  })
})

test('a landmark without a point has no place', () => {
  expect(landmarkFaces(building([]), 0)).toBeNull()
})
