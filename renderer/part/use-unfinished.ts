/** A field with an entry of its own kind, told to whatever acts on more than the field: it is taken first, or stays and is known as unfinished. */
import { useEffect } from 'preact/hooks'
import { beginUnfinished } from '#renderer/state/library/unfinished.ts'

/** `end` takes the entry, and answers whether it could. */
export function useUnfinished(isOpen: boolean, end: () => boolean): void {
  useEffect(() => {
    if (!isOpen) return undefined
    const forget = beginUnfinished(() => {
      if (end()) forget()
    })
    return forget
  })
}
