/** A refused entry waits in its field: it is tried again once the figures it was judged by change, and is still there when its form comes back. */
import { useLayoutEffect, useRef } from 'preact/hooks'
import type { Draft } from './draft.ts'

/** What makes an entry wait for the others of its form. */
export interface JudgedWith {
  /** The other figures by which the field's own is judged, as they stand. */
  readonly by: string
  /** Names the field beyond its form's life, so that what waits in it is not lost with the form; left out, it is. */
  readonly field?: string
}

interface Waiting {
  readonly text: string
  readonly shown: string
}

/** Entries left waiting in fields that are not on the page. */
const left = new Map<string, Waiting>()

/**
 * Tries a refused entry again when what it is judged by has changed: of two ends that belong together either may be typed first.
 * An entry whose own figure has been changed elsewhere meanwhile is given up.
 */
export function useTryAgain(draft: Draft, shown: string, judged: JudgedWith | undefined): void {
  const latestRef = useRef(draft)
  const shownRef = useRef(shown)
  const byRef = useRef(judged?.by)
  const by = judged?.by
  const field = judged?.field
  useLayoutEffect(() => {
    latestRef.current = draft
  })
  useLayoutEffect(() => {
    const [shownBefore, byBefore] = [shownRef.current, byRef.current]
    shownRef.current = shown
    byRef.current = by
    const { refusal, giveUp } = latestRef.current
    if (by === undefined || refusal === null) return undefined
    if (shownBefore !== shown) {
      giveUp()
      return undefined
    }
    if (byBefore === by) return undefined
    // One after the other: each entry is judged by the form as the one before has left it.
    const timer = setTimeout(() => latestRef.current.take())
    return () => clearTimeout(timer)
  }, [shown, by])
  useLayoutEffect(() => {
    if (field === undefined) return undefined
    const kept = left.get(field)
    left.delete(field)
    let timer: ReturnType<typeof setTimeout> | undefined
    if (kept?.shown === shownRef.current) {
      latestRef.current.type(kept.text)
      timer = setTimeout(() => latestRef.current.take())
    }
    return () => {
      clearTimeout(timer)
      const { refusal, text } = latestRef.current
      if (refusal !== null) left.set(field, { text, shown: shownRef.current })
    }
  }, [field])
}
