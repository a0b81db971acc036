/** What is asked of alignments: which body, where on the landmark, how near, how long ahead, and what moon and sky. */
import { WIDEST_TOLERANCE } from '#core/light/alignment-request.ts'
import type { TargetName } from '#core/plan/alignment-target.ts'
import { Choice } from '#renderer/part/choice.tsx'
import { DegreesField } from '#renderer/part/degrees-field.tsx'
import { FigureField } from '#renderer/part/figure-field.tsx'
import { Segment } from '#renderer/part/segment.tsx'
import { daysWords } from '#renderer/words/en-days.ts'
import { type AlignmentWish, HILL_WISHES, SKY_WISHES, SPANS } from './alignment-wish.ts'

const { stands: say } = daysWords

const TOLERANCES = { least: 0, most: WIDEST_TOLERANCE, moreThanLeast: true } as const
const PERCENT = { least: 0, most: 100 } as const

interface AlignmentFormProps {
  readonly wish: AlignmentWish
  /** Where on the landmark it can be asked for. */
  readonly names: readonly TargetName[]
  /** Whether hills are known. */
  readonly hills: boolean
  readonly onWish: (part: Partial<AlignmentWish>) => void
}

export function AlignmentForm({ wish, names, hills, onWish }: AlignmentFormProps) {
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
      <DegreesField
        label={say.tolerance}
        decimals={2}
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
      {hills ? (
        <Choice
          label={say.hills}
          value={wish.hills}
          options={HILL_WISHES.map((each) => [each, say.hillsWishes[each]] as const)}
          onChoose={(each) => onWish({ hills: each })}
        />
      ) : null}
    </div>
  )
}
