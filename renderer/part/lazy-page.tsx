/** A page whose code is fetched when it is first opened, so that the board comes up sooner. */
import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { tell } from '#renderer/state/library/notices.ts'
import { words } from '#renderer/words/en.ts'

interface LazyPageProps<Parts> {
  readonly load: () => Promise<ComponentType<Parts>>
  /** What was loaded before: drawn at once then. */
  readonly known?: ComponentType<Parts> | null
  readonly parts: Parts
  /** True for a part of a page, which waits without being a page's main part itself. */
  readonly within?: boolean
}

export function LazyPage<Parts extends object>({ load, known = null, parts, within = false }: LazyPageProps<Parts>) {
  const [Loaded, setLoaded] = useState<ComponentType<Parts> | null>(() => known)
  useEffect(() => {
    if (Loaded !== null) return undefined
    let wanted = true
    load().then(
      (component) => {
        if (wanted) setLoaded(() => component)
      },
      () => tell('fault', words.board.notLoaded),
    )
    return () => {
      wanted = false
    }
    // The page is loaded once; the function that loads it is new with every drawing.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [])
  if (Loaded !== null) return <Loaded {...parts} />
  return within ? <div class="part-awaited" aria-busy="true" /> : <main class="page" aria-busy="true" />
}
