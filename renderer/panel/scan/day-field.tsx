/** A day by the calendar, typed or chosen; one that cannot be is refused with a sentence and stays until mended. */
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { scanWishWords } from '#renderer/words/en-scan-wishes.ts'
import { useUnfinished } from '#renderer/part/use-unfinished.ts'
import { FIRST_DATE, LAST_DATE } from '#core/time/civil.ts'

const { days: say } = scanWishWords

interface DayFieldProps {
  readonly label: string
  /** YYYY-MM-DD. */
  readonly day: string
  /** The day it is judged by: a refused one is tried again once that changes. */
  readonly by: string
  /** Answers with the sentence why it is refused, or null when it is taken. */
  readonly onTake: (day: string) => string | null
}

export function DayField({ label, day, by, onTake }: DayFieldProps) {
  const id = useId()
  const inputRef = useRef<HTMLInputElement>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [typing, setTyping] = useState(false)
  const giveUp = (): void => {
    setRefusal(null)
    setTyping(false)
    if (inputRef.current !== null) inputRef.current.value = day
  }
  // The record may change while nothing is typed, and then the field follows.
  useLayoutEffect(giveUp, [day])
  /** Whether there is nothing left to take. */
  const take = (): boolean => {
    const field = inputRef.current
    if (field === null || (field.value === day && !field.validity.badInput)) {
      giveUp()
      return true
    }
    setTyping(false)
    const { value } = field
    const within = value >= FIRST_DATE && value <= LAST_DATE
    const why = value === '' ? say.none : within ? onTake(value) : say.years
    setRefusal(why)
    return why === null
  }
  // Of two days that belong together either may be typed first; nothing but the other day tries it again.
  useLayoutEffect(() => {
    if (refusal !== null) take()
    // Only the other day's change is a reason.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [by])
  // Nothing typed is lost with the window, or by what is done meanwhile.
  useUnfinished(typing || refusal !== null, take)
  return (
    <div class="field day-field">
      <label for={id}>{label}</label>
      <input
        ref={inputRef}
        id={id}
        type="date"
        min={FIRST_DATE}
        max={LAST_DATE}
        required
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        data-draft={typing || refusal !== null ? '' : undefined}
        onInput={() => setTyping(true)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
          else if (event.key === 'Escape' && (typing || refusal !== null)) {
            event.stopPropagation()
            giveUp()
          }
        }}
        onBlur={take}
      />
      <p class="refusal" id={`${id}-refusal`} role="alert">
        {refusal}
      </p>
    </div>
  )
}
