/** One spot on the shelf: a small frame, its name, what is to know at a glance, and what can be done with it. */
import { useComputed } from '@preact/signals'
import { useRef, useState } from 'preact/hooks'
import { useSeenOnce } from '#renderer/part/in-sight.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { Spot } from '#core/record/spot.ts'
import { LensThumb } from '#renderer/view/lens-picture/lens-thumb.tsx'
import { type PartFault, Guarded } from '#renderer/part/guarded.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { StarsShown } from '#renderer/part/stars.tsx'
import { assessmentOf, planAtHand } from '#renderer/state/plan/assessments.ts'
import { lensBoard } from '#renderer/state/plan/calm-board.ts'
import { spotName } from '#renderer/text/names.ts'
import { pickedIds } from '#renderer/state/session/picked.ts'
import { moving } from '#renderer/state/library/library.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { notDrawnWords as say } from '#renderer/words/en-not-drawn.ts'
import { words } from '#renderer/words/en.ts'
import { copySpot, deleteSpot, moveBy, togglePick } from '#renderer/state/act/spot-acts.ts'
import { figuresOf, hintOf } from './spot-text.ts'

/** CSS pixels across the small frame. */
const THUMB = 66

interface SpotCardProps {
  readonly shoot: Shoot
  readonly spot: Spot
  readonly on: boolean
  readonly onChoose: (id: string) => void
  readonly onDrag: (id: string | null) => void
  readonly onDropBefore: (id: string) => void
}

export function SpotCard({ shoot, spot: saved, on, onChoose, onDrag, onDropBefore }: SpotCardProps) {
  // Only the card of the spot being dragged is drawn again with every movement.
  const { id } = saved
  const live = useComputed(() =>
    moving.value && lensBoard.plan.value?.spot.id === id ? lensBoard.plan.value.spot : null,
  ).value
  const spot = live ?? saved
  const card = useRef<HTMLLIElement>(null)
  const seen = useSeenOnce(card)
  const [fault, setFault] = useState<PartFault | null>(null)
  const hint = hintOf(spot)
  const keys = (event: KeyboardEvent): void => {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return
    event.preventDefault()
    void moveBy(spot.id, event.key === 'ArrowUp' ? -1 : 1)
  }
  return (
    <li
      ref={card}
      class={on ? 'spot on' : 'spot'}
      draggable
      onKeyDown={keys}
      onDragStart={(event) => {
        event.dataTransfer?.setData('text/plain', spotName(spot))
        onDrag(spot.id)
      }}
      onDragEnd={() => onDrag(null)}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault()
        onDropBefore(spot.id)
      }}
    >
      <button type="button" class="spot-face" aria-current={on} onClick={() => onChoose(spot.id)}>
        <span class="spot-frame">
          {/* The small frame follows on release: while dragging the large one shows the same, and drawing both costs a frame. */}
          <Guarded part={say.parts.spot} onFault={unseen}>
            {seen ? <LensThumb shoot={shoot} spot={saved} width={THUMB} /> : null}
          </Guarded>
        </span>
        <span class="spot-words">
          <strong>{spotName(spot).slice(0, 200)}</strong>
          <span class="spot-line">
            <Icon name={spot.status} /> {words.spot.statuses[spot.status]} <StarsShown count={spot.stars} />
          </span>
          <Guarded part={say.parts.spot} onFault={setFault}>
            <Figures shoot={shoot} spot={spot} live={live !== null} />
          </Guarded>
          {fault === null ? null : (
            <span class="spot-line spot-fault">{say.sentence(say.parts.spot, fault.reason)}</span>
          )}
          {hint === '' ? null : <span class="spot-line">{hint.slice(0, 200)}</span>}
        </span>
      </button>
      <SpotActs spot={spot} />
    </li>
  )
}

/** What keeps the frame empty is told beside it. */
function unseen(): void {}

function Figures({ shoot, spot, live }: { shoot: Shoot; spot: Spot; live: boolean }) {
  // The one under the hand is on the board, and assessed there.
  const found = (live ? lensBoard.assessment.value : null) ?? assessmentOf(planAtHand(shoot, spot))
  return <span class="spot-line">{figuresOf(found, settings.value.units)}</span>
}

function SpotActs({ spot }: { spot: Spot }) {
  const { shelf } = words.board
  const name = spotName(spot).slice(0, 100)
  const act = (icon: 'up' | 'down' | 'copy' | 'remove', label: string, run: () => void, hint = label) => (
    <button type="button" class="icon-button" aria-label={`${label}: ${name}`} title={hint} onClick={run}>
      <Icon name={icon} />
    </button>
  )
  return (
    <div class="spot-acts" role="group" aria-label={shelf.actions(name)}>
      <label class="pick" title={shelf.pick}>
        <input type="checkbox" checked={pickedIds.value.includes(spot.id)} onChange={() => togglePick(spot.id)} />
        <span class="unseen">
          {shelf.pick}: {name}
        </span>
        <span aria-hidden="true">{words.board.sideBySide}</span>
      </label>
      {act('up', shelf.moveUp, () => void moveBy(spot.id, -1), `${shelf.moveUp} (${shelf.moveHint})`)}
      {act('down', shelf.moveDown, () => void moveBy(spot.id, 1), `${shelf.moveDown} (${shelf.moveHint})`)}
      {act('copy', shelf.duplicate, () => void copySpot(spot))}
      {act('remove', shelf.remove, () => void deleteSpot(spot))}
    </div>
  )
}
