/** The demands of a scan measured on whole plans: each value is what the assessment tells, each margin turns where the demand does. */
import { describe, expect, it } from 'vitest'
import type { Framing } from '#core/frame/framing.ts'
import { destination } from '#core/geo/geodesic.ts'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { sunAt } from '#core/light/sky.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import { NO_DEMANDS, type ScanWishes } from '#core/record/scan-wishes.ts'
import { skylinesOf, skylinesToward } from '#core/plan/plan-skylines.ts'
import {
  type MeasuredDemand,
  clearSpace,
  demandsMade,
  landmarkPlaceMeasure,
  measureDemands,
  reachIn,
} from '#core/scan/demands.ts'
import { hoursMargin } from '#core/scan/light-demand.ts'
import { meets } from '#core/scan/score.ts'
import { type PlanParts, examplePlan } from '#test/help/plans.ts'
import { groundOf } from '#test/help/terrain.ts'

const NOTHING: ScanWishes = {
  ...NO_DEMANDS,
  lensHeight: { least: 0.8, most: 1.6 },
  days: null,
  hours: null,
}
const MUST = { must: true, weight: 3 } as const

function planWith(wishes: Partial<ScanWishes>, parts: PlanParts = {}): Plan {
  return examplePlan({ ...parts, shoot: { ...parts.shoot, scanWishes: { ...NOTHING, ...wishes } } })
}

function measured(plan: Plan, parkings: Parameters<typeof measureDemands>[3] = []): readonly MeasuredDemand[] {
  const found = assess(plan)
  return measureDemands(plan, found, lightSceneOf(plan, found), parkings, 'UTC')
}

function only(plan: Plan, parkings: Parameters<typeof measureDemands>[3] = []): MeasuredDemand {
  const [demand, ...rest] = measured(plan, parkings)
  if (demand === undefined || rest.length > 0) throw new Error('one demand was expected')
  return demand
}

const FRAMING: Framing = {
  widthFill: 0.4,
  heightFill: 0.2,
  left: -0.2,
  right: 0.2,
  bottom: -0.3,
  top: -0.1,
  cutLeft: 0,
  cutRight: 0,
  cutBottom: 0,
  cutTop: 0,
  whole: true,
  inFrame: true,
}

describe('fills', () => {
  it('are those of the assessment, on the side asked for', () => {
    const plan = planWith({
      subjectFill: { ...MUST, axis: 'height', least: 0.1, most: 0.9 },
      landmarkFill: { ...MUST, axis: 'width', least: 0.1, most: 0.9 },
    })
    const found = assess(plan)
    expect(measured(plan).map(({ value }) => value)).toEqual([found.subject?.heightFill, found.landmark?.widthFill])
  })

  it('of a landmark outside the frame are not met, however large it would be there', () => {
    const plan = planWith({ landmarkFill: { ...MUST, axis: 'height', least: 0, most: 100 } }, { distance: 7 })
    const turned = { ...plan, spot: { ...plan.spot, shot: { ...plan.spot.shot, placement: { across: 4, up: 0 } } } }
    expect(only(plan).margin).toBeGreaterThan(0)
    const found = assess(turned)
    expect(found.landmark?.inFrame).toBe(false)
    expect(only(turned).margin).toBeLessThan(0)
  })
})

describe('the reach into the frame', () => {
  it.each<[Partial<Framing>, number]>([
    [{ left: -0.2, right: 0.2 }, 1.75],
    [{ left: 0.3, right: 0.7 }, 0.5],
    [{ left: 0.5, right: 0.9 }, 0],
    [{ left: 0.7, right: 1.1 }, -0.5],
    [{ left: -2, right: 2, widthFill: 4 }, 2.5],
  ])('%j', (part, reach) => {
    expect(reachIn({ ...FRAMING, bottom: -0.1, top: 0.4, heightFill: 0.2, ...part })).toBeCloseTo(reach, 12)
  })
})

