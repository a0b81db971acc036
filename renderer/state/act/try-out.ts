/** What is done with an arrangement that is tried out on the board: laid over the spot at work, kept on the shelf, left again. */
import { boundsHold } from '#core/geo/bounds.ts'
import type { Spot } from '#core/record/spot.ts'
import { fitPlan, mapBounds } from '#renderer/state/session/map-window.ts'
import { scanWords } from '#renderer/words/en-scan.ts'
import { words } from '#renderer/words/en.ts'
import { commit, undoOffer } from '#renderer/state/library/history.ts'
import { shelvedLast } from '#renderer/state/library/edit.ts'
import { spotId, spots, tryOut, workOnSpot } from '#renderer/state/library/library.ts'
import { spotName } from '#renderer/text/names.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { MOST_COMPARED } from '#core/plan/compare.ts'
import { pickSpots, pickedOnShelf } from '#renderer/state/session/picked.ts'
import { settleUnfinished } from '#renderer/state/library/unfinished.ts'

const { tryOut: say } = scanWords

/** What is on the board: an arrangement tried out or kept. */
export function onBoard(id: string): boolean {
  const tried = tryOut.value
  return tried === null ? spotId.value === id : tried.spot.id === id
}

/**
 * Lays an arrangement over the spot on the board; the spot itself stays as it is. One that is on the shelf already comes on the board
 * as what it is there. The map goes there when it is out of its window.
 */
export async function openTryOut(spot: Spot): Promise<void> {
  if (spots.peek().some(({ id }) => id === spot.id)) return putOnBoard(spot.id)
  const after = { spot, home: tryOut.peek()?.home ?? spotId.peek() }
  const saved = commit({
    label: say.open(spotName(spot)),
    records: [{ kind: 'try-out', before: tryOut.peek(), after }],
  })
  const bounds = mapBounds.peek()
  if (bounds !== null && !boundsHold(bounds, spot.stop.at)) fitPlan()
  await saved
}

/** Back to the spot that was there before; nothing when nothing is tried out. */
export async function leaveTryOut(): Promise<void> {
  const before = tryOut.peek()
  if (before !== null) await commit({ label: say.leave, records: [{ kind: 'try-out', before, after: null }] })
}

/** Another spot of the shelf comes on the board. */
export function putOnBoard(id: string): void {
  settleUnfinished()
  void leaveTryOut()
  workOnSpot(id)
}

/**
 * Puts an arrangement on the shelf as its last spot and picks it for side by side. The board goes on with what it shows: when that
 * is the arrangement itself, it is the shelf's own spot from now on.
 */
export async function keepArrangement(spot: Spot): Promise<void> {
  const tried = tryOut.peek()
  const after = shelvedLast(spot)
  const shown = spotId.peek()
  const others = pickedOnShelf.peek()
  const own = tried?.spot.id === spot.id
  const saved = commit({
    label: words.board.edit.keepSpot,
    records: [
      ...(tried === null ? [] : [{ kind: 'try-out', before: tried, after: own ? null : tried } as const]),
      { kind: 'spot', before: null, after },
    ],
  })
  if (!own) workOnSpot(shown)
  const room = others.length < MOST_COMPARED
  if (room) pickSpots([...others, spot.id])
  const name = spotName(after)
  tell('done', room ? say.kept(name) : say.keptNotPicked(name), undoOffer())
  await saved
}
