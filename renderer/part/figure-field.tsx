/** Fields for figures: plain numbers with a unit, and lengths in metres or feet; each keeps the last good value. */
import { type Result, done, failed } from '#core/result.ts'
import { parseFigure } from '#core/units/figure.ts'
import { parseLength } from '#core/units/length.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { useDraft } from './draft.ts'
import { Field } from './field.tsx'
import { lengthInField, lengthUnit, plainNumber } from '#renderer/text/figure.ts'
import { type Limits, withinLimits } from './limits.ts'
import { type JudgedWith, useTryAgain } from './try-again.ts'

interface Common {
  readonly label: string
  readonly limits: Limits
  readonly hint?: string | undefined
  readonly hideLabel?: boolean
  /** A further refusal that depends on other fields; null when the value is good. */
  readonly refuse?: (value: number) => string | null
  /** Given where `refuse` goes by figures of the same form: the entry waits for them. */
  readonly judged?: JudgedWith
}

interface Known extends Common {
  readonly value: number
  readonly onTake: (value: number) => void
}

/** A figure that may be unknown: an empty field means so. */
interface Unknowable extends Common {
  readonly value: number | null
  readonly onTakeUnknown: (value: number | null) => void
}

export type FigureFieldProps = (Known | Unknowable) & {
  readonly unit?: string
  readonly decimals?: number
  /** What stands before the figure, such as f/. */
  readonly sign?: string
  /** Text dropped before reading, such as f/ before an f-number. */
  readonly strip?: RegExp
}

interface Reading {
  readonly print: (value: number) => string
  readonly parse: (text: string) => Result<number>
  readonly unit: string | undefined
}

export function FigureField(props: FigureFieldProps) {
  const { decimals = 3, sign = '', strip, unit } = props
  return (
    <AnyFigure
      field={props}
      reading={{
        print: (value) => `${sign}${plainNumber(value, decimals)}`,
        parse: (text) => parseFigure(strip === undefined ? text : text.replace(strip, '')),
        unit,
      }}
    />
  )
}

export function LengthField(props: (Known | Unknowable) & { readonly decimals?: number }) {
  const { units } = settings.value
  return (
    <AnyFigure
      field={props}
      reading={{
        print: (value) => lengthInField(value, units, props.decimals),
        parse: (text) => parseLength(text, units),
        unit: lengthUnit(units),
      }}
    />
  )
}

function AnyFigure({ field, reading }: { field: Known | Unknowable; reading: Reading }) {
  const { label, limits, hint, hideLabel, value, refuse, judged } = field
  const { print, parse, unit } = reading
  const withUnit = (figure: number): string => (unit === undefined ? print(figure) : `${print(figure)} ${unit}`)
  const shown = value === null ? '' : print(value)
  const draft = useDraft(shown, (text) => {
    if ('onTakeUnknown' in field && text.trim() === '') {
      field.onTakeUnknown(null)
      return done(null)
    }
    const read = withinLimits(parse(text), label, limits, withUnit)
    if (!read.ok) return read
    const refusal = refuse?.(read.value) ?? null
    if (refusal !== null) return failed('refused', refusal)
    if ('onTakeUnknown' in field) field.onTakeUnknown(read.value)
    else field.onTake(read.value)
    return read
  })
  useTryAgain(draft, shown, judged)
  const still = words.shoot.field.still(value === null ? words.board.unknown : withUnit(value))
  return <Field label={label} draft={draft} unit={unit} hint={hint} still={still} hideLabel={hideLabel === true} />
}
