/** Each demand's measure by hand: where its edge lies, where it is best, and what of it is unknown; and what change a near miss asks for. */
import { describe, expect, it } from 'vitest'
import type { Framing } from '#core/frame/framing.ts'
import {
  type MeasuredDemand,
  clearSpace,
  landmarkFillMeasure,
  landmarkPlaceMeasure,
  landmarkShownMeasure,
  landmarkWholeMeasure,
  metBy,
  metOf,
  parkingMeasured,
  reachIn,
  softnessMeasure,
  subjectFillMeasure,
  subjectViewMeasure,
  viewAngle,
} from '#core/scan/demands.ts'
import { destination } from '#core/geo/geodesic.ts'
import { hoursMargin, lightMet } from '#core/scan/light-demand.ts'
import { nearLight, nearMiss } from '#core/scan/near-miss.ts'
import { framesBoth } from '#core/scan/picture-limits.ts'
import type { Taken } from '#core/scan/picture.ts'
import type { ScanTable } from '#core/scan/scan-table.ts'
import { CENTRE, NOTHING_WISHED } from '#test/help/scans.ts'

const MADE = { must: true, weight: 3 } as const

/** A framing by its bounds, as shares of the frame from its middle. */
function framing(left: number, right: number, bottom: number, top: number): Framing {
  const cuts = { cutLeft: 0, cutRight: 0, cutBottom: 0, cutTop: 0 }
  const fills = { widthFill: right - left, heightFill: top - bottom }
  return { left, right, bottom, top, ...fills, ...cuts, whole: true, inFrame: true }
}

const MIDDLE = framing(-0.2, 0.2, -0.1, 0.1)

describe('the measure of a fill', () => {
  it('is of the side asked for, best in the middle of its band', () => {
    const wide = { ...MADE, axis: 'width', least: 0.3, most: 0.5 } as const
    expect(subjectFillMeasure(wide, MIDDLE)).toEqual({ value: expect.closeTo(0.4, 12), margin: expect.closeTo(1, 12) })
    const high = { ...MADE, axis: 'height', least: 0.3, most: 0.5 } as const
    expect(subjectFillMeasure(high, MIDDLE)).toEqual({ value: expect.closeTo(0.2, 12), margin: expect.closeTo(-1, 12) })
    const one = { ...MADE, axis: 'width', least: 0.41, most: 0.41 } as const
    expect(subjectFillMeasure(one, MIDDLE).margin).toBeCloseTo(-2, 9)
  })

  it('of a landmark is no better than it reaches into the frame, and unknown of none', () => {
    const wide = { ...MADE, axis: 'width', least: 0.3, most: 0.5 } as const
    const high = { ...MADE, axis: 'height', least: 0.1, most: 0.3 } as const
    expect(landmarkFillMeasure(wide, MIDDLE).margin).toBeCloseTo(1, 12)
    expect(landmarkFillMeasure(high, MIDDLE)).toEqual({ value: expect.closeTo(0.2, 12), margin: expect.closeTo(1, 12) })
    // Three quarters of it lie beyond the right border.
    expect(landmarkFillMeasure(wide, framing(0.4, 0.8, -0.1, 0.1)).margin).toBeCloseTo(0.25, 12)
    expect(landmarkFillMeasure(wide, framing(0.6, 1, -0.1, 0.1)).margin).toBeCloseTo(-0.25, 12)
    expect(landmarkFillMeasure(wide, null)).toEqual({ value: null, margin: -1 })
  })
})

describe('the reach into the frame', () => {
  it.each([
    [framing(-0.2, 0.2, -0.1, 0.1), 0.6 / 0.2],
    [framing(0.3, 0.7, -0.1, 0.1), 0.5],
    [framing(-0.7, -0.3, -0.1, 0.1), 0.5],
    [framing(-0.1, 0.1, 0.35, 0.75), 0.375],
    [framing(-0.1, 0.1, -0.75, -0.35), 0.375],
    // Larger than the frame: by the frame's own side.
    [framing(0.2, 5, -0.1, 0.1), 0.3],
    [framing(-0.1, 0.1, -5, -0.2), 0.3],
  ])('%j', (bounds, reach) => {
    // The nearer of the two sides counts, each by the thing's own size there.
    const wide = Math.min(bounds.widthFill, 1)
    const high = Math.min(bounds.heightFill, 1)
    const aside = Math.min(bounds.right + 0.5, 0.5 - bounds.left) / wide
    const above = Math.min(bounds.top + 0.5, 0.5 - bounds.bottom) / high
    expect(reachIn(bounds)).toBeCloseTo(Math.min(aside, above), 9)
    if (reach < 1) expect(reachIn(bounds)).toBeCloseTo(reach, 9)
  })

  it('of a thing without size is all or nothing', () => {
    expect(reachIn(framing(0, 0, 0, 0))).toBeGreaterThan(1)
    expect(reachIn(framing(0.6, 0.6, 0, 0))).toBeLessThan(-1)
  })
})

