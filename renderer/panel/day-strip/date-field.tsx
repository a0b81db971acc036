/** The date as typed or taken from the calendar; a date that cannot be is refused with a sentence and stays until mended. */
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { day } from '#renderer/state/plan/daylight.ts'
import { stripWords } from '#renderer/words/en-day-strip.ts'
import { goToDate } from '#renderer/state/act/go-day.ts'
import { useUnfinished } from '#renderer/part/use-unfinished.ts'
import { FIRST_DATE, LAST_DATE } from '#core/time/civil.ts'

/** Keys that change a part of the date, after which more are to be expected. */
function typed({ key, altKey }: KeyboardEvent): boolean {
  return /^\d$/u.test(key) || key === 'Backspace' || key === 'Delete' || (!altKey && /^Arrow(?:Up|Down)$/u.test(key))
}

export function DateField() {
  const id = useId()
  const inputRef = useRef<HTMLInputElement>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [typing, setTyping] = useState(false)
  const date = day.value?.date ?? ''
  const giveUp = (): void => {
    setTyping(false)
    setRefusal(null)
    if (inputRef.current !== null) inputRef.current.value = date
  }
  /** Whether there is nothing left to take. */
  const take = (): boolean => {
    const field = inputRef.current
    if (field === null || (field.value === date && !field.validity.badInput)) {
      giveUp()
      return true
    }
    setTyping(false)
    const why = field.value === '' ? stripWords.noDate : goToDate(field.value)
    setRefusal(why)
    return why === null
  }
  // What is on the board may change while nothing is typed, and then the field follows; a refusal is of a date left behind.
  useLayoutEffect(giveUp, [date])
  // Nothing typed is lost with the window, or by what is done meanwhile.
  useUnfinished(typing || refusal !== null, take)
  return (
    <>
      <input
        ref={inputRef}
        class="strip-date"
        type="date"
        min={FIRST_DATE}
        max={LAST_DATE}
        required
        aria-label={stripWords.day}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : id}
        data-draft={typing || refusal !== null ? '' : undefined}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
          else if (event.key === 'Escape' && (typing || refusal !== null)) {
            event.stopPropagation()
            giveUp()
          } else if (typed(event)) {
            setTyping(true)
            setRefusal(null)
          }
        }}
        onChange={() => {
          // Typed figure by figure, each makes some date; taken from the calendar, it is meant.
          if (!typing) take()
        }}
        onBlur={() => {
          if (typing) take()
        }}
      />
      <p class="refusal strip-refusal" id={id} role="alert">
        {refusal}
      </p>
    </>
  )
}
