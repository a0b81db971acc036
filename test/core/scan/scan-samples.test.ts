/** Days and hours of a scan: which are tried, and how those outside the wished hours are sampled when nothing was found. */
import { describe, expect, it } from 'vitest'
import { NO_WISHES } from '#core/light/light-wish.ts'
import {
  daySamples,
  fillSamples,
  focalSamples,
  heightSamples,
  instantSamples,
  placementSamples,
  wishedDays,
} from '#core/scan/scan-samples.ts'
import { everyFew, whyInstants } from '#core/scan/why-tries.ts'
import { MUST, requestOf } from '#test/help/scans.ts'
import { ZOOM } from '#test/help/plans.ts'

describe('the days of a scan', () => {
  it.each([
    ['four weeks', '2026-06-01', '2026-06-28', 28, 12],
    ['a week', '2026-06-01', '2026-06-07', 7, 7],
    ['one day', '2026-06-01', '2026-06-01', 1, 1],
    ['a leap year', '2028-01-01', '2028-12-31', 366, 12],
  ])('%s are as many as the calendar has, the first and last tried', (_, from, until, wished, tried) => {
    const request = requestOf({ wishes: { days: { from, until } }, steps: { days: 12 } })
    expect(wishedDays(request)).toBe(wished)
    const dates = daySamples(request).map(({ date }) => date)
    expect(dates).toHaveLength(tried)
    expect([dates[0], dates.at(-1)]).toEqual([from, until])
  })
})

describe('what is tried at every place', () => {
  it('of heights and fills is evenly over the band, its ends to the last digit', () => {
    const heights = heightSamples({ lensHeight: { least: 0.3, most: 1.7 } }, 3)
    expect(heights).toEqual([0.3, expect.closeTo(1, 12), 1.7])
    expect(heightSamples({ lensHeight: { least: 0.1, most: 0.7 } }, 7).at(-1)).toBe(0.7)
    // Both ends whatever the count, and one for a band of one value.
    expect(heightSamples({ lensHeight: { least: 0.3, most: 1.7 } }, 1)).toEqual([0.3, 1.7])
    expect(heightSamples({ lensHeight: { least: 1.2, most: 1.2 } }, 5)).toEqual([1.2])
    const wished = { subjectFill: { ...MUST, axis: 'height', least: 0.2, most: 0.6 } } as const
    expect(fillSamples(requestOf({ wishes: wished, steps: { fills: 3 } }))).toEqual(
      [0.2, 0.4, 0.6].map((share) => ({ share: expect.closeTo(share, 12), axis: 'height' })),
    )
  })

  it('of fills is the shot’s own where none is wished', () => {
    const request = requestOf({ shot: { subjectFill: { share: 0.37, axis: 'height' } } })
    expect(fillSamples(request)).toEqual([{ share: 0.37, axis: 'height' }])
  })

  it('of focal lengths is evenly by ratio over each lens by itself', () => {
    const prime = { ...ZOOM, id: 'prime', focalMin: 35, focalMax: 35 }
    const double = { ...ZOOM, id: 'double', focalMin: 50, focalMax: 200 }
    const found = focalSamples([prime, double], 3)
    expect(found.map(({ lens, focalLength }) => [lens.id, focalLength])).toEqual([
      ['prime', 35],
      ['double', 50],
      ['double', expect.closeTo(100, 9)],
      ['double', 200],
    ])
  })

  it('of placements is the shot’s own, and thirds beside it where the landmark should stand beside', () => {
    const placements = (across: number, where: 'behind' | 'left' | 'right' | 'beside' | null) =>
      placementSamples(
        requestOf({
          shot: { placement: { across, up: 0.1 } },
          wishes: { landmarkPlace: where === null ? null : { ...MUST, where, gap: 0 } },
        }),
      )
    const own = { across: 0, up: 0.1 }
    expect(placements(0, null)).toEqual([own])
    expect(placements(0, 'behind')).toEqual([own])
    const thirds = [
      { across: -1 / 6, up: 0.1 },
      { across: 1 / 6, up: 0.1 },
    ]
    for (const where of ['left', 'right', 'beside'] as const) expect(placements(0, where)).toEqual([own, ...thirds])
    expect(placements(1 / 6, 'left')).toEqual([thirds[1], thirds[0]])
  })
})