describe('clear space', () => {
  it('is that of the tightest border, and full at a tenth', () => {
    expect([
      clearSpace(framing(-0.45, 0, 0, 0)),
      clearSpace(framing(0, 0.47, 0, 0)),
      clearSpace(framing(0, 0, -0.48, 0)),
      clearSpace(framing(0, 0, 0, 0.6)),
    ]).toEqual([0.05, 0.03, 0.02, -0.1].map((space) => expect.closeTo(space, 12)))
    const two = [framing(-0.45, 0.1, 0, 0.1), framing(-0.48, 0.1, 0, 0.1)]
    expect(landmarkWholeMeasure(two)).toEqual({ value: expect.closeTo(0.02, 12), margin: expect.closeTo(0.2, 12) })
    expect(landmarkWholeMeasure(two.toReversed()).value).toBeCloseTo(0.02, 12)
    expect(landmarkWholeMeasure(null)).toEqual({ value: null, margin: -1 })
  })
})

describe('the measure of the landmark’s place', () => {
  const subject = framing(-0.1, 0.1, -0.4, -0.1)
  const at = (where: 'behind' | 'left' | 'right' | 'beside', left: number, right: number, gap = 0.05) =>
    landmarkPlaceMeasure({ ...MADE, where, gap }, subject, framing(left, right, 0, 0.1))

  it('behind is by how far the middles lie apart, against half the subject', () => {
    expect(at('behind', -0.05, 0.05)).toEqual({ value: expect.closeTo(0, 12), margin: expect.closeTo(1, 12) })
    expect(at('behind', 0, 0.1)).toEqual({ value: expect.closeTo(0.05, 12), margin: expect.closeTo(0.5, 12) })
    expect(at('behind', -0.1, 0)).toEqual({ value: expect.closeTo(-0.05, 12), margin: expect.closeTo(0.5, 12) })
    expect(at('behind', 0.1, 0.3).margin).toBeCloseTo(-1, 12)
  })

  it('beside is by the clear space between, less the gap asked for', () => {
    expect(at('right', 0.2, 0.3)).toEqual({ value: expect.closeTo(0.1, 12), margin: expect.closeTo(0.5, 12) })
    expect(at('left', -0.3, -0.2)).toEqual({ value: expect.closeTo(0.1, 12), margin: expect.closeTo(0.5, 12) })
    expect(at('left', 0.2, 0.3).value).toBeCloseTo(-0.4, 12)
    expect(at('right', -0.3, -0.2).value).toBeCloseTo(-0.4, 12)
    for (const [left, right] of [
      [0.2, 0.3],
      [-0.3, -0.2],
    ] as const)
      expect(at('beside', left, right).value).toBeCloseTo(0.1, 12)
    // Nine tenths of it beyond the border: it is there, but hardly in the picture.
    expect(at('right', 0.48, 0.68).margin).toBeCloseTo(0.1, 9)
  })

  it('is unknown of a landmark that is not before the lens', () => {
    expect(landmarkPlaceMeasure({ ...MADE, where: 'behind', gap: 0 }, subject, null)).toEqual({
      value: null,
      margin: -1,
    })
  })
})

describe('the measure of the subject’s view', () => {
  it('is by the turn from its front to the camera, on either hand', () => {
    expect([viewAngle(350, 20), viewAngle(20, 350), viewAngle(90, 270)]).toEqual([30, 30, 180])
    const demand = { ...MADE, least: 20, most: 60 }
    expect(subjectViewMeasure(demand, 100, 140)).toEqual({ value: 40, margin: 1 })
    expect(subjectViewMeasure(demand, 100, 60)).toEqual({ value: 40, margin: 1 })
    expect(subjectViewMeasure(demand, 100, 180)).toEqual({ value: 80, margin: -1 })
    expect(subjectViewMeasure(demand, 100, null)).toEqual({ value: null, margin: -1 })
  })

  it('is best straight ahead and straight behind where the band reaches there', () => {
    expect(subjectViewMeasure({ ...MADE, least: 0, most: 40 }, 0, 0).margin).toBe(1)
    expect(subjectViewMeasure({ ...MADE, least: 140, most: 180 }, 0, 180).margin).toBe(1)
    // A band of one value has half a degree to either side.
    expect(subjectViewMeasure({ ...MADE, least: 90, most: 90 }, 0, 90.5).margin).toBeCloseTo(-1, 9)
  })
})

