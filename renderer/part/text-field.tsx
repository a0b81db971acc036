/** Fields for words: one line, or several that save themselves when the typing pauses. */
import { useEffect, useId } from 'preact/hooks'
import { type Result, done, failed } from '#core/result.ts'
import { words } from '#renderer/words/en.ts'
import { draftKeys, useDraft } from './draft.ts'
import { Field } from './field.tsx'
import { NotSavedText } from './not-saved.tsx'

interface TextProps {
  readonly label: string
  readonly value: string
  readonly most: number
  readonly hint?: string
  readonly hideLabel?: boolean
  readonly placeholder?: string
  readonly onTake: (text: string) => void
}

function short(label: string, most: number, text: string): Result<string> {
  return text.length <= most ? done(text) : failed('too-long', words.shoot.field.tooLong(label, most, text.length))
}

export function TextField({ label, value, most, hint, hideLabel, placeholder, onTake }: TextProps) {
  const draft = useDraft(value, (text) => {
    const read = short(label, most, text.trim())
    if (read.ok && read.value !== value) onTake(read.value)
    return read
  })
  return (
    <Field
      label={label}
      draft={draft}
      hint={hint}
      width="wide"
      hideLabel={hideLabel === true}
      placeholder={placeholder}
    />
  )
}

/** Milliseconds without a key after which a longer text saves itself. */
const PAUSE = 1500

export function TextArea({ label, value, most, hint, onTake }: TextProps) {
  const id = useId()
  const draft = useDraft(value, (text) => {
    const read = short(label, most, text)
    if (read.ok) onTake(text)
    return read
  })
  const { open, take } = draft
  useEffect(() => {
    if (!open) return undefined
    const timer = setTimeout(take, PAUSE)
    return () => clearTimeout(timer)
  }, [open, take])
  const escape = draftKeys(draft)
  return (
    <div class="field field-wide">
      <label for={id}>{label}</label>
      <textarea
        id={id}
        rows={3}
        value={draft.text}
        data-draft={draft.open ? '' : undefined}
        aria-invalid={draft.refusal !== null || draft.unsaved !== null}
        aria-describedby={`${id}-refusal ${id}-unsaved`}
        onInput={(event) => draft.type(event.currentTarget.value)}
        onBlur={draft.take}
        onKeyDown={(event) => (event.key === 'Escape' ? escape(event) : undefined)}
      />
      {hint === undefined ? null : <p class="hint">{hint}</p>}
      <NotSavedText id={`${id}-unsaved`} label={label} draft={draft} />
      <p class="refusal" id={`${id}-refusal`} role="alert">
        {draft.refusal}
      </p>
    </div>
  )
}
