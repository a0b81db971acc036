/** One demand of a scan: off, a wish or a must; while it is made, how much it counts and what it asks. */
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import type { ScanWishKind, ScanWishes } from '#core/record/scan-wishes.ts'
import { Segment } from '#renderer/part/segment.tsx'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'
import { DEMAND_START, type DemandOf } from './demand-start.ts'

const LEVELS = ['off', 'wish', 'must'] as const
const WEIGHTS = [1, 2, 3, 4, 5] as const

export interface RowContext {
  readonly wishes: ScanWishes
  readonly names: Readonly<Record<ScanWishKind, string>>
  /** Saves a part of the wishes; the name is that of what was changed. */
  readonly onWish: (name: string, part: Partial<ScanWishes>) => void
}

interface DemandRowProps<Kind extends ScanWishKind> extends RowContext {
  readonly kind: Kind
  readonly children?: (demand: DemandOf<Kind>, change: (part: Partial<DemandOf<Kind>>) => void) => ComponentChildren
}

export function DemandRow<Kind extends ScanWishKind>(props: DemandRowProps<Kind>) {
  const { kind, wishes, names, onWish, children } = props
  const demand = wishes[kind] as DemandOf<Kind> | null
  // Switched off and on again it is as it was.
  const lastRef = useRef(demand)
  useEffect(() => {
    if (demand !== null) lastRef.current = demand
  }, [demand])
  const name = names[kind]
  const save = (next: DemandOf<Kind> | null): void => onWish(name, { [kind]: next })
  const level = demand === null ? 'off' : demand.must ? 'must' : 'wish'
  return (
    <section class={demand === null ? 'demand' : 'demand demand-made'} aria-label={name}>
      <div class="demand-head">
        <span class="demand-name">{name}</span>
        {demand === null ? null : (
          <Weight name={name} weight={demand.weight} onChoose={(weight) => save({ ...demand, weight })} />
        )}
        <Segment
          label={say.level(name)}
          value={level}
          options={LEVELS.map((option) => [option, say.levels[option], say.spokenLevels[option]] as const)}
          onChoose={(chosen) => {
            const start = lastRef.current ?? DEMAND_START[kind]
            save(chosen === 'off' ? null : { ...start, must: chosen === 'must' })
          }}
        />
      </div>
      {demand === null || children === undefined ? null : (
        <div class="demand-body">{children(demand, (part) => save({ ...demand, ...part }))}</div>
      )}
    </section>
  )
}

interface WeightProps {
  readonly name: string
  readonly weight: number
  readonly onChoose: (weight: number) => void
}

/** Five dots, filled up to how much it counts. */
function Weight({ name, weight, onChoose }: WeightProps) {
  const group = useId()
  return (
    <fieldset class="demand-weight">
      <legend class="unseen">{say.weight(name)}</legend>
      <span class="demand-dots">
        {WEIGHTS.map((option) => (
          <label key={option} class={option <= weight ? 'on' : ''} title={say.weights[option - 1]}>
            <input
              type="radio"
              name={group}
              checked={option === Math.round(weight)}
              aria-label={say.weights[option - 1]}
              onChange={() => onChoose(option)}
            />
          </label>
        ))}
      </span>
    </fieldset>
  )
}
