/** A labelled field for one line of figures or text: label, input, unit, hint, and the sentence for what it refuses. */
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { type Draft, draftKeys } from './draft.ts'
import { NotSavedText } from './not-saved.tsx'

interface FieldProps {
  readonly label: string
  readonly draft: Draft
  readonly unit?: string | undefined
  readonly hint?: string | undefined
  /** Added to the refusal: what the record still holds. */
  readonly still?: string | undefined
  readonly width?: 'figure' | 'wide' | 'date'
  readonly hideLabel?: boolean
  readonly placeholder?: string | undefined
  readonly title?: string | undefined
  readonly children?: ComponentChildren
}

export function Field(props: FieldProps) {
  const { label, draft, unit, hint, still, width = 'figure', hideLabel = false, placeholder, title, children } = props
  const id = useId()
  const refused = draft.refusal !== null
  const described = [
    refused ? `${id}-refusal` : '',
    draft.unsaved === null ? '' : `${id}-unsaved`,
    hint === undefined ? '' : `${id}-hint`,
  ].filter((part) => part !== '')
  return (
    <div class={`field field-${width}`}>
      <label for={id} class={hideLabel ? 'unseen' : ''}>
        {label}
        {unit === undefined ? null : <span class="unseen">, {unit}</span>}
      </label>
      <span class="field-box">
        <input
          id={id}
          type="text"
          autocomplete="off"
          spellcheck={false}
          inputMode={width === 'figure' ? 'decimal' : 'text'}
          value={draft.text}
          placeholder={placeholder}
          title={title}
          data-draft={draft.open ? '' : undefined}
          aria-invalid={refused || draft.unsaved !== null}
          aria-describedby={described.length > 0 ? described.join(' ') : undefined}
          onInput={(event) => draft.type(event.currentTarget.value)}
          onBlur={draft.take}
          onKeyDown={draftKeys(draft)}
        />
        {unit === undefined ? null : (
          <span class="unit" aria-hidden="true">
            {unit}
          </span>
        )}
        {children}
      </span>
      {hint === undefined ? null : (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <NotSavedText id={`${id}-unsaved`} label={label} draft={draft} />
      <p class="refusal" id={`${id}-refusal`} role="alert">
        {refused ? [draft.refusal, still].filter((part) => part !== undefined && part !== '').join(' ') : null}
      </p>
    </div>
  )
}
