/** The quick entry of a lens: one line as photographers write it, read while it is typed, added by Enter and told. */
import { useId, useRef, useState } from 'preact/hooks'
import type { Lens } from '#core/optics/lens.ts'
import { type WrittenLens, readLens } from '#core/optics/written-lens.ts'
import { lensAsWritten } from '#core/record/new-records.ts'
import { escapeEmpties } from '#renderer/part/draft.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { settings } from '#renderer/state/library/settings.ts'
import { lensEntry, typeLens } from '#renderer/state/session/lens-entry.ts'
import { aperture, metres } from '#renderer/text/figure.ts'
import { focalRange, lensRange } from '#renderer/text/names.ts'
import { formWords } from '#renderer/words/en-forms.ts'

const say = formWords.lens

/** How the line is read so far; null while it is no lens yet. */
function readingOf(text: string): string | null {
  const read = readLens(text)
  if (!read.ok) return null
  const lens = lensAsWritten('', read.value)
  return read.value.widest === null
    ? say.readsFocal(focalRange(lens), aperture(lens.widestAtMin))
    : say.reads(lensRange(lens))
}

function addedText(lens: Lens, { widest }: WrittenLens): string {
  const closest = metres(lens.closestFocus, settings.value.units)
  return (widest === null ? say.addedFocal : say.added)(lensRange(lens), closest)
}

interface LensEntryProps {
  readonly shootId: string
  /** The sentence why there is no room for another; null where there is. */
  readonly full: string | null
  readonly onAdd: (lens: Lens) => void
}

export function LensEntry({ shootId, full, onAdd }: LensEntryProps) {
  const id = useId()
  const inputRef = useRef<HTMLInputElement>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [added, setAdded] = useState<string | null>(null)
  const text = lensEntry(shootId)
  const type = (typed: string): void => {
    setRefusal(null)
    setAdded(null)
    typeLens(shootId, typed)
  }
  const add = (): void => {
    inputRef.current?.focus()
    if (text.trim() === '') return
    const read = readLens(text)
    if (!read.ok || full !== null) return setRefusal(read.ok ? full : read.fault.message)
    const lens = lensAsWritten(crypto.randomUUID(), read.value)
    onAdd(lens)
    type('')
    setAdded(addedText(lens, read.value))
  }
  return (
    <div class="field field-wide lens-entry">
      <label for={id}>{say.label}</label>
      <span class="field-box">
        <input
          ref={inputRef}
          id={id}
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          placeholder="70-200/2.8"
          value={text}
          data-draft={text === '' ? undefined : ''}
          aria-invalid={refusal !== null}
          aria-describedby={`${id}-refusal ${id}-hint`}
          onInput={(event) => type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && !event.isComposing) {
              event.preventDefault()
              add()
            } else escapeEmpties(text, type)(event)
          }}
        />
        <button type="button" class="button" aria-label={say.label} onClick={add}>
          <Icon name="add" /> {say.add}
        </button>
      </span>
      <p class="hint" id={`${id}-hint`} role="status">
        {refusal === null ? (added ?? readingOf(text) ?? say.hint) : null}
      </p>
      <p class="refusal" id={`${id}-refusal`} role="alert">
        {refusal}
      </p>
    </div>
  )
}
