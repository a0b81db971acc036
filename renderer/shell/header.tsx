/** The window's first row: the shoot's menu, the pages as tabs in the order of the job, the box for places, undo, settings and help. */
import { computed } from '@preact/signals'
import { Fragment } from 'preact'
import { PAGES } from './pages.tsx'
import { ShootMenu } from './shoot-menu.tsx'
import { offline } from '#renderer/state/session/network.ts'
import { PlaceBox } from './place-box.tsx'
import { Icon, type IconName } from '#renderer/part/icon.tsx'
import { canRedo, canUndo, redo, undo } from '#renderer/state/library/history.ts'
import { refusals } from '#renderer/state/library/refusals.ts'
import { unsaved } from '#renderer/state/library/saving.ts'
import { savingWords } from '#renderer/words/en-saving.ts'
import { hasBoardSpot, boardSpot } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { beside, page, openPage, backToBoard, putBeside } from '#renderer/state/session/navigation.ts'
import { headerWords as say } from '#renderer/words/en-header.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'

interface StepProps {
  readonly icon: IconName
  /** What would be taken back or done again; null when there is nothing. */
  readonly what: string | null
  readonly name: string
  readonly withWhat: (what: string) => string
  readonly nothing: string
  readonly onStep: () => void
}

function Step({ icon, what, name, withWhat, nothing, onStep }: StepProps) {
  return (
    <button
      type="button"
      class="button button-icon"
      disabled={what === null}
      aria-label={what === null ? name : withWhat(what)}
      title={what === null ? nothing : withWhat(what)}
      onClick={onStep}
    >
      <Icon name={icon} />
    </button>
  )
}

function Steps() {
  const { board } = words
  return (
    <span class="header-icons" role="group" aria-label={`${board.undo}, ${board.redo}`}>
      <Step
        icon="undo"
        what={canUndo.value}
        name={board.undo}
        withWhat={board.undoWhat}
        nothing={board.nothingToUndo}
        onStep={() => void undo()}
      />
      <Step
        icon="redo"
        what={canRedo.value}
        name={board.redo}
        withWhat={board.redoWhat}
        nothing={board.nothingToRedo}
        onStep={() => void redo()}
      />
    </span>
  )
}

interface TabProps {
  readonly text: string
  readonly hint: string | undefined
  readonly on: boolean
  readonly ready: boolean
  readonly onPress: () => void
}

function Tab({ text, hint, on, ready, onPress }: TabProps) {
  return (
    <button
      type="button"
      class="tab"
      aria-current={on ? 'page' : undefined}
      disabled={!on && !ready}
      title={hint}
      onClick={onPress}
    >
      {text}
    </button>
  )
}

/** The board with its answers, and with the scan in their place: two tabs of one page. */
function openBoard(panel: 'answers' | 'scan'): void {
  backToBoard()
  putBeside(panel)
}

function Tabs() {
  const scan = page.value === 'board' && beside.value === 'scan'
  return (
    <nav class="tabs" aria-label={say.pages}>
      {PAGES.map((row) => {
        const way = row.wayIn?.() ?? null
        if (way === null || way.icon !== undefined) return null
        if (row.id !== 'board')
          return (
            <Tab
              key={row.id}
              text={way.text}
              hint={row.ready() ? way.hint : (row.notReady ?? way.hint)}
              on={page.value === row.id}
              ready={row.ready()}
              onPress={() => openPage(row.id)}
            />
          )
        return (
          <Fragment key={row.id}>
            <Tab
              text={way.text}
              hint={way.hint}
              on={page.value === 'board' && !scan}
              ready
              onPress={() => openBoard('answers')}
            />
            <Tab
              text={scanWords.scan}
              hint={scanWords.scanHint}
              on={scan}
              ready={hasBoardSpot.value}
              onPress={() => openBoard('scan')}
            />
          </Fragment>
        )
      })}
    </nav>
  )
}

/** The pages that are not part of the job's order, each a drawing with its name; pressed again they lead back. */
function IconPages() {
  return (
    <span class="header-icons">
      {PAGES.map(({ id, wayIn }) => {
        const way = wayIn?.() ?? null
        if (way?.icon === undefined) return null
        const on = page.value === id
        return (
          <button
            key={id}
            type="button"
            class={on ? 'button button-icon on' : 'button button-icon'}
            aria-label={way.text}
            aria-pressed={on}
            title={way.text}
            onClick={() => openPage(on ? 'board' : id)}
          >
            <Icon name={way.icon} />
          </button>
        )
      })}
    </span>
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

/** The name of the spot that is open; null without. */
const spotTitle = computed(() => (boardSpot.value === null ? null : spotName(boardSpot.value).slice(0, 200)))

export function Header() {
  const { board } = words
  const spot = spotTitle.value
  return (
    <header class="header">
      <b class="wordmark">{board.program}</b>
      <ShootMenu />
      <Tabs />
      <span class="whereabouts">{spot}</span>
      <Marks />
      <PlaceBox />
      <Steps />
      <IconPages />
    </header>
  )
}
