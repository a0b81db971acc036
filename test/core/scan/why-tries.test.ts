/** What is looked at beyond the wishes when nothing was found, how it is thinned, and what is counted of it: figures by hand. */
import { describe, expect, it } from 'vitest'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { type ScanPlace, scanPlaces } from '#core/scan/scan-places.ts'
import { scanTable } from '#core/scan/scan-table.ts'
import { Tally, closer } from '#core/scan/why-tally.ts'
import { type Beyond, thinning, triesOf, whyInstants } from '#core/scan/why-tries.ts'
import { ZOOM } from '#test/help/plans.ts'
import { type AskParts, LONG_ZOOM, MUST, requestOf } from '#test/help/scans.ts'

/** The changes of one thing that are tried, each once. */
function beyondOf(of: Beyond['of'], parts: AskParts): { to: number; end: Beyond['end']; now: number; pain: number }[] {
  const found = triesOf(scanTable(requestOf(parts))).flatMap(({ beyond }) => (beyond?.of === of ? [beyond] : []))
  const each = new Map(found.map((beyond) => [`${beyond.end} ${beyond.to}`, beyond]))
  return [...each.values()].map(({ to, end, now, pain }) => ({ to, end, now, pain }))
}

describe('what is tried', () => {
  const fill = { subjectFill: { ...MUST, axis: 'width', least: 0.3, most: 0.5 } } as const

  it('begins with the scan’s own combinations, every one of them', () => {
    const table = scanTable(requestOf({ lenses: [ZOOM, LONG_ZOOM], wishes: fill, steps: { fills: 3 } }))
    const own = triesOf(table).filter(({ beyond }) => beyond === null)
    // Two lenses of two focal lengths each, three fills, two heights.
    expect(own).toHaveLength(4 * 3 * 2)
    expect(
      new Set(own.map(({ focal, share, lensHeight }) => `${focal.focalLength} ${focal.lens.id} ${share} ${lensHeight}`))
        .size,
    ).toBe(24)
    expect(own.every(({ table: its }) => its === table)).toBe(true)
    expect(triesOf(table).slice(0, 24)).toEqual(own)
  })

  it('of lenses is the longest made longer and the shortest wider, in whole millimetres', () => {
    const bag = { lenses: [LONG_ZOOM, { ...ZOOM, focalMin: 17 }] }
    expect(beyondOf('lens-long', bag).map(({ to, end, now }) => [now, to, end])).toEqual(
      [250, 300, 400, 600, 800].map((to) => [200, to, 'most']),
    )
    // 13.6, 11.05 and 8.5: downwards.
    expect(beyondOf('lens-short', bag).map(({ to, end, now }) => [now, to, end])).toEqual(
      [13, 11, 8].map((to) => [17, to, 'least']),
    )
    expect(beyondOf('lens-long', { lenses: [{ ...ZOOM, focalMax: 70.1 }] }).map(({ to }) => to)).toEqual([
      88, 106, 141, 211, 281,
    ])
    // Wider than 8 mm nothing is tried, and nothing without a lens.
    expect(beyondOf('lens-short', { lenses: [{ ...ZOOM, focalMin: 12 }] }).map(({ to }) => to)).toEqual([9])
    expect(beyondOf('lens-long', { lenses: [] })).toEqual([])
    // Twice as long hurts by four, half as wide as much.
    expect(beyondOf('lens-long', bag).find(({ to }) => to === 400)?.pain).toBeCloseTo(4, 12)
    expect(
      beyondOf('lens-short', { lenses: [{ ...ZOOM, focalMin: 24 }] }).find(({ to }) => to === 12)?.pain,
    ).toBeCloseTo(4, 12)
  })

  it('of a lens made longer is that lens at its new end', () => {
    const tries = triesOf(scanTable(requestOf({ lenses: [ZOOM, LONG_ZOOM] })))
    const longer = tries.find(({ beyond }) => beyond?.of === 'lens-long' && beyond.to === 400)
    expect(longer?.focal).toEqual({ lens: { ...LONG_ZOOM, focalMax: 400 }, focalLength: 400 })
    const wider = tries.find(({ beyond }) => beyond?.of === 'lens-short' && beyond.to === 12)
    expect(wider?.focal).toEqual({ lens: { ...ZOOM, focalMin: 12 }, focalLength: 12 })
  })

  it('of fills is beyond both ends, in whole hundredths within the frame, its band widened to it', () => {
    const parts = { wishes: fill }
    const half = 0.1
    expect(beyondOf('subjectFill', parts)).toEqual([
      { now: 0.3, to: 0.24, end: 'least', pain: expect.closeTo(0.06 / half, 9) },
      { now: 0.3, to: 0.18, end: 'least', pain: expect.closeTo(0.12 / half, 9) },
      { now: 0.3, to: 0.12, end: 'least', pain: expect.closeTo(0.18 / half, 9) },
      { now: 0.5, to: 0.63, end: 'most', pain: expect.closeTo(0.13 / half, 9) },
      { now: 0.5, to: 0.85, end: 'most', pain: expect.closeTo(0.35 / half, 9) },
    ])
    const tries = triesOf(scanTable(requestOf(parts))).filter(({ beyond }) => beyond?.of === 'subjectFill')
    for (const { share, beyond, table } of tries) {
      expect(share).toBe(beyond?.to)
      const { least, most } = table.wishes.subjectFill ?? { least: 0, most: 0 }
      expect([least, most]).toEqual(beyond?.end === 'least' ? [share, 0.5] : [0.3, share])
    }
    // Of a narrow band a twentieth counts as half; more than the frame and less than a hundredth are not tried.
    const narrow = { subjectFill: { ...MUST, axis: 'width', least: 0.9, most: 0.9 } } as const
    expect(beyondOf('subjectFill', { wishes: narrow }).map(({ to }) => to)).toEqual([0.72, 0.54, 0.36])
    expect(beyondOf('subjectFill', { wishes: narrow })[0]?.pain).toBeCloseTo(0.18 / 0.05, 9)
    const little = { subjectFill: { ...MUST, axis: 'width', least: 0.012, most: 0.5 } } as const
    expect(beyondOf('subjectFill', { wishes: little }).map(({ to }) => to)).toEqual([0.63, 0.85])
    expect(beyondOf('subjectFill', {})).toEqual([])
  })

  it('of heights is below and above, in tenths, no lower than a hand can hold and no higher than a pole', () => {
    const heights = (least: number, most: number) =>
      beyondOf('lens-height', { wishes: { lensHeight: { least, most } } })
    expect(heights(1.45, 1.8).map(({ to, end }) => [to, end])).toEqual([
      [1.2, 'least'],
      [2.1, 'most'],
      [0.5, 'least'],
      [2.8, 'most'],
      [3.8, 'most'],
    ])
    expect(heights(0.4, 4).map(({ to }) => to)).toEqual([4.3, 5])
    expect(heights(0.5, 4.8).map(({ to }) => to)).toEqual([0.2])
    expect(heights(1.45, 1.8).map(({ pain }) => pain)).toEqual(
      [0.45, 0.45, 1.5, 1.5, 3].map((pain) => expect.closeTo(pain, 12)),
    )
  })
})

