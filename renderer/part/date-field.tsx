/** A field for a date: typed in any usual form, or chosen from a calendar; one that cannot be is refused with a sentence and stays until fixed. */
import { useRef, useState } from 'preact/hooks'
import { type Result, done, failed } from '#core/result.ts'
import { dateText, parseDate } from '#core/time/date-text.ts'
import { dateWords as say } from '#renderer/words/en-date.ts'
import { useDraft } from './draft.ts'
import { Field } from './field.tsx'
import { focusGone } from './focus-gone.ts'
import { Icon } from './icon.tsx'
import { MonthCalendar } from './month-calendar.tsx'
import { useTryAgain } from './try-again.ts'

interface DateFieldProps {
  readonly label: string
  readonly hideLabel?: boolean
  /** YYYY-MM-DD; null where none is set. */
  readonly date: string | null
  /** The date to which one typed without its year lies nearest, and at which the calendar opens where none is set. */
  readonly near: string
  /** The date it is judged by: a refused one is tried again once that changes. */
  readonly by?: string
  /** Answers with the sentence why it is refused, or null when it is taken. */
  readonly onTake: (date: string) => string | null
  /** Where there may be none. */
  readonly onEmpty?: () => void
}

export function DateField({ label, hideLabel = false, date, near, by, onTake, onEmpty }: DateFieldProps) {
  const shown = date === null ? '' : dateText(date)
  const draft = useDraft(shown, (text): Result<string | null> => {
    if (onEmpty !== undefined && text.trim() === '') {
      onEmpty()
      return done(null)
    }
    const read = parseDate(text, near)
    if (!read.ok || read.value === date) return read
    const why = onTake(read.value)
    return why === null ? read : failed('refused', why)
  })
  useTryAgain(draft, shown, by === undefined ? undefined : { by })
  const button = useRef<HTMLButtonElement>(null)
  const [open, setOpen] = useState(false)
  const leave = (event: FocusEvent): void => {
    if (focusGone(event)) setOpen(false)
  }
  const close = (): void => {
    setOpen(false)
    button.current?.focus()
  }
  const onKey = (event: KeyboardEvent): void => {
    if (open || event.key !== 'ArrowDown' || !event.altKey) return
    event.preventDefault()
    setOpen(true)
  }
  return (
    <div class="date-field" onFocusOut={leave} onKeyDown={onKey}>
      <Field label={label} draft={draft} width="date" hideLabel={hideLabel} placeholder={say.empty} title={say.hint}>
        <button
          ref={button}
          type="button"
          class="icon-button"
          aria-label={say.pick(label)}
          title={say.pickHint}
          aria-haspopup="dialog"
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          <Icon name="calendar" />
        </button>
        {open ? (
          <MonthCalendar
            label={label}
            date={date}
            near={near}
            beside={button}
            onClose={close}
            onChoose={(chosen) => {
              close()
              draft.type(dateText(chosen))
              draft.take()
            }}
          />
        ) : null}
      </Field>
    </div>
  )
}
