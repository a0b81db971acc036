/** The window: the header, the page that is open, the messages; or the page of trouble when the library doesn't open. */
import { pageRow } from './pages.tsx'
import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Guarded } from '#renderer/part/guarded.tsx'
import { NoticeArea } from './notice-area.tsx'
import { type Trouble, TroublePage, BackupsPage } from './trouble-page.tsx'
import { backupsWanted, leaveBackups } from '#renderer/state/library/damage.ts'
import { libraryState } from '#renderer/state/library/library.ts'
import { page } from '#renderer/state/session/navigation.ts'
import { notDrawnWords } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { Header } from './header.tsx'
import { followEscape } from './keys.ts'

const troubleSignal = signal<Trouble | 'none' | null>(null)
/** Null while the page is still being brought up, then what stands in the way or `none`. */
export const trouble: ReadonlySignal<Trouble | 'none' | null> = troubleSignal

export function showTrouble(now: Trouble | 'none'): void {
  troubleSignal.value = now
}

function OpenPage() {
  const { id, Page } = pageRow(page.value)
  return <Page key={id} />
}

/** Only while a page is shown: what stands in the way of the whole program has no board to go back to. */
function EscapeLeadsBack() {
  useEffect(followEscape, [])
  return null
}

export function WholePage({ onAgain }: { onAgain: () => Promise<void> }) {
  const now = trouble.value
  if (now === null) return null
  if (now !== 'none') {
    return (
      <>
        <TroublePage trouble={now} onAgain={onAgain} />
        <NoticeArea />
      </>
    )
  }
  if (backupsWanted.value !== null) {
    return (
      <>
        <BackupsPage
          why={backupsWanted.value}
          backups={libraryState.value?.backups ?? []}
          onBack={leaveBackups}
          onAgain={async () => {
            leaveBackups()
            await onAgain()
          }}
        />
        <NoticeArea />
      </>
    )
  }
  return (
    <>
      <Guarded part={notDrawnWords.parts.window}>
        <Header />
      </Guarded>
      {libraryState.value?.state === 'read-only' ? (
        <p class="banner" role="status">
          {words.board.trouble.readOnly} {libraryState.value.message}
        </p>
      ) : null}
      {/* Another page is another part: it does not inherit a fault. */}
      <Guarded key={page.value} part={notDrawnWords.parts.page}>
        <OpenPage />
      </Guarded>
      <EscapeLeadsBack />
      <NoticeArea />
    </>
  )
}