describe('the instants tried', () => {
  const shoot = { light: { ...NO_WISHES, subject: 'lit' } } as const
  const light = { ...MUST }
  const day = Date.UTC(2026, 5, 13, 22)
  const minutesOf = (instants: readonly number[]) => instants.map((instant) => (instant - day) / 60_000)

  it('are the spot’s own while the light is of no account', () => {
    const request = requestOf()
    expect(instantSamples(request)).toEqual([request.spot.when])
    expect(instantSamples(requestOf({ wishes: { light } }))).toEqual([request.spot.when])
  })

  it('are all round the clock of the place, every so many minutes, of the spot’s own day', () => {
    // 14 June in central Europe: the day begins at 22:00 the evening before in Greenwich.
    const all = minutesOf(instantSamples(requestOf({ shoot, wishes: { light }, steps: { minutes: 240 } })))
    expect(all).toEqual([0, 240, 480, 720, 960, 1200])
  })

  it('are within the wished hours alone, their ends among them, unless all are asked for', () => {
    const request = requestOf({
      shoot,
      wishes: { light, hours: { from: 600, until: 840 } },
      steps: { minutes: 120 },
    })
    expect(minutesOf(instantSamples(request))).toEqual([600, 720, 840])
    expect(instantSamples(request, false)).toHaveLength(12)
  })

  it('are of no day twice: past midnight the day’s own two parts', () => {
    const request = requestOf({
      shoot,
      wishes: { light, hours: { from: 1320, until: 120 } },
      steps: { minutes: 60 },
    })
    expect(minutesOf(instantSamples(request))).toEqual([0, 60, 120, 1320, 1380])
  })

  it('are none of days that end before they begin', () => {
    const days = { from: '2026-06-10', until: '2026-06-09' }
    expect(instantSamples(requestOf({ shoot, wishes: { light, days } }))).toEqual([])
    expect(wishedDays(requestOf({ wishes: { days } }))).toBe(0)
    expect(wishedDays(requestOf({ wishes: { days: { from: '2026-06-10', until: '2026-06-01' } } }))).toBe(0)
    expect(wishedDays(requestOf())).toBe(1)
  })
})

describe('every few of a list', () => {
  it('are so many at most, in order, both ends among them', () => {
    const list = Array.from({ length: 10 }, (_, index) => index)
    expect(everyFew(list, 10)).toEqual(list)
    expect(everyFew(list, 4)).toEqual([0, 3, 6, 9])
    expect(everyFew(list, 2)).toEqual([0, 9])
    expect([everyFew(list, 1), everyFew(list, 0), everyFew(list, -1)]).toEqual([[0], [], []])
    expect(everyFew([], 3)).toEqual([])
  })
})

describe('instants looked at to tell why nothing was found', () => {
  const shoot = { light: { ...NO_WISHES, subject: 'lit' } } as const

  it.each([true, false])('lie outside the wished hours in their true part, light a must: %s', (must) => {
    // Six of 24 hours: a quarter.
    const request = requestOf({
      shoot,
      wishes: { light: { ...MUST, must }, hours: { from: 480, until: 840 } },
      steps: { minutes: 15 },
    })
    const { instants, within } = whyInstants(request)
    expect(within / instants.length).toBeGreaterThan(0.2)
    expect(within / instants.length).toBeLessThan(0.3)
  })

  it('are all within where no hours are wished', () => {
    const { instants, within } = whyInstants(
      requestOf({ shoot, wishes: { light: { ...MUST } }, steps: { minutes: 15 } }),
    )
    expect(within).toBe(instants.length)
    expect(within).toBeGreaterThan(10)
  })
})
