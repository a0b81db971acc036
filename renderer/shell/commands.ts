/** What each menu command and its keys do. Those that open a page are read off the table of pages. */
import { undo, redo } from '#renderer/state/library/history.ts'
import { PAGES } from './pages.tsx'
import { keepArrangement } from '#renderer/state/act/try-out.ts'
import { trouble } from './app-window.tsx'
import { PAGE_COMMANDS, backToBoard, openPage, page } from '#renderer/state/session/navigation.ts'
import { type PicturePlace, picturePlace, putPicture } from '#renderer/state/session/picture-place.ts'
import { foldShelf, shelfFolded } from '#renderer/state/session/shelf-folded.ts'
import { whenDrawn } from '#renderer/state/session/when-drawn.ts'
import { keepSpot, copySpot } from '#renderer/state/act/spot-acts.ts'
import { type CommandId } from '#app/commands.ts'
import { tellUntil } from '#renderer/state/library/notices.ts'
import { type Spot } from '#core/record/spot.ts'
import { tryOut, savedSpot } from '#renderer/state/library/library.ts'
import { chooseShootFile, saveShootFile, makeShoot } from '#renderer/state/act/shoot-acts.ts'
import { dark, changeSettings } from '#renderer/state/library/settings.ts'

function focusBox(id: string): void {
  backToBoard()
  whenDrawn(`#${id}`, (box) => box.focus())
}

/** A try-out goes on the shelf as it is, whichever of the two is asked for. */
function onSpot(act: (spot: Spot) => Promise<void>): void {
  const spot = savedSpot.value
  if (spot !== null) void (tryOut.value === null ? act(spot) : keepArrangement(spot))
}

function showPicture(place: PicturePlace): void {
  if (page.peek() === 'board') return putPicture(place)
  backToBoard()
  if (picturePlace.peek() !== place) putPicture(place)
}

const ACTS: Readonly<Partial<Record<CommandId, () => unknown>>> = {
  'new-shoot': makeShoot,
  'open-file': chooseShootFile,
  'save-file': saveShootFile,
  undo,
  redo,
  find: () => {
    if (shelfFolded.peek()) foldShelf(false)
    focusBox('find-box')
  },
  'go-to-place': () => focusBox('place-box'),
  'keep-spot': () => onSpot(keepSpot),
  'duplicate-spot': () => onSpot(copySpot),
  'trade-picture': () => showPicture('traded'),
  'whole-picture': () => showPicture('window'),
  theme: () => void changeSettings({ theme: dark.value ? 'light' : 'dark' }),
}

export function runCommand(id: CommandId): void {
  if (trouble.value !== 'none') return
  const row = PAGES.find((one) => PAGE_COMMANDS[one.id] === id)
  if (row === undefined) void ACTS[id]?.()
  else if (row.ready()) openPage(row.id)
  else if (row.notReady !== null) {
    const asked = page.peek()
    // On another page it would say something about a place that is out of sight.
    tellUntil(() => row.ready() || page.value !== asked, row.notReady)
  }
}
