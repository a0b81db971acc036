/** A field's draft: what is being typed until it is taken, refused with a sentence, or given up. */
import { useEffect, useState } from 'preact/hooks'
import type { Result } from '#core/result.ts'

export interface Draft {
  /** What the field shows. */
  readonly text: string
  /** The sentence why the text was not taken; null while there is nothing to say. */
  readonly refusal: string | null
  /** True while the field holds something else than the record. */
  readonly open: boolean
  readonly type: (text: string) => void
  /** Takes the text if it can be; a refused one stays in the field beside its sentence. */
  readonly take: () => void
  readonly giveUp: () => void
}

/**
 * `take` is called with the text of a finished entry and answers whether it was good. The record keeps its last good value
 * until then. An entry under way is taken when the page is hidden, so that nothing typed is lost with the window.
 */
export function useDraft(shown: string, take: (text: string) => Result<unknown>): Draft {
  const [draft, setDraft] = useState<string | null>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const finish = (): void => {
    if (draft === null || draft === shown) return giveUp()
    const taken = take(draft)
    if (taken.ok) return giveUp()
    setRefusal(taken.fault.message)
  }
  const giveUp = (): void => {
    setDraft(null)
    setRefusal(null)
  }
  useEffect(() => {
    addEventListener('pagehide', finish)
    return () => removeEventListener('pagehide', finish)
  })
  return {
    text: draft ?? shown,
    refusal,
    open: draft !== null,
    type: (text) => {
      setDraft(text)
      setRefusal(null)
    },
    take: finish,
    giveUp,
  }
}

/** Enter takes the entry, Escape brings back what the record holds. */
export function draftKeys(draft: Draft): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.key === 'Enter' && !event.isComposing) {
      event.preventDefault()
      draft.take()
    } else if (event.key === 'Escape' && draft.open) {
      event.stopPropagation()
      draft.giveUp()
    }
  }
}
