/** What a search for alignments may be asked: everything up to the very bounds, and beyond each of them a plain no of its own. */
import { describe, expect, it } from 'vitest'
import {
  type AlignmentRequest,
  EARLIEST,
  LATEST,
  LONGEST_SEARCH,
  WIDEST_TOLERANCE,
  checkedRequest,
} from '#core/light/alignment-request.ts'

const GOOD: AlignmentRequest = {
  at: { lat: 47, lon: 8 },
  body: 'sun',
  target: { bearing: 200, altitude: 10 },
  tolerance: 1,
  from: Date.UTC(2026, 0, 1),
  until: Date.UTC(2027, 0, 1),
}

const asked = (part: Partial<AlignmentRequest>): string => {
  const checked = checkedRequest({ ...GOOD, ...part })
  return checked.ok ? 'good' : checked.fault.reason
}

describe('a request', () => {
  it('that can be answered is given back as it is', () => {
    expect(checkedRequest(GOOD)).toEqual({ ok: true, value: GOOD })
  })

  it.each<[string, Partial<AlignmentRequest>, string]>([
    ['at the pole', { at: { lat: 90, lon: 0 } }, 'good'],
    ['beyond the pole', { at: { lat: 90.1, lon: 0 } }, 'no-place'],
    ['at no longitude', { at: { lat: 0, lon: Number.NaN } }, 'no-place'],
    ['straight up', { target: { bearing: 0, altitude: 90 } }, 'good'],
    ['straight down', { target: { bearing: 0, altitude: -90 } }, 'good'],
    ['higher than straight up', { target: { bearing: 0, altitude: 90.1 } }, 'no-direction'],
    ['lower than straight down', { target: { bearing: 0, altitude: -90.1 } }, 'no-direction'],
    ['at no altitude', { target: { bearing: 0, altitude: Number.NaN } }, 'no-direction'],
    ['at no bearing', { target: { bearing: Number.NaN, altitude: 0 } }, 'no-direction'],
    ['at an endless bearing', { target: { bearing: Infinity, altitude: 0 } }, 'no-direction'],
    ['within the widest tolerance', { tolerance: WIDEST_TOLERANCE }, 'good'],
    ['within more', { tolerance: WIDEST_TOLERANCE + 1e-9 }, 'tolerance'],
    ['within nothing', { tolerance: 0 }, 'tolerance'],
    ['within no number', { tolerance: Number.NaN }, 'tolerance'],
    ['from the first instant', { from: EARLIEST, until: EARLIEST + 1 }, 'good'],
    ['from before it', { from: EARLIEST - 1, until: EARLIEST + 1 }, 'no-dates'],
    ['until before it', { from: EARLIEST, until: EARLIEST - 1 }, 'no-dates'],
    ['until the last instant', { from: LATEST - 1, until: LATEST }, 'good'],
    ['until after it', { from: LATEST - 1, until: LATEST + 1 }, 'no-dates'],
    ['from the last on', { from: LATEST, until: LATEST }, 'no-dates'],
    ['from no date', { from: Number.NaN }, 'no-dates'],
    ['until no date', { until: Number.NaN }, 'no-dates'],
    ['for no time', { until: GOOD.from }, 'reversed'],
    ['for no time at the first instant', { from: EARLIEST, until: EARLIEST }, 'reversed'],
    ['backwards', { until: GOOD.from - 1 }, 'reversed'],
    ['for a millisecond', { until: GOOD.from + 1 }, 'good'],
    ['for the longest time', { until: GOOD.from + LONGEST_SEARCH }, 'good'],
    ['for longer', { until: GOOD.from + LONGEST_SEARCH + 1 }, 'too-long'],
  ])('%s', (_, part, answer) => {
    expect(asked(part)).toBe(answer)
  })

  it('may span ten years, whichever leap days lie in them', () => {
    for (let year = 1900; year <= 2090; year++)
      expect(Date.UTC(year + 10, 0, 1) - Date.UTC(year, 0, 1)).toBeLessThanOrEqual(LONGEST_SEARCH)
  })
})
