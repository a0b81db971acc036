/** The light as shapes: shadows fall away from the sun to scale, each side is lit or not by the angle at which the sun strikes it. */
import { assert, constantFrom, integer, property, record } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { destination } from '#core/geo/geodesic.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { localFrame } from '#core/geo/local-frame.ts'
import { SKIES } from '#core/light/exposure.ts'
import { incidence, sunDirection } from '#core/light/incidence.ts'
import { assess } from '#core/plan/assess.ts'
import { facesOf } from '#core/plan/seen-sides.ts'
import { type Landmark, SPAN_FORMS } from '#core/scene/landmark.ts'
import { drawPlan } from '#renderer/view/drawing/plan-drawing.ts'
import { hourBeads } from '#renderer/view/drawing/hour-ring.ts'
import {
  type SideStroke,
  type SunNow,
  besideLine,
  landmarkShadow,
  landmarkStrokes,
  lightRays,
  litMoon,
  skyCasts,
  strokePaths,
  subjectShadow,
  subjectStrokes,
  sunNow,
} from '#renderer/view/drawing/light-drawing.ts'
import { hourLabels, hourRing, thingsLight } from '#renderer/view/drawing/things-light.ts'
import {
  type PlanView,
  type Point,
  distanceBetween,
  levelView,
  mercatorView,
} from '#renderer/view/drawing/plan-view.ts'
import { bridgeAt, examplePlan } from '#test/help/plans.ts'
import { number } from '#test/help/arbitrary.ts'

const plan = examplePlan({ turned: 70 })
const STOP = plan.spot.stop.at
/** Pixels a metre. */
const SCALE = 40
const view = levelView(STOP, SCALE, 1000, 1000)
const MIDDLE = { x: 500, y: 500 }

function sunOf(azimuth: number, altitude: number, at: LatLon = STOP): SunNow {
  const up = altitude > -0.8
  return { ground: localFrame(at, 12), azimuth, up, direction: sunDirection(azimuth, altitude), casts: up }
}

