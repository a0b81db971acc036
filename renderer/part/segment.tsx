/** A choice of a few, shown side by side: radio buttons that look like one bar. */
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

interface SegmentProps<Value extends string> {
  readonly label: string
  readonly value: Value
  /** Value, the words or the drawing shown, and the words read out when those shown lean on the label before them. */
  readonly options: readonly (readonly [Value, ComponentChildren, string?])[]
  readonly onChoose: (value: Value) => void
  readonly showLabel?: boolean
}

export function Segment<Value extends string>({ label, value, options, onChoose, showLabel }: SegmentProps<Value>) {
  const name = useId()
  return (
    <fieldset class="segment">
      <legend class={showLabel === true ? '' : 'unseen'}>{label}</legend>
      <span class="segment-bar">
        {options.map(([option, text, spoken]) => (
          <label key={option} class={option === value ? 'on' : ''} title={spoken}>
            <input
              type="radio"
              name={name}
              value={option}
              checked={option === value}
              aria-label={spoken}
              onChange={() => onChoose(option)}
            />
            {text}
          </label>
        ))}
      </span>
    </fieldset>
  )
}