describe('the whole landmark', () => {
  it('has the clear space of its tightest border', () => {
    expect(clearSpace(FRAMING)).toBeCloseTo(0.2, 12)
    expect(clearSpace({ ...FRAMING, top: 0.52 })).toBeCloseTo(-0.02, 12)
  })

  it('must be within the crops too where they count', () => {
    const whole = planWith({ landmarkWhole: { ...MUST, crops: false } })
    const cropped = planWith({ landmarkWhole: { ...MUST, crops: true } })
    const found = assess(cropped)
    const narrowest = Math.min(
      ...found.crops
        .filter(({ orientation }) => orientation === 'lying')
        .map(({ landmark }) => (landmark === null ? 0 : clearSpace(landmark))),
    )
    expect(only(whole).value).toBeCloseTo(found.landmark === null ? NaN : clearSpace(found.landmark), 12)
    expect(only(cropped).value).toBeCloseTo(narrowest, 12)
    expect(narrowest).toBeLessThan(only(whole).value ?? 0)
  })

  it('agrees with the assessment on what is whole', () => {
    for (const focalLength of [24, 30, 35, 40, 45, 50, 70]) {
      const plan = planWith(
        { landmarkWhole: { ...MUST, crops: false } },
        { shot: { focalLength }, spot: { hold: 'focal-length' } },
      )
      expect(meets(only(plan).margin)).toBe(assess(plan).landmark?.whole)
    }
  })
})

describe('the landmark’s place', () => {
  const subject = { ...FRAMING, left: -0.1, right: 0.3 }
  it.each<[NonNullable<ScanWishes['landmarkPlace']>['where'], number, number, number, boolean]>([
    ['left', -0.4, -0.2, 0.1, true],
    ['left', -0.4, -0.15, 0.1, false],
    ['right', 0.4, 0.45, 0.1, true],
    ['right', -0.4, -0.2, 0.1, false],
    ['beside', -0.4, -0.2, 0.1, true],
    ['beside', 0.1, 0.2, 0, false],
    ['behind', 0.1, 0.2, 0, true],
    ['behind', 0.3, 0.4, 0, false],
  ])('%s, from %d to %d with a gap of %d: %s', (where, left, right, gap, met) => {
    const landmark = { ...FRAMING, left, right, widthFill: right - left, bottom: 0, top: 0.2 }
    expect(meets(landmarkPlaceMeasure({ ...MUST, where, gap }, subject, landmark).margin)).toBe(met)
  })
})

describe('the subject’s view', () => {
  it.each([
    [90, 90],
    [0, 180],
    [180, 0],
    [300, 120],
  ])('turned %d degrees from the look is %d', (turned, value) => {
    const plan = planWith({ subjectView: { ...MUST, least: 0, most: 60 } }, { turned })
    expect(only(plan).value).toBeCloseTo(value, 3)
    expect(meets(only(plan).margin)).toBe(value <= 60)
  })
})

describe('softness', () => {
  it('is the blur of the assessment by the width', () => {
    const plan = planWith({ softness: { ...MUST, least: 0, most: 0.01 } })
    expect(only(plan).value).toBe(assess(plan).sharp?.landmark?.share)
  })
})

describe('parking', () => {
  it('is the nearest, measured from where the subject stops', () => {
    const plan = planWith({ parking: { ...MUST, within: 150 } })
    const { at } = plan.spot.stop
    const found = only(plan, [destination(at, 20, 400), destination(at, 200, 120)])
    expect(found.value).toBeCloseTo(120, 6)
    expect(found.margin).toBeCloseTo(0.2, 6)
  })

  it('is not met where none is known', () => {
    expect(only(planWith({ parking: { ...MUST, within: 150 } }))).toMatchObject({ value: null, degree: 0 })
  })
})