function bearingFrom(from: Point, to: Point): number {
  return ((Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI + 360) % 360
}

function turn(one: number, other: number): number {
  return Math.abs(((one - other + 540) % 360) - 180)
}

function square(at: LatLon, half: number, clockwise: boolean): Landmark {
  const corners = [45, 135, 225, 315].map((bearing) => destination(at, bearing, half * Math.SQRT2))
  const footprint = clockwise ? corners : corners.toReversed()
  return {
    id: 'square',
    name: 'Square',
    kind: 'building',
    height: 12,
    baseElevation: 0,
    baseSlope: null,
    baseAspect: null,
    footprint,
  }
}

function litIds(strokes: readonly SideStroke[]): string[] {
  return strokes.filter(({ lit }) => lit).map(({ id }) => id)
}

describe('the subject’s shadow', () => {
  test('falls opposite the sun, as long as its height over the tangent of the sun’s altitude', () => {
    assert(
      property(number(0, 360), number(5, 80), (azimuth, altitude) => {
        const outline = subjectShadow(plan, sunOf(azimuth, altitude), view)
        if (outline === null) throw new Error('it casts a shadow')
        const middle = outline.reduce((sum, { x, y }) => ({ x: sum.x + x, y: sum.y + y }), { x: 0, y: 0 })
        const centre = { x: middle.x / outline.length, y: middle.y / outline.length }
        const away = (azimuth + 180) * (Math.PI / 180)
        const along = ({ x, y }: Point): number => (x - 500) * Math.sin(away) - (y - 500) * Math.cos(away)
        // The box itself reaches no farther from its middle than half its diagonal.
        const half = Math.hypot(2.5, 0.65) / 2
        const length = 1.2 / Math.tan((altitude * Math.PI) / 180)
        const farthest = Math.max(...outline.map(along)) / SCALE
        expect(along(centre)).toBeGreaterThan(0)
        expect(farthest).toBeGreaterThanOrEqual(length)
        expect(farthest).toBeLessThanOrEqual(length + half + 1e-6)
        if (length > 20) expect(turn(bearingFrom(MIDDLE, centre), azimuth + 180)).toBeLessThan(4)
      }),
    )
  })

  test('is none when the sun is down, at the horizon, or behind a sky that casts none', () => {
    expect(subjectShadow(plan, sunOf(120, 10), view)).not.toBeNull()
    expect(subjectShadow(plan, sunOf(120, -3), view)).toBeNull()
    expect(subjectShadow(plan, sunOf(120, 0.01), view)).toBeNull()
    expect(SKIES.filter((sky) => !skyCasts(sky))).toEqual(['overcast', 'open-shade'])
    const noon = { ...plan.spot, when: Date.UTC(2026, 11, 14, 12) }
    const under = (sky: (typeof SKIES)[number]): boolean => {
      const now = { ...plan, spot: noon, shoot: { ...plan.shoot, sky } }
      return subjectShadow(now, sunNow(now, assess(now)), view) !== null
    }
    expect(SKIES.filter(under)).toEqual(['clear', 'hazy', 'cloudy-bright'])
  })
})

describe('the landmark’s shadow', () => {
  test('of a house reaches as far as its height says, away from the sun', () => {
    const house = square(STOP, 5, true)
    const outlines = landmarkShadow(house, 12, sunOf(270, 45), view)
    const points = outlines.flat()
    expect(outlines).toHaveLength(4)
    // 45 degrees: as long as high. From the east wall at +5 m, and not past the west one at -5 m.
    expect((Math.max(...points.map(({ x }) => x)) - 500) / SCALE).toBeCloseTo(5 + 12, 3)
    expect((Math.min(...points.map(({ x }) => x)) - 500) / SCALE).toBeCloseTo(-5, 3)
  })

  test('runs the same way round in every part, so that where two overlap the shade is no deeper', () => {
    assert(
      property(number(0, 360), number(8, 85), constantFrom(...SPAN_FORMS), (azimuth, altitude, form) => {
        const bridge = { ...bridgeAt(STOP, 40, 200), form }
        for (const outline of landmarkShadow(bridge, 12, sunOf(azimuth, altitude), view)) {
          const twice = outline.reduce((sum, from, index) => {
            const to = outline[(index + 1) % outline.length] ?? from
            return sum + from.x * to.y - to.x * from.y
          }, 0)
          expect(twice).toBeLessThan(1e-3)
        }
      }),
    )
  })

  test('is left out whole when a part of it would reach beyond what level ground can tell', () => {
    const bridge = bridgeAt(STOP, 40, 200)
    expect(landmarkShadow(bridge, 12, sunOf(100, 2), view).length).toBeGreaterThan(5)
    expect(landmarkShadow(bridge, 12, sunOf(100, 0.5), view)).toEqual([])
    expect(landmarkShadow(bridge, 12, sunOf(100, -5), view)).toEqual([])
  })
})

describe('a side', () => {
  test('is light where the sun strikes it at less than 90 degrees, else dark; all are dark when it is down', () => {
    const tower: Landmark = {
      id: 't',
      name: 'T',
      kind: 'upright',
      at: STOP,
      width: 8,
      height: 30,
      baseElevation: 0,
      baseSlope: null,
      baseAspect: null,
    }
    const landmarks = constantFrom<Landmark>(
      square(STOP, 6, true),
      square(STOP, 6, false),
      tower,
      bridgeAt(STOP, 40, 90),
    )
    assert(
      property(landmarks, number(0, 360), number(-10, 89), (landmark, azimuth, altitude) => {
        const sun = sunOf(azimuth, altitude)
        const strokes = landmarkStrokes(landmark, 12, sun, view)
        const faces = facesOf(landmark, 12)?.faces.filter(({ upright }) => upright) ?? []
        expect(strokes.map(({ id }) => id)).toEqual(faces.map(({ id }) => id))
        strokes.forEach(({ lit }, index) => {
          const angle = incidence(faces[index]?.normal ?? sun.direction, sun.direction)
          // The landmark's own up is turned against the stop's by a thousandth of a degree.
          if (Math.abs(angle - 90) > 0.01) expect(lit).toBe(sun.up && angle < 90)
        })
      }),
    )
  })

  test('looks west in the afternoon sun and east in the morning one', () => {
    const bearings = (landmark: Landmark, azimuth: number): number[] => {
      const lit = litIds(landmarkStrokes(landmark, 12, sunOf(azimuth, 20), view))
      const faces = facesOf(landmark, 12)?.faces ?? []
      return faces.filter(({ id }) => lit.includes(id)).map(({ bearing }) => Math.round(bearing ?? -1) % 360)
    }
    for (const clockwise of [true, false]) {
      expect(bearings(square(STOP, 6, clockwise), 270.5).toSorted((a, b) => a - b)).toEqual([0, 270])
      expect(bearings(square(STOP, 6, clockwise), 90.5).toSorted((a, b) => a - b)).toEqual([90, 180])
    }
  })

  test('has its stroke outside the footprint, whichever way round that was set', () => {
    for (const clockwise of [true, false]) {
      for (const { line } of landmarkStrokes(square(STOP, 6, clockwise), 12, sunOf(10, 30), view)) {
        const [from, to] = line
        if (from === undefined || to === undefined) throw new Error('a stroke has two ends')
        const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
        expect(distanceBetween(MIDDLE, middle)).toBeCloseTo(6 * SCALE + 3.2, 1)
        expect(distanceBetween(from, to)).toBeCloseTo(12 * SCALE, 0)
      }
    }
  })

  test('of the subject is front, rear, left or right, the front’s stroke round the notch', () => {
    const strokes = subjectStrokes(plan, sunOf(plan.spot.stop.heading, 25), view)
    expect(strokes.map(({ id, line }) => [id, line.length])).toEqual([
      ['front', 3],
      ['rear', 2],
      ['left', 2],
      ['right', 2],
    ])
    expect(litIds(strokes)).toContain('front')
    expect(litIds(strokes)).not.toContain('rear')
    const tip = strokes[0]?.line[1]
    if (tip === undefined) throw new Error('the front has a tip')
    expect(turn(bearingFrom(MIDDLE, tip), plan.spot.stop.heading)).toBeLessThan(0.01)
    expect(distanceBetween(MIDDLE, tip)).toBeGreaterThan((1.25 + 0.39) * SCALE + 3.2)
  })

  test('goes into one path for the lit and one for those in shade', () => {
    const paths = strokePaths([
      { id: 'a', lit: true, line: [MIDDLE, { x: 510, y: 500 }] },
      { id: 'b', lit: false, line: [MIDDLE, { x: 500, y: 510 }] },
    ])
    expect(paths).toEqual({ lit: 'M500,500L510,500', shade: 'M500,500L500,510' })
  })
})

describe('besideLine', () => {
  test('keeps its distance from a straight line, and meets in a right corner', () => {
    const corner = besideLine(
      [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 10, y: -10 },
      ],
      2,
    )
    expect(corner).toEqual([
      { x: 0, y: 2 },
      { x: 12, y: 2 },
      { x: 12, y: -10 },
    ])
  })

  test('has a place for points that lie on each other and for a line that turns back', () => {
    const points = [MIDDLE, MIDDLE, { x: 520, y: 500 }, MIDDLE]
    for (const { x, y } of besideLine(points, 3)) expect(distanceBetween({ x, y }, MIDDLE)).toBeLessThan(40)
  })
})

