/** Drawn ground: lengths against the geodesic, outlines that cross themselves, points put in and taken out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { destination, geodesicDistance } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { lineLength } from '#core/geo/line-length.ts'
import { ringArea } from '#core/geo/shape.ts'
import {
  type DrawnShape,
  MOST_DRAWN_POINTS,
  cutAt,
  legCount,
  legMiddle,
  newKeepOut,
  newStoppingGround,
  shapeFault,
  withDrawnPoints,
  withPointOn,
  withoutDrawn,
  withoutPoint,
  withoutRepeats,
} from '#core/record/drawn-ground.ts'
import { newShoot } from '#core/record/new-records.ts'

const HERE: LatLon = { lat: 46.4, lon: -33.6 }
const at = (bearing: number, metres: number, from = HERE): LatLon => destination(from, bearing, metres)

/** A star-shaped outline round a place: corners in order of their bearing, so it can't cross itself. */
const starShaped = fc
  .record({
    middle: fc.record({ lat: fc.double({ min: -80, max: 80, noNaN: true }), lon: fc.constantFrom(-179.9999, 0, 33.3) }),
    reaches: fc.array(fc.double({ min: 20, max: 400, noNaN: true }), { minLength: 4, maxLength: 24 }),
  })
  .map(({ middle, reaches }) => reaches.map((reach, index) => at((360 * index) / reaches.length, reach, middle)))

describe('the length of a line', () => {
  it('is that of its legs: a kilometre north in ten steps', () => {
    const line = Array.from({ length: 11 }, (_, step) => at(0, step * 100))
    expect(lineLength(line)).toBeCloseTo(1000, 6)
  })

  it('is right across the antimeridian: a degree on the equator is 111 319.49 m (WGS84 semi-major axis × π / 180)', () => {
    const line = [179.5, -179.5].map((lon) => ({ lat: 0, lon }))
    expect(lineLength(line)).toBeCloseTo((6_378_137 * Math.PI) / 180, 3)
  })
})

describe('the fault of a shape', () => {
  const square = [at(0, 100), at(90, 100), at(180, 100), at(270, 100)]
  it.each<readonly [string, DrawnShape, ReturnType<typeof shapeFault>]>([
    ['two points make a line', { form: 'line', points: [HERE, at(0, 5)] }, null],
    ['one point makes none', { form: 'line', points: [HERE] }, 'too-few'],
    ['the same point twice makes none', { form: 'line', points: [HERE, HERE] }, 'too-few'],
    ['a millimetre is no line', { form: 'line', points: [HERE, at(0, 0.001)] }, 'no-size'],
    ['a line may cross itself', { form: 'line', points: [at(0, 50), at(180, 50), at(135, 70), at(315, 50)] }, null],
    ['a square is an area', { form: 'area', points: square }, null],
    ['its first point again changes nothing', { form: 'area', points: [...square, at(0, 100)] }, null],
    ['two corners are none', { form: 'area', points: square.slice(0, 2) }, 'too-few'],
    [
      'a bow tie crosses itself',
      { form: 'area', points: [0, 2, 1, 3].map((n) => square[n] ?? HERE) },
      'crosses-itself',
    ],
    ['corners in a row enclose nothing', { form: 'area', points: [HERE, at(0, 10), at(0, 20)] }, 'no-size'],
    [
      'there is an end to points',
      { form: 'line', points: Array.from({ length: MOST_DRAWN_POINTS + 1 }, (_, n) => at(0, n)) },
      'too-many',
    ],
  ])('%s', (_, shape, fault) => expect(shapeFault(shape)).toBe(fault))

  it('is found on both sides of the antimeridian alike', () => {
    const across = [0, 90, 180, 270].map((bearing) => at(bearing, 300, { lat: 10, lon: -180 }))
    expect(shapeFault({ form: 'area', points: across })).toBeNull()
    expect(shapeFault({ form: 'area', points: [0, 2, 1, 3].map((n) => across[n] ?? HERE) })).toBe('crosses-itself')
  })

  it('is none for any outline whose corners go round once', () => {
    fc.assert(
      fc.property(starShaped, (points) => {
        expect(shapeFault({ form: 'area', points })).toBeNull()
      }),
    )
  })

  it('is a crossing whenever two corners next to each other change places in a convex outline', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 30 }), fc.nat(), (count, where) => {
        const round = Array.from({ length: count }, (_, index) => at((360 * index) / count, 250))
        const first = where % count
        const second = (first + 1) % count
        const turned = round.with(first, round[second] ?? HERE).with(second, round[first] ?? HERE)
        expect(shapeFault({ form: 'area', points: turned })).toBe('crosses-itself')
      }),
    )
  })
})

