/** The messages at the bottom of the window: what happened, with a way back where there is one. */
import { useEffect } from 'preact/hooks'
import { type Notice, READ_BY_THEN, dismiss, notices } from '#renderer/state/library/notices.ts'
import { words } from '#renderer/words/en.ts'
import { Icon } from '#renderer/part/icon.tsx'
import { NotSavedList } from '#renderer/part/not-saved.tsx'

function NoticeLine({ notice }: { notice: Notice }) {
  const { id, kind, text, action } = notice
  useEffect(() => {
    if (kind === 'fault') return undefined
    const timer = setTimeout(() => dismiss(id), READ_BY_THEN)
    return () => clearTimeout(timer)
  }, [id, kind])
  return (
    <div class={`notice notice-${kind}`} role={kind === 'fault' ? 'alert' : 'status'}>
      {kind === 'fault' ? <Icon name="warning" /> : <Icon name="visited" />}
      <p>{text}</p>
      {action === null || action.offered?.() === false ? null : (
        <button
          type="button"
          class="button"
          onClick={() => {
            dismiss(id)
            action.run()
          }}
        >
          {action.label}
        </button>
      )}
      <button type="button" class="icon-button" aria-label={words.board.dismiss} onClick={() => dismiss(id)}>
        <Icon name="close" />
      </button>
    </div>
  )
}

export function NoticeArea() {
  return (
    <section class="notices" aria-label={words.board.notices}>
      <NotSavedList />
      {notices.value.map((notice) => (
        <NoticeLine key={notice.id} notice={notice} />
      ))}
    </section>
  )
}
