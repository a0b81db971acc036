/** What is done with trees and walls as edits: one more, one fewer. */
import type { Plan } from '#core/plan/plan.ts'
import { newObstruction } from '#core/plan/obstructions.ts'
import { MOST_OBSTRUCTIONS, type ObstructionRecord, type Shoot } from '#core/record/shoot.ts'
import { mapMiddle } from '#renderer/state/session/map-window.ts'
import { changeShoot, undoOffer } from '#renderer/state/library/history.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { groundWords } from '#renderer/words/en-ground.ts'

const { obstructions: say } = groundWords

export function addObstruction(plan: Plan): void {
  const { shoot } = plan
  if (shoot.obstructions.length >= MOST_OBSTRUCTIONS) {
    tell('fault', say.full(MOST_OBSTRUCTIONS))
    return
  }
  const added = newObstruction(crypto.randomUUID(), plan, mapMiddle())
  void changeShoot(say.edit.add, { ...shoot, obstructions: [...shoot.obstructions, added] })
}

export function removeObstruction(shoot: Shoot, gone: ObstructionRecord, name: string): void {
  void changeShoot(say.edit.remove, {
    ...shoot,
    obstructions: shoot.obstructions.filter((obstruction) => obstruction.id !== gone.id),
  })
  tell('done', say.removed(name), undoOffer())
}
