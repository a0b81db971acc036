/** Which of the alignments found are listed: by moon, by sky, and by the hills before them. */
import { describe, expect, test } from 'vitest'
import type { Alignment } from '#core/light/alignment.ts'
import { FIRST_WISH, asWished } from '#renderer/page/days/alignment-wish.ts'

const ONE: Alignment = {
  instant: 0,
  separation: 0.1,
  azimuth: 90,
  altitude: 3,
  ground: null,
  unsure: null,
  lit: 0.4,
  waxing: true,
  sunAltitude: 3,
  sky: 'day',
  from: 0,
  until: 0,
}
const FOUND = (['clear', 'partly', 'behind', null] as const).map((ground) => ({ ...ONE, ground }))

describe('alignments behind hills', () => {
  test('are all listed while they are to be marked', () => {
    expect(asWished(FOUND, FIRST_WISH)).toEqual(FOUND)
  })

  test('are left out when wished so; what shows in part or is unknown stays', () => {
    const kept = asWished(FOUND, { ...FIRST_WISH, hills: 'left-out' })
    expect(kept.map(({ ground }) => ground)).toEqual(['clear', 'partly', null])
  })

  test('must fit moon and sky besides', () => {
    expect(asWished(FOUND, { ...FIRST_WISH, lit: 50 })).toEqual([])
    expect(asWished(FOUND, { ...FIRST_WISH, sky: 'night' })).toEqual([])
  })
})
