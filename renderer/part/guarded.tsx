/** A part of the page kept apart from the others' faults: what cannot be drawn says so in its own place, with the ways on. */
import { messageOf } from '#core/message-of.ts'
import { backToBoard, openPage } from '#renderer/state/session/navigation.ts'
import { effect } from '@preact/signals'
import { Component, type ComponentChildren } from 'preact'
import { canUndo, undo } from '#renderer/state/library/history.ts'
import { liveShoot, liveSpot, shoot, spotId, spots, tryOut } from '#renderer/state/library/library.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { putOnBoard } from '#renderer/state/act/try-out.ts'
import { notDrawnWords as say } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { Icon } from './icon.tsx'

/** Everything that a drawing can depend on as records; whatever of it changes may have mended the fault. */
function records(): readonly unknown[] {
  return [shoot.value, spots.value, spotId.value, tryOut.value, liveShoot.value, liveSpot.value, settings.value]
}

interface GuardedProps {
  /** What it is, in the sentence's own words: "The map". */
  readonly part: string
  readonly children: ComponentChildren
  /** Shows the fault elsewhere, where there is no room for words in the part's own place; null once it is over. */
  readonly onFault?: (fault: PartFault | null) => void
}

export interface PartFault {
  readonly reason: string
  readonly again: () => void
}

interface State {
  readonly fault: string | null
}

export class Guarded extends Component<GuardedProps, State> {
  override state: State = { fault: null }
  #stop: (() => void) | null = null

  static override getDerivedStateFromError(fault: unknown): State {
    return { fault: messageOf(fault) }
  }

  override componentDidCatch(fault: unknown): void {
    // oxlint-disable-next-line no-console -- for whoever mends it
    console.error(fault)
    this.props.onFault?.({ reason: messageOf(fault), again: this.#again })
    this.#stop?.()
    let first = true
    this.#stop = effect(() => {
      records()
      if (!first) queueMicrotask(this.#again)
      first = false
    })
  }

  override componentWillUnmount(): void {
    this.#over()
  }

  #over(): void {
    this.#stop?.()
    this.#stop = null
    if (this.state.fault !== null) this.props.onFault?.(null)
  }

  #again = (): void => {
    if (this.#stop === null) return
    this.#over()
    this.setState({ fault: null })
  }

  override render() {
    const { part, children, onFault } = this.props
    const { fault } = this.state
    if (fault === null) return children
    return onFault === undefined ? <NotDrawn part={part} fault={{ reason: fault, again: this.#again }} /> : null
  }
}

/** The sentence and the ways on. */
export function NotDrawn({ part, fault }: { readonly part: string; readonly fault: PartFault }) {
  const back = canUndo.value
  const other = spots.value.find(({ id }) => id !== spotId.value)
  return (
    <section class="not-drawn" aria-label={say.label(part)}>
      <p role="status">
        <Icon name="warning" /> {say.sentence(part, fault.reason)}
      </p>
      <span class="buttons">
        {back === null ? null : (
          <button type="button" class="button button-small" onClick={() => void undo()}>
            {words.board.undoWhat(back)}
          </button>
        )}
        {other === undefined ? null : (
          <button
            type="button"
            class="button button-small"
            onClick={() => {
              putOnBoard(other.id)
              backToBoard()
            }}
          >
            {say.otherSpot}
          </button>
        )}
        <button type="button" class="button button-small" onClick={() => openPage('shoot')}>
          {say.otherShoot}
        </button>
        <button type="button" class="button button-small" onClick={fault.again}>
          {say.again}
        </button>
      </span>
    </section>
  )
}
