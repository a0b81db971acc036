/** The light at an instant against independent geometry, and in step with the day's windows. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { projectLocal } from '#core/frame/projection.ts'
import { incidence, sunDirection } from '#core/light/incidence.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { assess } from '#core/plan/assess.ts'
import { dayLight } from '#core/plan/day-light.ts'
import type { Plan } from '#core/plan/plan.ts'
import { turnBetween } from '#core/units/angle.ts'
import { type PlanParts, bridgeAt, examplePlan } from '#test/help/plans.ts'

const YEAR = 365 * 86_400_000
const anyPlan = fc
  .record({
    // Whole numbers: random doubles crowd about nought, where every subject would be seen end on.
    lat: fc.integer({ min: -85, max: 85 }),
    lon: fc.integer({ min: -180, max: 179 }),
    bearing: fc.integer({ min: 0, max: 359 }),
    distance: fc.integer({ min: 3, max: 40 }),
    turned: fc.integer({ min: 0, max: 359 }),
    when: fc.integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2020, 0, 1) + 12 * YEAR }),
    upright: fc.boolean(),
  })
  .map(({ lat, lon, bearing, distance, turned, when, upright }) =>
    planAt({
      at: { lat, lon },
      bearing,
      distance,
      turned,
      spot: { when },
      shot: { orientation: upright ? 'upright' : 'lying' },
    }),
  )

function planAt(parts: PlanParts): Plan {
  const at = parts.at ?? { lat: 0, lon: 0 }
  return examplePlan({ landmark: bridgeAt(at, (parts.bearing ?? 0) + 4, 700, 70), ...parts })
}

/** Every number anywhere within. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (value === null || typeof value !== 'object') return []
  return Object.values(value).flatMap(numbersIn)
}

describe('the light of an assessment', () => {
  it('holds no number that is none, at any place and hour', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(numbersIn(assess(plan).light).every(Number.isFinite)).toBe(true)
      }),
      { numRuns: 400 },
    )
  })

  it('counts as lit the parts whose faces the sun stands before, and all parts together are the whole', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { light } = assess(plan)
        for (const thing of [light.subject, light.landmark]) {
          if (thing === null || thing.lit === null) continue
          const whole = thing.sides.reduce((sum, side) => sum + side.share, 0)
          expect(whole).toBeCloseTo(1, 6)
          const lit = thing.sides
            .filter((side) => light.sun.up && side.incidence < 90)
            .reduce((sum, side) => sum + side.share, 0)
          expect(thing.lit).toBeCloseTo(lit, 6)
        }
      }),
    )
  })

  it('gives upright sides the angle of spherical trigonometry: cos i = cos h cos (A − b)', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { light } = assess(plan)
        for (const side of light.subject.sides) {
          if (side.bearing === null) continue
          const turn = (turnBetween(side.bearing, light.sun.azimuth) * Math.PI) / 180
          const expected = Math.acos(Math.cos((light.sun.apparent * Math.PI) / 180) * Math.cos(turn))
          expect(side.incidence).toBeCloseTo((expected * 180) / Math.PI, 4)
        }
      }),
    )
  })

  it('has the sun in the frame just where the projection puts it within', () => {
    let told = 0
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { light, view } = assess(plan)
        if (view === null || light.sun.inFrame === null || Math.abs(light.sun.inFrame.within) < 1e-6) return
        const at = projectLocal(view, sunDirection(light.sun.azimuth, light.sun.apparent))
        const within = at !== null && Math.abs(at.x) < 0.5 && Math.abs(at.y) < 0.5
        told += 1
        expect(light.sun.inFrame.within > 0).toBe(within)
      }),
      { numRuns: 400 },
    )
    expect(told).toBeGreaterThan(300)
  })
})

describe('a fill', () => {
  it('stands before a seen side in shade while another is lit, on the hand where that side looks', () => {
    let told = 0
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { light, toSubject } = assess(plan)
        if (light.fill === null || toSubject.bearing === null) return
        told += 1
        const { fill } = light
        const side = light.subject.sides.find((one) => one.bearing === fill.bearing)
        expect(side?.strike).toBe('in-shade')
        expect(light.subject.sides.some((one) => one.strike !== 'in-shade')).toBe(true)
        // Facing the subject, a bearing anticlockwise of the line from it back to the camera lies to the right.
        const off = turnBetween(toSubject.bearing + 180, fill.bearing)
        expect(fill.hand).toBe(off > 0 ? 'left' : 'right')
      }),
      { numRuns: 300 },
    )
    expect(told).toBeGreaterThan(20)
  })
})

describe('the windows of the day', () => {
  const plan = planAt({
    at: { lat: 46.9, lon: 7.4 },
    bearing: 60,
    turned: 70,
    spot: { when: Date.UTC(2026, 5, 14, 12) },
    shoot: { zone: 'Europe/Zurich' },
  })

  it.each(['lit', 'in-shade'] as const)('of a subject %s agree with the reading at every minute', (subject) => {
    const wished: Plan = { ...plan, shoot: { ...plan.shoot, light: { ...NO_WISHES, subject } } }
    const { day, windows } = dayLight(wished, assess(wished), 'Europe/Zurich')
    let inside = 0
    for (let instant = day.start; instant < day.end; instant += 60_000) {
      const { light } = assess({ ...wished, spot: { ...wished.spot, when: instant } })
      const upright = light.subject.sides.filter((side) => side.upright)
      const whole = upright.reduce((sum, side) => sum + side.share, 0)
      const lit = upright
        .filter((side) => light.sun.up && side.incidence < 90)
        .reduce((sum, side) => sum + side.share, 0)
      const holds = light.sun.up && (subject === 'lit' ? lit / whole >= 0.5 : lit / whole <= 0.1)
      const within = windows.common.some(({ from, until }) => instant >= from && instant <= until)
      const near = windows.common.some(
        ({ from, until }) => Math.abs(instant - from) < 1_000 || Math.abs(instant - until) < 1_000,
      )
      if (!near) expect(within, new Date(instant).toISOString()).toBe(holds)
      if (within) inside += 1
    }
    expect(inside).toBeGreaterThan(30)
  })

  it('are the stretches in which all wishes hold', () => {
    const light = { ...NO_WISHES, subject: 'lit', altitude: { least: 10, most: 40 }, moonUp: false } as const
    const wished: Plan = { ...plan, shoot: { ...plan.shoot, light } }
    const { windows } = dayLight(wished, assess(wished), 'Europe/Zurich')
    expect(windows.common.length).toBeGreaterThan(0)
    for (const { from, until } of windows.common)
      for (const { spans } of windows.wishes)
        expect(spans.some((span) => span.from <= from && span.until >= until)).toBe(true)
  })

  it('name the pair that never meets on the day', () => {
    const light = { ...NO_WISHES, soft: 'evening', hours: { from: 540, until: 720 } } as const
    const wished: Plan = { ...plan, shoot: { ...plan.shoot, light } }
    const { windows } = dayLight(wished, assess(wished), 'Europe/Zurich')
    expect(windows.common).toEqual([])
    expect(windows.apart).toEqual([['soft', 'hours']])
    expect(windows.contradictions).toEqual([])
  })
})

describe('common practice, no source', () => {
  it('a sun behind the camera lights the subject from the front, one before it from behind', () => {
    const told = new Set<string>()
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { light, toSubject } = assess(plan)
        if (!light.sun.up || light.from === null || toSubject.bearing === null || light.sun.apparent > 60) return
        const off = Math.abs(turnBetween(toSubject.bearing, light.sun.azimuth))
        if (off >= 40 && off <= 140) return
        told.add(light.from.side)
        expect(light.from.side).toBe(off > 140 ? 'front' : 'behind')
      }),
      { numRuns: 300 },
    )
    expect([...told].toSorted()).toEqual(['behind', 'front'])
  })

  it('the sun’s direction is square to a face that looks at it', () => {
    expect(incidence(sunDirection(123, 0), sunDirection(123, 0))).toBeCloseTo(0, 9)
  })
})
