/** A field's draft as it is drawn: what is being typed until it is taken, refused or given up; and what was taken but could not be saved. */
import { useEffect, useState } from 'preact/hooks'
import type { Refusal } from '#renderer/state/library/refusals.ts'
import { Entry, type Take } from './entry.ts'

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

/**
 * `take` is called with the text of a finished entry and answers whether it was good. The record keeps its last good value
 * until then. An entry under way is taken when the page is left, so that nothing typed is lost with the window.
 */
export function useDraft(shown: string, take: Take): Draft {
  const [entry] = useState(() => new Entry())
  entry.follow(shown, take)
  useEffect(() => () => entry.forget(), [entry])
  const text = entry.text()
  return {
    text: text ?? shown,
    refusal: entry.sentence(),
    open: text !== null,
    unsaved: entry.unsaved(),
    saved: shown,
    type: (typed) => entry.type(typed),
    take: () => entry.finish(),
    giveUp: () => entry.giveUp(),
    saveAgain: () => entry.saveAgain(),
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

/** Of a field that no record stands behind: Escape empties it, or brings back what it begins with. */
export function escapeEmpties(
  text: string,
  onType: (text: string) => void,
  usual = '',
): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.key !== 'Escape' || text === usual) return
    event.stopPropagation()
    onType(usual)
  }
}

/** Of a form that no record stands behind: while anything is typed in it Escape does not lead away, since that would be lost. */
export function escapeStays(typed: boolean): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.key === 'Escape' && typed) event.stopPropagation()
  }
}
