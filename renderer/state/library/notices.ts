/** Short messages to the user: what happened, and what can be done; newest last. */
import { type ReadonlySignal, effect, signal } from '@preact/signals'

export interface NoticeAction {
  readonly label: string
  /** Whether it still does what it says; always, where absent. */
  readonly offered?: () => boolean
  readonly run: () => void
}

export interface Notice {
  readonly id: number
  readonly kind: 'done' | 'fault'
  readonly text: string
  /** A thing to press within the notice, such as "Undo". */
  readonly action: NoticeAction | null
}

/** Milliseconds after which good news goes by itself; faults stay until dismissed. Undo remains in the header. */
export const READ_BY_THEN = 12_000

const noticesSignal = signal<readonly Notice[]>([])
export const notices: ReadonlySignal<readonly Notice[]> = noticesSignal
let lastId = 0

/** Answers with the notice's number. */
function show(kind: Notice['kind'], text: string, action: Notice['action']): number {
  lastId += 1
  const notice = { id: lastId, kind, text, action }
  // The same sentence twice in a row tells nothing new.
  noticesSignal.value = [...notices.value.filter((other) => other.text !== text), notice].slice(-4)
  return notice.id
}

export function tell(kind: Notice['kind'], text: string, action: Notice['action'] = null): void {
  show(kind, text, action)
}

/** What stands in the way of something: told until it no longer does. */
export function tellUntil(over: () => boolean, text: string): void {
  const id = show('fault', text, null)
  const stop = effect(() => {
    const stands = notices.value.some((notice) => notice.id === id)
    if (stands && !over()) return
    if (stands) dismiss(id)
    queueMicrotask(() => stop())
  })
}

export function dismiss(id: number): void {
  noticesSignal.value = notices.value.filter((notice) => notice.id !== id)
}
