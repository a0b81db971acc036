/** When the library does not open: what happened, where, and the way back. Never an empty window. */
import { useState } from 'preact/hooks'
import type { Output } from '#app/contract/index.ts'
import { ask } from '#renderer/host/host.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { words } from '#renderer/words/en.ts'

type LibraryState = Output<'library.state'>

export type Trouble =
  | { readonly kind: 'library'; readonly state: LibraryState }
  | { readonly kind: 'no-host' | 'no-key'; readonly message: string }

function titleOf(trouble: Trouble): string {
  const say = words.board.trouble
  if (trouble.kind !== 'library') return trouble.kind === 'no-key' ? say.noKey : say.noHost
  const { state } = trouble.state
  if (state === 'damaged') return say.damaged
  if (state === 'newer') return say.newer
  return state === 'unavailable' ? say.unavailable : say.title
}

export function TroublePage({ trouble, onAgain }: { trouble: Trouble; onAgain: () => Promise<void> }) {
  const say = words.board.trouble
  const message = trouble.kind === 'library' ? trouble.state.message : trouble.message
  // A library from a newer version is whole: putting an old backup in its place would lose what is new in it.
  const offer = trouble.kind === 'library' && trouble.state.state === 'damaged'
  return (
    <main class="page trouble">
      <h1>{titleOf(trouble)}</h1>
      <p role="alert">{message}</p>
      {offer ? <Backups backups={trouble.state.backups} onAgain={onAgain} /> : null}
      <button type="button" class="button" onClick={() => void onAgain()}>
        {say.again}
      </button>
    </main>
  )
}

/** A library that is open but broken somewhere within: its backups, and the way back to what is whole. */
export function BackupsPage(props: {
  readonly why: string
  readonly backups: LibraryState['backups']
  readonly onBack: () => void
  readonly onAgain: () => Promise<void>
}) {
  const say = words.board.trouble
  return (
    <main class="page trouble">
      <h1>{say.backupsTitle}</h1>
      <p>{props.why}</p>
      <Backups backups={props.backups} onAgain={props.onAgain} />
      <button type="button" class="button" onClick={props.onBack}>
        {say.back}
      </button>
    </main>
  )
}

/** The day with its month as a word: 09/06 would be two different days to two readers. */
function savedAt(instant: number): string {
  return new Date(instant).toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' })
}

function Backups({ backups, onAgain }: { backups: LibraryState['backups']; onAgain: () => Promise<void> }) {
  const say = words.board.trouble
  const [busy, setBusy] = useState(false)
  const restore = async (backup: string): Promise<void> => {
    setBusy(true)
    const answer = await ask('library.restore', { backup })
    setBusy(false)
    if (!answer.ok) return tell('fault', answer.fault.message)
    tell('done', say.restored(answer.value.keptAs))
    await onAgain()
  }
  if (backups.length === 0) return <p>{say.noBackups}</p>
  return (
    <section aria-label={say.backups}>
      <h2>{say.backups}</h2>
      <p class="hint">{say.kept}</p>
      <ul class="backups">
        {backups.map((backup, index) => (
          <li key={backup.name}>
            <span>{(backup.ahead ? say.backupAhead : say.backupLine)(savedAt(backup.savedAt), backup.spots)}</span>
            <button
              type="button"
              class={index === 0 && !backup.ahead ? 'button button-main' : 'button'}
              disabled={busy}
              onClick={() => void restore(backup.name)}
            >
              {index === 0 && !backup.ahead ? say.restoreNewest : say.restore}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
