/** The header: what is open, the box for places, undo, and the ways to the other pages. */
import { computed } from '@preact/signals'
import { type PageRow, PAGES } from './pages.tsx'
import { offline } from '#renderer/state/session/network.ts'
import { PlaceBox } from './place-box.tsx'
import { Icon } from '#renderer/part/icon.tsx'
import { canRedo, canUndo, redo, undo } from '#renderer/state/library/history.ts'
import { refusals } from '#renderer/state/library/refusals.ts'
import { unsaved } from '#renderer/state/library/saving.ts'
import { savingWords } from '#renderer/words/en-saving.ts'
import { hasBoardSpot, boardSpot, shoot } from '#renderer/state/library/library.ts'
import { shootName, spotName } from '#renderer/text/names.ts'
import { beside, page, openPage, backToBoard, putBeside } from '#renderer/state/session/navigation.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'

interface StepProps {
  /** What would be taken back or done again; null when there is nothing. */
  readonly what: string | null
  readonly name: string
  readonly withWhat: (what: string) => string
  readonly nothing: string
  readonly onStep: () => void
}

function Step({ what, name, withWhat, nothing, onStep }: StepProps) {
  return (
    <button
      type="button"
      class="button"
      disabled={what === null}
      aria-label={what === null ? name : withWhat(what)}
      title={what === null ? nothing : withWhat(what)}
      onClick={onStep}
    >
      {name}
    </button>
  )
}

function Steps() {
  const { board } = words
  return (
    <span class="buttons" role="group" aria-label={`${board.undo}, ${board.redo}`}>
      <Step
        what={canUndo.value}
        name={board.undo}
        withWhat={board.undoWhat}
        nothing={board.nothingToUndo}
        onStep={() => void undo()}
      />
      <Step
        what={canRedo.value}
        name={board.redo}
        withWhat={board.redoWhat}
        nothing={board.nothingToRedo}
        onStep={() => void redo()}
      />
    </span>
  )
}

function PageButton({ row }: { readonly row: PageRow }) {
  const button = row.button?.() ?? null
  if (button === null) return null
  const on = page.value === row.id
  return (
    <button
      type="button"
      class={on ? 'button on' : 'button'}
      aria-pressed={on}
      disabled={!on && !row.ready()}
      title={button.hint}
      onClick={() => openPage(on ? 'board' : row.id)}
    >
      {button.text}
    </button>
  )
}

/** Turns the right side of the board from the answers to the scan and back; from another page it leads to the board. */
function ScanButton() {
  const on = page.value === 'board' && beside.value === 'scan'
  return (
    <button
      type="button"
      class={on ? 'button on' : 'button'}
      aria-pressed={on}
      disabled={!hasBoardSpot.value}
      title={scanWords.scanHint}
      onClick={() => {
        backToBoard()
        putBeside(on ? 'answers' : 'scan')
      }}
    >
      {scanWords.scan}
    </button>
  )
}

/** Whether what is on the screen is safe in the library, and whether the map has a network. */
function Marks() {
  const { board } = words
  const held = refusals.value.length
  return (
    <>
      <span class="save-mark" role="status">
        {held > 0 ? (
          <span title={savingWords.notSavedHint}>
            <Icon name="warning" /> {savingWords.notSavedCount(held)}
          </span>
        ) : unsaved.value > 0 ? (
          board.saving
        ) : (
          ''
        )}
      </span>
      {offline.value ? (
        <span class="offline-mark" role="status" title={board.offlineHint}>
          <Icon name="warning" /> {board.offline}
        </span>
      ) : null}
    </>
  )
}

/** The names of what is open; null without. */
const shootTitle = computed(() => (shoot.value === null ? null : shootName(shoot.value).slice(0, 200)))
const spotTitle = computed(() => (boardSpot.value === null ? null : spotName(boardSpot.value).slice(0, 200)))

export function Header() {
  const { board } = words
  const open = shootTitle.value
  const spot = spotTitle.value
  return (
    <header class="header">
      <b class="wordmark">{board.program}</b>
      <span class="whereabouts">
        {open === null ? null : <span>{open}</span>}
        {spot === null ? null : (
          <>
            <span aria-hidden="true"> · </span>
            <span>{spot}</span>
          </>
        )}
      </span>
      <Marks />
      <PlaceBox />
      <Steps />
      <span class="buttons">
        <ScanButton />
        {PAGES.map((row) => (
          <PageButton key={row.id} row={row} />
        ))}
      </span>
    </header>
  )
}
