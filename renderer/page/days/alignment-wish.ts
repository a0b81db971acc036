/** What is wished of alignments, and which of those found are as wished. */
import type { Alignment, SkyLight } from '#core/light/alignment.ts'
import type { Body } from '#core/light/body.ts'
import type { TargetName } from '#core/plan/alignment-target.ts'

export const SPANS = ['1', '2', '5', '10'] as const
export const SKY_WISHES = ['any', 'day', 'twilight', 'night'] as const

export const HILL_WISHES = ['marked', 'left-out'] as const

export interface AlignmentWish {
  readonly body: Body
  readonly where: TargetName
  /** Degrees. */
  readonly tolerance: number
  /** Years. */
  readonly span: (typeof SPANS)[number]
  /** Percent of the moon's disc. */
  readonly lit: number
  readonly sky: (typeof SKY_WISHES)[number]
  /** What becomes of those that hills hide. */
  readonly hills: (typeof HILL_WISHES)[number]
}

export const FIRST_WISH: AlignmentWish = {
  body: 'sun',
  where: 'top',
  tolerance: 0.5,
  span: '1',
  lit: 0,
  sky: 'any',
  hills: 'marked',
}

function skyFits(wish: AlignmentWish['sky'], sky: SkyLight): boolean {
  if (wish === 'any') return true
  return wish === 'twilight' ? sky !== 'day' && sky !== 'night' : sky === wish
}

/** Those of the alignments found that have the moon, the sky and the ground wished. */
export function asWished(found: readonly Alignment[], wish: AlignmentWish): readonly Alignment[] {
  return found.filter(
    ({ lit, sky, ground }) =>
      (lit === null || lit * 100 >= wish.lit) &&
      skyFits(wish.sky, sky) &&
      (wish.hills === 'marked' || ground !== 'behind'),
  )
}
