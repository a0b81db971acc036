/** The window: the header, the page that is open, the messages; or the page of trouble when the library doesn't open. */
import { signal } from '@preact/signals'
import { HelpPage } from './help-page.tsx'
import { NoticeArea } from './notice-area.tsx'
import { BackupsPage, type Trouble, TroublePage } from './trouble-page.tsx'
import { SettingsPage } from '#renderer/page/settings/settings-page.tsx'
import { ShootPage } from '#renderer/page/shoot/shoot-page.tsx'
import { backupsWanted } from '#renderer/state/library/damage.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { libraryState } from '#renderer/state/library/library.ts'
import { page } from '#renderer/state/session/navigation.ts'
import { words } from '#renderer/words/en.ts'
import { Board } from './board.tsx'
import { Header } from './header.tsx'
import { LazyPage } from '#renderer/part/lazy-page.tsx'

/** Null while the page is still being brought up, then what stands in the way or `none`. */
export const trouble = signal<Trouble | 'none' | null>(null)

function OpenPage() {
  const open = page.value
  const toBoard = (): void => {
    page.value = 'board'
  }
  if (open === 'shoot') return <ShootPage />
  if (open === 'settings') return <SettingsPage />
  if (open === 'help') return <HelpPage />
  if (open === 'compare') {
    return (
      <LazyPage
        key="compare"
        load={async () => (await import('#renderer/page/compare/compare-page.tsx')).ComparePage}
        parts={{}}
      />
    )
  }
  if (open === 'days') {
    return (
      <LazyPage key="days" load={async () => (await import('#renderer/page/days/days-page.tsx')).DaysPage} parts={{}} />
    )
  }
  if (open === 'sheet' && plan.value !== null) {
    const parts = { plan: plan.value, onBack: toBoard }
    return (
      <LazyPage
        key="sheet"
        load={async () => (await import('#renderer/page/sheet/sheet-page.tsx')).SheetPage}
        parts={parts}
      />
    )
  }
  return <Board />
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
    const back = (): void => {
      backupsWanted.value = null
    }
    return (
      <>
        <BackupsPage
          why={backupsWanted.value}
          backups={libraryState.value?.backups ?? []}
          onBack={back}
          onAgain={async () => {
            back()
            await onAgain()
          }}
        />
        <NoticeArea />
      </>
    )
  }
  return (
    <>
      <Header />
      {libraryState.value?.state === 'read-only' ? (
        <p class="banner" role="status">
          {words.board.trouble.readOnly} {libraryState.value.message}
        </p>
      ) : null}
      <OpenPage />
      <NoticeArea />
    </>
  )
}