test('the rays come from the sun’s side and end so far from the subject', () => {
  assert(
    property(number(0, 360), number(10, 200), (azimuth, gap) => {
      const points = [...lightRays(MIDDLE, azimuth, gap).matchAll(/([-\d.]+),([-\d.]+)/gu)].map((found) => ({
        x: Number(found[1]),
        y: Number(found[2]),
      }))
      const nearest = points.toSorted((a, b) => distanceBetween(a, MIDDLE) - distanceBetween(b, MIDDLE))[0]
      if (nearest === undefined) throw new Error('there are rays')
      expect(distanceBetween(nearest, MIDDLE)).toBeCloseTo(gap, 0)
      expect(turn(bearingFrom(MIDDLE, nearest), azimuth)).toBeLessThan(1)
      for (const point of points) expect(turn(bearingFrom(MIDDLE, point), azimuth)).toBeLessThan(45)
    }),
  )
})

test('the moon’s lit part is as much of its disc as is lit', () => {
  // A half disc of radius r and half an ellipse with the half axes r and |1 - 2 lit| r: their sum is the lit share of pi r².
  for (const lit of [0, 0.2, 0.5, 0.8, 1]) {
    const [, radius, half, sweep] = /A(\d+),\1 0 0 1 \S+A\d+,([\d.]+) 0 0 ([01])/u.exec(litMoon(5, lit)) ?? []
    const ellipse = ((Number(sweep) === 1 ? 1 : -1) * Number(half)) / Number(radius)
    expect(0.5 + ellipse / 2).toBeCloseTo(lit, 12)
  }
})

