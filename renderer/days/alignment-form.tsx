/** What is asked of alignments: which body, where on the landmark, how near, how long ahead, and what moon and sky. */
import type { Alignment, SkyLight } from '#core/light/alignment.ts'
import { WIDEST_TOLERANCE } from '#core/light/alignment-ask.ts'
import type { Body } from '#core/light/body.ts'
import type { TargetName } from '#core/plan/alignment-target.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { daysWords } from '#renderer/words/en-days.ts'

const { stands: say } = daysWords

export const SPANS = ['1', '2', '5', '10'] as const
export const SKY_WISHES = ['any', 'day', 'twilight', 'night'] as const

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
}

export const FIRST_WISH: AlignmentWish = { body: 'sun', where: 'top', tolerance: 0.5, span: '1', lit: 0, sky: 'any' }

const TOLERANCES = { least: 0, most: WIDEST_TOLERANCE, moreThanLeast: true } as const
const PERCENT = { least: 0, most: 100 } as const

function skyFits(wish: AlignmentWish['sky'], sky: SkyLight): boolean {
  if (wish === 'any') return true
  return wish === 'twilight' ? sky !== 'day' && sky !== 'night' : sky === wish
}

/** Those of the alignments found that have the moon and the sky wished. */
export function asWished(found: readonly Alignment[], wish: AlignmentWish): readonly Alignment[] {
  return found.filter(({ lit, sky }) => (lit === null || lit * 100 >= wish.lit) && skyFits(wish.sky, sky))
}

interface AlignmentFormProps {
  readonly wish: AlignmentWish
  /** Where on the landmark it can be asked for. */
  readonly names: readonly TargetName[]
  readonly onWish: (part: Partial<AlignmentWish>) => void
}

export function AlignmentForm({ wish, names, onWish }: AlignmentFormProps) {
  return (
    <div class="stands-form">
      <Segment
        label={say.body}
        showLabel
        value={wish.body}
        options={[
          ['sun', say.bodies.sun],
          ['moon', say.bodies.moon],
        ]}
        onChoose={(body) => onWish({ body })}
      />
      <Choice
        label={say.where}
        value={wish.where}
        options={names.map((name) => [name, say.wheres[name]] as const)}
        onChoose={(where) => onWish({ where })}
      />
      <FigureField
        label={say.tolerance}
        unit="°"
        decimals={2}
        strip={/°/u}
        value={wish.tolerance}
        limits={TOLERANCES}
        onTake={(tolerance) => onWish({ tolerance })}
      />
      <Choice
        label={say.span}
        value={wish.span}
        options={SPANS.map((span) => [span, span] as const)}
        onChoose={(span) => onWish({ span })}
      />
      {wish.body === 'moon' ? (
        <FigureField
          label={say.lit}
          unit="%"
          decimals={0}
          strip={/%/u}
          value={wish.lit}
          limits={PERCENT}
          onTake={(lit) => onWish({ lit })}
        />
      ) : null}
      <Choice
        label={say.sky}
        value={wish.sky}
        options={SKY_WISHES.map((sky) => [sky, say.skies[sky]] as const)}
        onChoose={(sky) => onWish({ sky })}
      />
    </div>
  )
}
