/** What is done with drawn ground as edits: more of it, changed, reversed, fewer. */
import {
  type Drawn,
  type DrawnShape,
  type DrawnSort,
  MOST_DRAWN,
  drawnOf,
  newKeepOut,
  newStoppingGround,
  shapeFault,
  withDrawnPoints,
  withKeepOut,
  withStoppingGround,
  withoutDrawn,
} from '#core/record/drawn-ground.ts'
import type { KeepOut, KeepOutKind } from '#core/record/keep-out.ts'
import type { Shoot } from '#core/record/shoot.ts'
import type { StoppingGround } from '#core/record/stopping-ground.ts'
import { chooseDrawn, nextKind } from '#renderer/state/session/drawn-ground.ts'
import { changeShoot, undoOffer } from '#renderer/state/library/history.ts'
import { shoot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { stoppingWords as say } from '#renderer/words/en-stopping.ts'

export interface NewDrawn {
  readonly name: string
  readonly shape: DrawnShape
}

function withMore(open: Shoot, sort: DrawnSort, more: readonly NewDrawn[], kind: KeepOutKind): Shoot {
  if (sort === 'stopping') {
    const added = more.map(({ name, shape }) => newStoppingGround(crypto.randomUUID(), name, shape))
    return { ...open, stoppingGround: [...open.stoppingGround, ...added] }
  }
  const added = more.map(({ name, shape }) => newKeepOut(crypto.randomUUID(), name, kind, shape))
  return { ...open, keepOuts: [...open.keepOuts, ...added] }
}

/** How many more of a sort the shoot on the board has room for. */
export function roomFor(sort: DrawnSort): number {
  return shoot.peek() === null ? 0 : MOST_DRAWN[sort] - drawnOf(shoot.peek() as Shoot, sort).length
}

/** Adds what was drawn, taken over or brought in to the shoot, as one edit, and chooses the first of it. False when there was no room. */
export function addDrawn(sort: DrawnSort, more: readonly NewDrawn[], kind = nextKind.peek()): boolean {
  const open = shoot.peek()
  if (open === null) return false
  if (more.length > roomFor(sort)) {
    tell('fault', say.full(MOST_DRAWN[sort]))
    return false
  }
  const after = withMore(open, sort, more, kind)
  void changeShoot(more.length > 1 ? say.edit.bring[sort] : say.edit.add[sort], after)
  const first = drawnOf(after, sort)[drawnOf(open, sort).length]
  if (first !== undefined) chooseDrawn({ sort, id: first.id })
  return true
}

export function changeStopping(label: string, open: Shoot, after: StoppingGround): void {
  void changeShoot(label, withStoppingGround(open, after))
}

export function changeKeepOut(label: string, open: Shoot, after: KeepOut): void {
  void changeShoot(label, withKeepOut(open, after))
}

/** Gives something drawn other points; false, and the sentence why, when they make no shape. */
export function changePoints(
  label: string,
  open: Shoot,
  sort: DrawnSort,
  drawn: Drawn,
  points: Drawn['points'],
): boolean {
  const fault = shapeFault({ form: drawn.form, points })
  if (fault !== null) {
    tell('fault', `${say.faults[fault][drawn.form]} ${say.notKept}`)
    return false
  }
  void changeShoot(label, withDrawnPoints(open, sort, drawn.id, points))
  return true
}

export function removeDrawn(open: Shoot, sort: DrawnSort, gone: Drawn, name: string): void {
  void changeShoot(say.edit.remove[sort], withoutDrawn(open, sort, gone.id))
  tell('done', say.removed(name), undoOffer())
}