describe('thinning', () => {
  const places = (count: number, headings: number): ScanPlace[] => {
    const [one] = scanPlaces(requestOf())
    if (one === undefined) throw new Error('the line has places')
    return Array.from({ length: count }, (_, index) => ({
      ...one,
      index,
      headings: Array.from({ length: headings }, () => 0),
    }))
  }
  // Two focal lengths, two heights, one fill, one placement: four on each way.
  const table = scanTable(requestOf())

  it('leaves a small problem whole', () => {
    const all = places(10, 2)
    expect(thinning(table, all, 36)).toEqual({ places: all, stride: 1 })
  })

  it('takes fewer places, and fewer ways only where too few places would be left', () => {
    // 36 ways x 2 headings x 4 are 288 looks at each place: 27 places are 7,776 looks, 28 are 8,064.
    const many = thinning(table, places(500, 2), 36)
    expect([many.places.length, many.stride]).toEqual([27, 1])
    expect([many.places[0]?.index, many.places.at(-1)?.index]).toEqual([0, 499])
    // 360 ways x 36 headings x 4 are 51,840 looks: eight places must do, and every 40th way leaves nine ways.
    const dear = thinning(table, places(500, 36), 360)
    expect([dear.places.length, dear.stride]).toEqual([8, 40])
    // 36 ways x 9 headings x 4 are 1,296: at eight places every second way is enough.
    const less = thinning(table, places(500, 9), 36)
    expect([less.places.length, less.stride]).toEqual([12, 2])
    expect(thinning(table, [], 36)).toEqual({ places: [], stride: 1 })
  })
})

