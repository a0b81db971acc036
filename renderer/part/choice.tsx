/** A choice of one among several in a drop-down list. */
import type { ComponentChildren } from 'preact'
import { useId, useMemo } from 'preact/hooks'

interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly value: Value
  readonly options: Options<Value>
  readonly onChoose: (value: Value) => void
  readonly hideLabel?: boolean
}

type Options<Value> = readonly (readonly [Value, string])[]

function optionsOf<Value extends string>(options: Options<Value>, value: Value): ComponentChildren {
  return options.map(([option, text]) => (
    <option key={option} value={option} selected={option === value}>
      {text}
    </option>
  ))
}

export function Choice<Value extends string>({ label, value, options, onChoose, hideLabel }: ChoiceProps<Value>) {
  const id = useId()
  // A list of lenses is long and seldom another: it is not made again for every figure beside it.
  const said = JSON.stringify(options)
  const list = useMemo(() => optionsOf(JSON.parse(said) as Options<Value>, value), [said, value])
  return (
    <div class="field field-choice">
      <label for={id} class={hideLabel === true ? 'unseen' : ''}>
        {label}
      </label>
      <select id={id} value={value} onChange={(event) => onChoose(event.currentTarget.value as Value)}>
        {list}
      </select>
    </div>
  )
}
