/** Two figures on one line, from the least to the most; one above the other is refused beside its field. */
import type { ComponentChildren } from 'preact'
import type { Band } from '#core/record/scan-wishes.ts'
import { FigureField, LengthField } from '#renderer/part/figure-field.tsx'
import type { Limits } from '#renderer/part/limits.ts'
import { scanWishWords as say } from '#renderer/words/en-scan-wishes.ts'

interface BandFieldsProps {
  readonly name: string
  readonly band: Band
  readonly limits: Limits
  readonly onTake: (part: Partial<Band>) => void
  /** Unit beside each figure; metres by the user's units when it is left out. */
  readonly unit?: '%' | '°'
  /** What stands in the field for one of the record: 100 where a share is shown as percent. */
  readonly scale?: number
  readonly children?: ComponentChildren
}

const SIGNS = /[%°]/u
/** Decimals of a field; what is typed finer is kept as typed. */
const DECIMALS = 2

export function BandFields({ name, band, limits, onTake, unit, scale = 1, children }: BandFieldsProps) {
  const field = (end: 'least' | 'most') => {
    const label = end === 'least' ? say.least(name) : say.most(name)
    const refuse = (value: number): string | null => {
      const next = { ...band, [end]: value / scale }
      return next.least <= next.most ? null : say.order(name)
    }
    const common = {
      label,
      hideLabel: true,
      value: band[end] * scale,
      limits,
      refuse,
      judged: { by: String(end === 'least' ? band.most : band.least) },
      onTake: (value: number): void => onTake({ [end]: value / scale }),
    }
    return unit === undefined ? (
      <LengthField {...common} />
    ) : (
      <FigureField {...common} unit={unit} decimals={DECIMALS} strip={SIGNS} />
    )
  }
  return (
    <div class="band-fields">
      <span aria-hidden="true">{say.from}</span>
      {field('least')}
      <span aria-hidden="true">{say.to}</span>
      {field('most')}
      {children}
    </div>
  )
}