describe('instants to tell why', () => {
  const shoot = { light: { ...NO_WISHES, subject: 'lit' } } as const

  it('are 64 where the light must be met, and a dozen where it need not', () => {
    for (const [must, count] of [
      [true, 64],
      [false, 12],
    ] as const) {
      const hours = { from: 480, until: 840 }
      const { instants, within } = whyInstants(
        requestOf({ shoot, wishes: { light: { ...MUST, must }, hours }, steps: { minutes: 5 } }),
      )
      expect(instants).toHaveLength(count)
      // Six hours of 24: a quarter.
      expect(within).toBe(count / 4)
      expect(new Set(instants).size).toBe(count)
    }
  })
})

describe('what is counted', () => {
  const beyond = (to: number, pain = 1, of: Beyond['of'] = 'subjectFill'): Beyond => ({
    of,
    now: 0.5,
    to,
    end: 'most',
    pain,
  })

  it('is by each reason, and by each alone', () => {
    const tally = new Tally()
    tally.looked = 9
    tally.exclude(['subjectFill', 'framing'], 3)
    tally.exclude(['framing'], 2)
    tally.exclude(['framing'], 4)
    const { looked, excluded } = tally.result(['subjectFill', 'light'])
    expect(looked).toBe(9)
    expect(excluded).toEqual([
      { by: 'subjectFill', count: 3, alone: 0 },
      { by: 'light', count: 0, alone: 0 },
      { by: 'keep-out', count: 0, alone: 0 },
      { by: 'lens', count: 0, alone: 0 },
      { by: 'closest-focus', count: 0, alone: 0 },
      { by: 'framing', count: 9, alone: 6 },
      { by: 'hours', count: 0, alone: 0 },
    ])
  })

  it('is the least change of each thing at each place', () => {
    const tally = new Tally()
    tally.miss(3, beyond(0.8))
    tally.miss(3, beyond(0.7, 5))
    tally.miss(3, beyond(0.9))
    tally.miss(4, beyond(0.95))
    tally.miss(3, beyond(0.6, 1, 'landmarkFill'))
    tally.miss(3, { ...beyond(0.1), end: 'least' })
    expect(tally.result([]).near).toEqual([
      { ...beyond(0.7, 5), place: 3 },
      { ...beyond(0.95), place: 4 },
      { ...beyond(0.6, 1, 'landmarkFill'), place: 3 },
      { ...beyond(0.1), end: 'least', place: 3 },
    ])
  })

  it('is closer by the smaller change, on either side, then by the smaller pain', () => {
    expect(closer(beyond(0.6), beyond(0.7))).toBe(true)
    expect(closer(beyond(0.7), beyond(0.6))).toBe(false)
    expect(closer(beyond(0.25), beyond(0.7))).toBe(false)
    expect(closer(beyond(0.7, 1), beyond(0.7, 2))).toBe(true)
    expect(closer(beyond(0.7, 2), beyond(0.7, 1))).toBe(false)
    expect(closer(beyond(0.7), beyond(0.7))).toBe(false)
    expect(closer(beyond(0.6, 9), beyond(0.7, 1))).toBe(true)
  })
})
