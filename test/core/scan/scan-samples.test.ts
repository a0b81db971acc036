/** Days and hours of a scan: which are tried, and how those outside the wished hours are sampled when nothing was found. */
import { describe, expect, it } from 'vitest'
import { NO_WISHES } from '#core/light/light-wish.ts'
import { daySamples, wishedDays } from '#core/scan/scan-samples.ts'
import { whyInstants } from '#core/scan/why-tries.ts'
import { MUST, requestOf } from '#test/help/scans.ts'

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
