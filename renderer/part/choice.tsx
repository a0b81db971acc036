/** A choice of one among several in a drop-down list. */
import { useId } from 'preact/hooks'

interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly value: Value
  readonly options: readonly (readonly [Value, string])[]
  readonly onChoose: (value: Value) => void
  readonly hideLabel?: boolean
}

export function Choice<Value extends string>({ label, value, options, onChoose, hideLabel }: ChoiceProps<Value>) {
  const id = useId()
  return (
    <div class="field field-choice">
      <label for={id} class={hideLabel === true ? 'unseen' : ''}>
        {label}
      </label>
      <select id={id} value={value} onChange={(event) => onChoose(event.currentTarget.value as Value)}>
        {options.map(([option, text]) => (
          <option key={option} value={option} selected={option === value}>
            {text}
          </option>
        ))}
      </select>
    </div>
  )
}
