/** A field for a place typed in any usual form, with a preview of how it is read and a way to swap the two numbers. */
import { useState } from 'preact/hooks'
import { formatDms } from '#core/geo/coordinate-format.ts'
import { parseCoordinates } from '#core/geo/coordinate-text.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { done } from '#core/result.ts'
import { writtenPlace } from '#renderer/state/session/coordinate-form.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'
import { useDraft } from './draft.ts'
import { Field } from './field.tsx'
import { metres } from '#renderer/text/figure.ts'
import { Icon } from './icon.tsx'

interface CoordinateFieldProps {
  readonly label: string
  readonly value: LatLon | null
  /** A place nearby that completes short codes. */
  readonly near: LatLon | null
  readonly onTake: (at: LatLon) => void
  readonly hint?: string
  /** Sets the pointer to place this thing on the map. */
  readonly onPlace?: (() => void) | undefined
}

export function CoordinateField({ label, value, near, onTake, hint, onPlace }: CoordinateFieldProps) {
  // The other reading of what was taken last, offered until something else is typed.
  const [other, setOther] = useState<LatLon | null>(null)
  const draft = useDraft(value === null ? '' : writtenPlace(value), (text) => {
    if (text.trim() === '' && value === null) return done(null)
    const read = parseCoordinates(text, near)
    if (!read.ok) return read
    setOther(read.value.swapped)
    onTake(read.value.at)
    return read
  })
  const swap = (): void => {
    if (other === null) return
    onTake(other)
    setOther(value)
  }
  return (
    <div class="coordinate-field">
      <Field label={label} draft={draft} width="wide" hint={hint}>
        {onPlace === undefined ? null : (
          <button
            type="button"
            class="icon-button"
            aria-label={`${words.answers.where.placeOnMap}: ${label}`}
            title={words.answers.where.placeOnMap}
            onClick={onPlace}
          >
            <Icon name="map" />
          </button>
        )}
      </Field>
      <Preview text={draft.open ? draft.text : null} near={near} />
      {other === null || draft.open ? null : (
        <button type="button" class="button button-small" onClick={swap}>
          <Icon name="swap" /> {words.answers.where.swap}: {writtenPlace(other)}
        </button>
      )}
    </div>
  )
}

/** How the text would be read, said while it is typed. */
function Preview({ text, near }: { text: string | null; near: LatLon | null }) {
  const read = text === null ? null : parseCoordinates(text, near)
  const { where } = words.answers
  return (
    <p class="hint preview" aria-live="polite">
      {read?.ok === true ? (
        <>
          {where.reads(`${writtenPlace(read.value.at)} · ${formatDms(read.value.at)}`)}
          {read.value.square === null ? '' : `. ${where.square(metres(read.value.square, settings.value.units))}`}
        </>
      ) : null}
    </p>
  )
}
