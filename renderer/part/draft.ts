/** A field's draft: what is being typed until it is taken, refused with a sentence, or given up; and what was taken but could not be saved. */
// oxlint-disable react/immutability -- what is typed has to be known before it is drawn, so it is kept beside the drawings
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Result } from '#core/result.ts'
import { type Refusal, isUndecided, letRefusalGo } from '#renderer/state/library/refusals.ts'
import { type TextSource, takenFrom } from '#renderer/state/library/taken-from.ts'
import { begun } from '#renderer/state/library/unfinished.ts'

export interface Draft {
  /** What the field shows. */
  readonly text: string
  /** The sentence why the text was not taken; null while there is nothing to say. */
  readonly refusal: string | null
  /** True while the field holds something else than the record. */
  readonly open: boolean
  /** What stood against saving the text that stands in the field again; null while nothing does. */
  readonly unsaved: Refusal | null
  /** What the record holds meanwhile. */
  readonly saved: string
  readonly type: (text: string) => void
  /** Takes the text if it can be; a refused one stays in the field beside its sentence. */
  readonly take: () => void
  readonly giveUp: () => void
  /** Saves a text that could not be saved, as it stands in the field by now. */
  readonly saveAgain: () => void
}

/** What a field holds between two drawings: known at the moment of typing, not only once it is drawn. */
interface Held {
  text: string | null
  /** As it was taken last. */
  taken: string
  refusal: Refusal | null
  /** Takes it out of what is begun. */
  forget: () => void
}

/**
 * `take` is called with the text of a finished entry and answers whether it was good. The record keeps its last good value
 * until then. An entry under way is taken when the page is left, so that nothing typed is lost with the window.
 */
export function useDraft(shown: string, take: (text: string) => Result<unknown>): Draft {
  const [, draw] = useState({})
  const [refusal, setRefusal] = useState<string | null>(null)
  const held = useRef<Held>({ text: null, taken: '', refusal: null, forget: () => {} }).current
  // What is asked outside of a drawing goes by the last one.
  const latest = useRef({ shown, take })
  latest.current = { shown, take }

  function giveUp(): void {
    held.forget()
    Object.assign(held, { text: null, refusal: null, forget: () => {} })
    setRefusal(null)
    draw({})
  }
  function takeNow(): void {
    const { text } = held
    if (text === null || text === latest.current.shown) return giveUp()
    held.taken = text
    const taken = takenFrom(source, () => latest.current.take(text))
    if (taken.ok) giveUp()
    else setRefusal(taken.fault.message)
  }
  function finish(): void {
    // What could not be saved waits for the user's word: nothing is written over another window's change by leaving a field.
    if (held.refusal === null) takeNow()
  }
  const source = useRef<TextSource>({
    refused: (refused) => {
      // Typed on meanwhile, the field goes on with that.
      if (held.text === null) {
        held.text = held.taken
        held.refusal = refused
      }
      draw({})
    },
  }).current
  useEffect(() => () => held.forget(), [held])

  const { text, refusal: refused } = held
  const unsaved = refused !== null && isUndecided(refused) ? refused : null
  // Decided elsewhere: the field shows the record again.
  const gone = refused !== null && unsaved === null && text === held.taken
  // Typed on before that, its text is an entry like any other.
  if (refused !== null && unsaved === null && !gone) held.refusal = null
  useEffect(() => {
    if (gone && held.refusal === refused) giveUp()
  })
  return {
    text: gone ? shown : (text ?? shown),
    refusal,
    open: text !== null && !gone,
    unsaved,
    saved: shown,
    type: (typed) => {
      held.text = typed
      held.forget()
      held.forget = begun(finish)
      setRefusal(null)
      draw({})
    },
    take: finish,
    giveUp: () => {
      if (held.refusal !== null) letRefusalGo(held.refusal)
      giveUp()
    },
    saveAgain: () => {
      if (held.refusal !== null) letRefusalGo(held.refusal)
      held.refusal = null
      takeNow()
    },
  }
}

/** Enter takes the entry, Escape brings back what the record holds. */
export function draftKeys(draft: Draft): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.key === 'Enter' && !event.isComposing) {
      event.preventDefault()
      if (draft.unsaved === null) draft.take()
      else draft.saveAgain()
    } else if (event.key === 'Escape' && draft.open) {
      event.stopPropagation()
      draft.giveUp()
    }
  }
}