describe('the landmark’s visible share', () => {
  const centre = { lat: 46.9, lon: 10.3 }
  const demand = { landmarkShown: { ...MUST, least: 0.8 } }

  it('can’t be told without elevations, and then excludes nothing', () => {
    expect(only(planWith(demand))).toMatchObject({ value: null, margin: 0 })
  })

  it('is that of the ground reading, behind a wall of ground', () => {
    const terrain = groundOf(201, 10, (east, north) => (Math.abs(north - 300) < 15 && east < 900 ? 20 : 0), centre)
    const plan = { ...planWith(demand, { at: centre, bearing: 0 }), terrain }
    const shown = assess(plan).ground?.landmarkShown
    expect(shown).toBeGreaterThan(0)
    expect(shown).toBeLessThan(0.8)
    expect(only(plan).value).toBe(shown)
    expect(meets(only(plan).margin)).toBe(false)
  })

  it('is not met over unknown ground', () => {
    const terrain = groundOf(201, 10, () => Number.NaN, centre)
    expect(only({ ...planWith(demand, { at: centre, bearing: 0 }), terrain })).toMatchObject({ value: null, degree: 0 })
  })
})

describe('light', () => {
  it('counts only while the shoot wishes for some', () => {
    const { shoot } = planWith({ light: { ...MUST } })
    expect(demandsMade(shoot)).toEqual([])
    expect(demandsMade({ ...shoot, light: { ...NO_WISHES, soft: 'evening' } })).toEqual(['light'])
  })

  it('has the least margin, and the mean of the degrees', () => {
    const light = { ...NO_WISHES, altitude: { least: 0, most: 90 }, hours: { from: 0, until: 60 } }
    const plan = planWith({ light: { ...MUST } }, { shoot: { light } })
    const found = only(plan)
    expect(found.value).toBe(1)
    expect(found.margin).toBeLessThan(-1)
    expect(found.degree).toBeGreaterThan(0.4)
    expect(found.degree).toBeLessThan(0.5)
  })

  it('of one direction of the skyline is that of the whole skyline, as far as its steps tell', () => {
    const centre = { lat: 46.9, lon: 10.3 }
    const terrain = groundOf(201, 10, (east, north) => (east < -400 ? 150 : north > 900 ? 90 : 0), centre)
    const light = { ...NO_WISHES, subject: 'lit' } as const
    const { shoot, spot } = planWith({ light: { ...MUST } }, { shoot: { light }, at: centre })
    for (const hour of [5, 8, 11, 14, 16, 17, 18]) {
      const plan = planOf(shoot, { ...spot, when: Date.UTC(2026, 5, 14, hour) }, terrain)
      const found = assess(plan)
      const { azimuth } = sunAt(spot.stop.at, plan.spot.when)
      const exact = lightSceneOf(plan, found, skylinesToward(plan, found.levels, azimuth))
      const whole = lightSceneOf(plan, found, skylinesOf(plan))
      const [one] = measureDemands(plan, found, exact, [], 'UTC')
      const [other] = measureDemands(plan, found, whole, [], 'UTC')
      expect(one?.margin).toBeCloseTo(other?.margin ?? NaN, 1)
      expect(meets(one?.margin ?? NaN)).toBe(found.light.sunOnSubject && (found.light.subject.lit ?? 0) >= 0.5)
    }
  })
})

describe('clock hours', () => {
  const at = (hour: number, minute = 0): number => Date.UTC(2026, 5, 14, hour, minute)
  it.each([
    [{ from: 600, until: 720 }, at(11), 1],
    [{ from: 600, until: 720 }, at(10), 0],
    [{ from: 600, until: 720 }, at(13), -1],
    [{ from: 600, until: 720 }, at(9, 30), -0.5],
    [{ from: 1380, until: 60 }, at(0), 1],
    [{ from: 1380, until: 60 }, at(2), -1],
  ])('%j', (hours, instant, margin) => {
    expect(hoursMargin(hours, instant, 'UTC')).toBeCloseTo(margin, 9)
  })

  it('go by the clock of the place', () => {
    expect(hoursMargin({ from: 600, until: 720 }, at(9), 'Europe/Berlin')).toBeCloseTo(1, 9)
  })
})