describe('the measures of sight, softness and parking', () => {
  it('of what shows of the landmark rise from the least to all of it', () => {
    const shown = (least: number, share: number | null, elevations = true) =>
      landmarkShownMeasure({ ...MADE, least }, share, elevations)
    expect(shown(0.6, 0.6)).toEqual({ value: 0.6, margin: 0 })
    expect(shown(0.6, 1)).toEqual({ value: 1, margin: 1 })
    expect(shown(0.6, 0.2).margin).toBeCloseTo(-1, 12)
    expect(shown(1, 0.95).margin).toBeCloseTo(-1, 12)
    expect(shown(0.6, null)).toEqual({ value: null, margin: -1 })
    expect(shown(0.6, null, false)).toEqual({ value: null, margin: 0 })
  })

  it('of softness is open where nothing sharper is asked for', () => {
    const soft = (least: number, most: number, share: number | null) => softnessMeasure({ ...MADE, least, most }, share)
    expect(soft(0, 0.01, 0).margin).toBe(1)
    expect(soft(0.002, 0.01, 0.006).margin).toBeCloseTo(1, 12)
    expect(soft(0.006, 0.006, 0.0065).margin).toBeCloseTo(-1, 9)
    expect(soft(0, 0.01, null)).toEqual({ value: null, margin: -1 })
  })

  it('of parking is the nearest in metres, best at none', () => {
    const wishes = (within: number) => ({ ...NOTHING_WISHED, parking: { ...MADE, within } })
    const near = (within: number, ...metres: number[]) =>
      parkingMeasured(
        wishes(within),
        CENTRE,
        metres.map((distance) => destination(CENTRE, 70, distance)),
      )
    expect(near(200, 900, 50, 300)).toMatchObject({ value: expect.closeTo(50, 4), margin: expect.closeTo(0.75, 6) })
    expect(near(200, 200)?.margin).toBeCloseTo(0, 6)
    expect(near(200, 400)?.margin).toBeCloseTo(-1, 6)
    expect(near(0, 2)?.margin).toBeCloseTo(-2, 4)
    expect(near(200)).toMatchObject({ value: null, margin: -1, degree: 0 })
    expect(parkingMeasured(NOTHING_WISHED, CENTRE, [CENTRE])).toBeNull()
  })
})

describe('a demand as met', () => {
  const wishes = { ...NOTHING_WISHED, parking: { must: false, weight: 2, within: 5 } }

  it('has its must, its weight, and the degree of its margin unless another is told', () => {
    const made = metBy('parking', wishes, { value: 7, margin: 0.5 })
    expect(made).toEqual({ kind: 'parking', must: false, weight: 2, degree: 0.9, value: 7, margin: 0.5 })
    expect(metBy('parking', wishes, { value: 7, margin: 0.5 }, 0.3).degree).toBe(0.3)
    expect(metBy('softness', wishes, { value: 7, margin: 0.5 })).toMatchObject({ must: false, weight: 0 })
    expect(metOf(made)).toEqual({ kind: 'parking', must: false, weight: 2, degree: 0.9, value: 7 })
  })
})

describe('hours of the clock', () => {
  const at = (hour: number, minute = 0, second = 0) => Date.UTC(2026, 5, 14, hour, minute, second)

  it('are best in their middle, at the edge at their ends, and fall off to both sides', () => {
    const day = (hour: number, minute = 0) => hoursMargin({ from: 480, until: 720 }, at(hour, minute), 'UTC')
    expect([day(8), day(9), day(10), day(11), day(12)]).toEqual([0, 0.5, 1, 0.5, 0])
    expect([day(7), day(13), day(6), day(14)]).toEqual([-0.5, -0.5, -1, -1])
    expect(hoursMargin({ from: 480, until: 720 }, at(8, 0, 30), 'UTC')).toBeCloseTo(0.5 / 120, 12)
  })

  it('go past midnight', () => {
    const night = (hour: number) => hoursMargin({ from: 1320, until: 120 }, at(hour), 'UTC')
    expect([night(22), night(23), night(0), night(1), night(2)]).toEqual([0, 0.5, 1, 0.5, 0])
    expect([night(21), night(3)]).toEqual([-0.5, -0.5])
  })
})

describe('the light wishes together', () => {
  it('count those that hold, by the least margin and the mean degree', () => {
    expect(lightMet([])).toEqual({ value: 0, margin: 1, degree: 1 })
    expect(lightMet([0.5, 0, -0.5])).toEqual({
      value: 2,
      margin: -0.5,
      degree: expect.closeTo((0.9 + 0.8 + 0.4) / 3, 12),
    })
    expect(lightMet([3])).toEqual({ value: 1, margin: 1, degree: 1 })
  })
})

