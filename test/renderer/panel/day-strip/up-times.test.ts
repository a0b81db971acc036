/** The sun behind the ground: when it is up and does not reach the subject. */
import { describe, expect, it } from 'vitest'
import { directText, hiddenSpans } from '#renderer/panel/day-strip/up-times.ts'
describe('direct light over the ground', () => {
  const HOUR = 3_600_000
  const day = { date: '2026-06-14', start: 0, end: 24 * HOUR }
  const risings = { rise: [5 * HOUR], set: [20 * HOUR], state: 'rises-or-sets' } as const

  it('hides the sun between its rise and its first light, in a gap, and after its last', () => {
    const direct = [
      { from: 6 * HOUR, until: 12 * HOUR },
      { from: 13 * HOUR, until: 19 * HOUR },
    ]
    expect(hiddenSpans(risings, direct, day)).toEqual([
      { from: 5 * HOUR, until: 6 * HOUR },
      { from: 12 * HOUR, until: 13 * HOUR },
      { from: 19 * HOUR, until: 20 * HOUR },
    ])
    expect(directText(risings, direct, day, 'UTC')).toBe('reaches the subject 06:00–12:00, 13:00–19:00')
  })

  it('names minutes at which it holds, as the answers and the sheet do', () => {
    const direct = [{ from: 6 * HOUR + 20_000, until: 19 * HOUR - 20_000 }]
    expect(directText(risings, direct, day, 'UTC')).toBe('reaches the subject 06:01–18:59')
  })

  it('says nothing where the ground takes nothing away, or is unknown', () => {
    expect(directText(risings, [{ from: 4 * HOUR, until: 21 * HOUR }], day, 'UTC')).toBeNull()
    expect(directText(risings, null, day, 'UTC')).toBeNull()
    expect(hiddenSpans(risings, null, day)).toEqual([])
  })

  it('says that the subject gets none all day', () => {
    expect(hiddenSpans(risings, [], day)).toEqual([{ from: 5 * HOUR, until: 20 * HOUR }])
    expect(directText(risings, [], day, 'UTC')).toBe('never reaches the subject')
  })
})
