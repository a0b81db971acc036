/** The user's own map sources: a form that is saved whole or not at all, and the list with a way to remove each. */
import { useId, useState } from 'preact/hooks'
import type { Fault } from '#core/result.ts'
import { escapeEmpties, escapeStays } from '#renderer/part/draft.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { Fold } from '#renderer/part/question.tsx'
import { tell } from '#renderer/state/library/notices.ts'
import { changeSettings, settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { EMPTY_SOURCE, isBegun, type OwnSource, type OwnSourceTyped, readOwnSource } from './own-source.ts'

const MOST_SOURCES = 50

export function OwnSources({ onChanged }: { onChanged: () => void }) {
  const say = words.board.settingsPage
  const { ownSources, mapSource } = settings.value
  const put = async (next: readonly OwnSource[], source?: string): Promise<void> => {
    await changeSettings({ ownSources: [...next], ...(source === undefined ? {} : { mapSource: source }) })
    onChanged()
  }
  const remove = (gone: OwnSource): void => {
    const others = ownSources.filter((source) => source.id !== gone.id)
    void put(others, mapSource === gone.id ? 'sketch' : undefined)
    const back = (): void => void put(ownSources, mapSource)
    tell('done', say.ownRemoved(gone.name), { label: words.board.undo, run: back })
  }
  return (
    <fieldset class="sub-list">
      <legend>{say.own}</legend>
      {ownSources.map((source) => (
        <p class="own-source" key={source.id}>
          <span>
            {source.name} <small>{source.template}</small>
          </span>
          <button
            type="button"
            class="icon-button"
            aria-label={say.ownRemove(source.name)}
            onClick={() => remove(source)}
          >
            <Icon name="remove" />
          </button>
        </p>
      ))}
      {ownSources.length < MOST_SOURCES ? (
        <Fold title={say.ownAdd}>
          <OwnSourceForm onAdd={(source) => void put([...ownSources, source])} />
        </Fold>
      ) : null}
    </fieldset>
  )
}

function OwnSourceForm({ onAdd }: { onAdd: (source: OwnSource) => void }) {
  const say = words.board.settingsPage
  const [typed, setTyped] = useState<OwnSourceTyped>(EMPTY_SOURCE)
  const [fault, setFault] = useState<Fault<keyof OwnSourceTyped> | null>(null)
  const add = (event: Event): void => {
    event.preventDefault()
    const read = readOwnSource(typed, crypto.randomUUID())
    setFault(read.ok ? null : read.fault)
    if (!read.ok) return
    setTyped(EMPTY_SOURCE)
    onAdd(read.value)
  }
  const line = (name: keyof OwnSourceTyped, label: string, hint?: string) => (
    <FormLine
      label={label}
      hint={hint}
      value={typed[name]}
      usual={EMPTY_SOURCE[name]}
      refusal={fault?.reason === name ? fault.message : null}
      onType={(text) => setTyped({ ...typed, [name]: text })}
    />
  )
  return (
    <form onSubmit={add} onKeyDown={escapeStays(isBegun(typed))} noValidate>
      {line('name', say.ownName)}
      {line('template', say.ownTemplate, say.ownTemplateHint)}
      {line('maxNativeZoom', say.ownZoom)}
      {line('attribution', say.ownAttribution)}
      {line('attributionLink', say.ownAttributionLink)}
      <p class="hint">{say.ownTerms}</p>
      <button type="submit" class="button">
        <Icon name="add" /> {say.ownAdd}
      </button>
    </form>
  )
}

interface FormLineProps {
  readonly label: string
  readonly hint: string | undefined
  readonly value: string
  /** What the field begins with. */
  readonly usual: string
  readonly refusal: string | null
  readonly onType: (text: string) => void
}

function FormLine({ label, hint, value, usual, refusal, onType }: FormLineProps) {
  const id = useId()
  return (
    <div class="field field-wide">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={value}
        aria-invalid={refusal !== null}
        aria-describedby={`${id}-refusal`}
        onInput={(event) => onType(event.currentTarget.value)}
        onKeyDown={escapeEmpties(value, onType, usual)}
      />
      {hint === undefined ? null : <p class="hint">{hint}</p>}
      <p class="refusal" id={`${id}-refusal`} role="alert">
        {refusal}
      </p>
    </div>
  )
}