describe('anywhere, at any time', () => {
  const at = record({
    lat: constantFrom(-90, -89.999_99, -66.5, -20, 0, 35, 71, 90),
    lon: constantFrom(-180, -77, 0, 179.999_9),
  })
  const when = integer({ min: Date.UTC(1901, 0, 1), max: Date.UTC(2099, 0, 1) })

  function allOf(now: typeof plan, surface: PlanView): unknown {
    const reading = assess(now)
    const drawing = drawPlan(now, reading, null, surface, 500)
    const sun = sunNow(now, reading)
    const hours = Array.from({ length: 24 }, (_, hour) => ({ hour, instant: now.spot.when + hour * 3_600_000 }))
    const ring = hourRing(now, reading, drawing, hourBeads(now.spot.stop.at, hours), surface)
    const labels = ring === null ? [] : hourLabels(ring, reading, drawing, null, surface)
    return [thingsLight(now, reading, drawing, sun, surface, true), ring, labels]
  }

  test('every figure drawn is a number', () => {
    assert(
      property(at, when, constantFrom(0, 7, 60), (place, instant, distance) => {
        const now = examplePlan({ at: place, distance, spot: { when: instant } })
        const close = levelView(now.spot.stop.at, 30, 300, 240)
        const box = { left: 0, top: 0, right: 800, bottom: 600 }
        const map = mercatorView({ zoom: 16, originX: 0, originY: 0, middleLon: place.lon, box })
        for (const surface of [close, map]) {
          const written = JSON.stringify(allOf(now, surface), (_, value: unknown) =>
            typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
          )
          expect(written).not.toContain('no number')
        }
      }),
      { numRuns: 60 },
    )
  })

  test('what is too small to be seen shows no sides, and a shadow only where that is seen', () => {
    const evening = { ...plan, spot: { ...plan.spot, when: Date.UTC(2026, 11, 14, 10) } }
    const reading = assess(evening)
    const at = (scale: number, alone: boolean) => {
      const surface = levelView(STOP, scale, 1000, 1000)
      return thingsLight(
        evening,
        reading,
        drawPlan(evening, reading, null, surface, 500),
        sunNow(evening, reading),
        surface,
        alone,
      )
    }
    expect(at(40, true).subjectSides).toHaveLength(4)
    expect(at(40, true).subjectShadow).toHaveLength(1)
    expect(at(40, false)).toMatchObject({ subjectSides: [], subjectShadow: [] })
    expect(at(5, true).subjectSides).toEqual([])
    expect(at(5, true).subjectShadow).toHaveLength(1)
    expect(at(0.5, true)).toMatchObject({ subjectSides: [], subjectShadow: [] })
    expect(at(0.5, true).landmarkSides).toHaveLength(6)
    expect(at(0.01, true)).toMatchObject({ landmarkSides: [], landmarkShadow: [] })
  })

  test('a landmark that bounds nothing has neither sides nor shadow', () => {
    const point = { ...bridgeAt(STOP, 40, 200), line: [STOP, STOP] }
    expect(landmarkStrokes(point, 12, sunOf(100, 30), view)).toEqual([])
    const shadow = landmarkShadow(point, 12, sunOf(100, 30), view).flat()
    expect(shadow.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true)
  })
})