describe('points', () => {
  it('put on the middle of a leg leave the length and nearly the area as they were, and can be taken out again', () => {
    fc.assert(
      fc.property(starShaped, fc.nat(), fc.constantFrom('line' as const, 'area' as const), (points, where, form) => {
        const shape = { form, points }
        const leg = where % legCount(shape)
        const middle = legMiddle(shape, leg)
        if (middle === null) throw new Error('the leg has a middle')
        const more = withPointOn(points, leg, middle)
        expect(more).toHaveLength(points.length + 1)
        expect(more[leg + 1]).toBe(middle)
        expect(withoutPoint({ form, points: more }, leg + 1)).toEqual(points)
        if (form === 'line') expect(lineLength(more)).toBeCloseTo(lineLength(points), 3)
        else {
          // A geodesic bulges from the straight leg on the map by its length squared, times the latitude's tangent, over eight radii.
          const from = points[leg]
          const to = points[(leg + 1) % points.length]
          const tangent = Math.tan((Math.abs(middle.lat) * Math.PI) / 180)
          const bulge = (geodesicDistance(from ?? middle, to ?? middle) ** 3 * tangent) / (12 * 6_371_009)
          expect(Math.abs(ringArea(more) - ringArea(points))).toBeLessThan(2 * bulge + 1e-4 * ringArea(points))
        }
      }),
    )
  })

  it('lie halfway, also on the leg that closes an area', () => {
    const area = { form: 'area', points: [at(0, 100), at(120, 100), at(240, 100)] } as const
    const middle = legMiddle(area, 2)
    if (middle === null) throw new Error('an area is closed')
    expect(geodesicDistance(middle, area.points[2])).toBeCloseTo(geodesicDistance(middle, area.points[0]), 3)
    expect(legMiddle({ form: 'line', points: area.points }, 2)).toBeNull()
  })

  it('are not taken from a shape that needs them', () => {
    expect(withoutPoint({ form: 'line', points: [HERE, at(0, 1)] }, 0)).toBeNull()
    expect(withoutPoint({ form: 'area', points: [HERE, at(0, 1), at(90, 1)] }, 1)).toBeNull()
    expect(withoutPoint({ form: 'line', points: [HERE, at(0, 1), at(0, 2)] }, 7)).toBeNull()
  })

  it('at which a line is cut stay in both parts, which together are as long as it was', () => {
    fc.assert(
      fc.property(starShaped, fc.nat(), (points, where) => {
        const index = 1 + (where % (points.length - 2))
        const [until, from] = [cutAt(points, index, 'until'), cutAt(points, index, 'from')]
        if (until === null || from === null) throw new Error('an inner point cuts')
        expect(until.at(-1)).toBe(points[index])
        expect(from[0]).toBe(points[index])
        expect(lineLength(until) + lineLength(from)).toBeCloseTo(lineLength(points), 6)
      }),
    )
  })

  it('at an end cut nothing off, and never leave less than a line', () => {
    const line = [HERE, at(0, 10), at(0, 20)]
    expect(cutAt(line, 0, 'from')).toBeNull()
    expect(cutAt(line, 2, 'until')).toBeNull()
    expect(cutAt(line, 0, 'until')).toBeNull()
    expect(cutAt(line, 2, 'from')).toBeNull()
  })

  it('that repeat the one before are dropped, a return is not', () => {
    const back = [HERE, at(0, 10), HERE]
    expect(withoutRepeats({ form: 'line', points: [HERE, HERE, at(0, 10), at(0, 10), HERE] })).toEqual(back)
    expect(withoutRepeats({ form: 'area', points: back })).toEqual([HERE, at(0, 10)])
  })
})

describe('a shoot', () => {
  const line = { form: 'line', points: [HERE, at(90, 40)] } as const
  const shoot = {
    ...newShoot('shoot', 'lens', 0),
    stoppingGround: [newStoppingGround('a', 'Layby', line), newStoppingGround('b', '', line)],
    keepOuts: [newKeepOut('a', 'Rails', 'rail', line)],
  }

  it('changes the one that is meant, though another sort has the same id', () => {
    const points = [HERE, at(0, 9)]
    const after = withDrawnPoints(shoot, 'stopping', 'a', points)
    expect(after.stoppingGround.map((one) => one.points)).toEqual([points, line.points])
    expect(after.keepOuts).toEqual(shoot.keepOuts)
    expect(withoutDrawn(shoot, 'keep-out', 'a')).toEqual({ ...shoot, keepOuts: [] })
  })

  it('gets stopping ground that is turned either way along a line and freely in an area', () => {
    expect(newStoppingGround('x', '', line).turn).toBe('either-way')
    expect(newStoppingGround('x', '', { form: 'area', points: [HERE, at(0, 9), at(90, 9)] }).turn).toBe('free')
  })
})