describe('what makes no picture', () => {
  const extent = (near: number, far: number, partlyBehind = false) => ({
    left: 0,
    right: 1,
    bottom: 0,
    top: 1,
    near,
    far,
    partlyBehind,
  })
  const subject = extent(5, 7)

  it('is a subject that is cut, or a landmark in the frame whose middle depth lies before it', () => {
    expect(framesBoth(MIDDLE, subject, null, null)).toBe(true)
    expect(framesBoth({ ...MIDDLE, whole: false }, subject, null, null)).toBe(false)
    expect(framesBoth(MIDDLE, subject, null, extent(1, 2))).toBe(true)
    expect(framesBoth(MIDDLE, subject, MIDDLE, null)).toBe(true)
    expect(framesBoth(MIDDLE, subject, MIDDLE, extent(4, 6))).toBe(true)
    expect(framesBoth(MIDDLE, subject, MIDDLE, extent(4, 5.9))).toBe(false)
    expect(framesBoth(MIDDLE, subject, { ...MIDDLE, inFrame: false }, extent(1, 2))).toBe(true)
    expect(framesBoth(MIDDLE, subject, MIDDLE, extent(1, 2, true))).toBe(true)
  })
})

describe('a near miss', () => {
  const demands = {
    landmarkFill: { ...MADE, axis: 'width', least: 0.3, most: 0.5 },
    subjectView: { ...MADE, least: 20, most: 60 },
    softness: { ...MADE, least: 0.002, most: 0.01 },
    landmarkWhole: { ...MADE, crops: false },
    landmarkPlace: { ...MADE, where: 'left', gap: 0.05 },
    landmarkShown: { ...MADE, least: 0.6 },
    parking: { ...MADE, within: 200 },
  } as const
  const missing = (
    kind: MeasuredDemand['kind'],
    value: number | null,
    { landmark = MIDDLE, wishes = demands }: { landmark?: Framing | null; wishes?: object } = {},
  ) => {
    const table = { wishes: { ...NOTHING_WISHED, ...wishes } } as unknown as ScanTable
    const missed: MeasuredDemand = { kind, must: true, weight: 3, degree: 0, value, margin: -0.25 }
    return nearMiss(table, missed, { frame: { landmark } } as unknown as Taken)
  }

  it.each<[MeasuredDemand['kind'], number, object]>([
    ['landmarkFill', 0.256, { now: 0.3, to: 0.25, end: 'least' }],
    ['landmarkFill', 0.25, { now: 0.3, to: 0.25, end: 'least' }],
    ['landmarkFill', 0.512, { now: 0.5, to: 0.52, end: 'most' }],
    ['landmarkFill', 0.55, { now: 0.5, to: 0.55, end: 'most' }],
    ['landmarkFill', 0.004, { now: 0.3, to: 0, end: 'least' }],
    ['subjectView', 17.3, { now: 20, to: 17, end: 'least' }],
    ['subjectView', 61.2, { now: 60, to: 62, end: 'most' }],
    ['softness', 0.0015, { now: 0.002, to: 0.001, end: 'least' }],
    ['softness', 0.0121, { now: 0.01, to: 0.013, end: 'most' }],
    ['landmarkWhole', -0.034, { now: 0, to: -0.04, end: null }],
    ['landmarkPlace', 0.027, { now: 0.05, to: 0.02, end: null }],
    ['landmarkShown', 0.519, { now: 0.6, to: 0.51, end: 'least' }],
    ['parking', 231, { now: 200, to: 240, end: 'most' }],
  ])('of %s at %d is mended by a round figure just beyond it', (kind, value, change) => {
    expect(missing(kind, value)).toEqual({ of: kind, pain: 0.25, ...change })
  })

  it('is none where the value lies within, is unknown, or is no longer demanded', () => {
    for (const value of [0.3, 0.4, 0.5]) expect(missing('landmarkFill', value)).toBeNull()
    expect(missing('landmarkFill', null)).toBeNull()
    for (const [kind, value] of [
      ['landmarkFill', 0.1],
      ['subjectView', 1],
      ['softness', 0.5],
      ['landmarkPlace', 0],
      ['landmarkShown', 0.1],
      ['parking', 900],
    ] as const)
      expect(missing(kind, value, { wishes: {} })).toBeNull()
    expect(missing('subjectFill', 0.1)).toBeNull()
  })

  it('of fill or place is none where the landmark is not in the frame', () => {
    for (const landmark of [null, framing(0.6, 1, 0, 0.1)]) {
      expect(missing('landmarkFill', 0.25, { landmark })).toBeNull()
      expect(missing('landmarkPlace', 0.02, { landmark })).toBeNull()
      expect(missing('landmarkShown', 0.2, { landmark })).not.toBeNull()
    }
  })

  it('of the light asks for as many wishes as hold, and hurts by those that do not', () => {
    expect(nearLight({ value: 1, margin: -0.3, degree: 0.5 }, 3)).toEqual({
      of: 'light',
      now: 3,
      to: 1,
      end: null,
      pain: 2.3,
    })
    expect(nearLight({ value: 2, margin: -7, degree: 0.5 }, 3).pain).toBe(2)
  })
})
