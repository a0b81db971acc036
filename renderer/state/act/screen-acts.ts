/** What is done with trees and walls as edits: one more, one fewer. */
import type { Plan } from '#core/plan/plan.ts'
import { newScreen } from '#core/plan/screens.ts'
import type { ScreenRecord, Shoot } from '#core/record/shoot.ts'
import { mapMiddle } from '#renderer/state/session/map-window.ts'
import { changeShoot, undoOffer } from '#renderer/state/library/history.ts'
import { tell } from '#renderer/state/library/notices.ts'
import { groundWords } from '#renderer/words/en-ground.ts'

const { screens: say } = groundWords

/** As many as a stored shoot may have. */
export const MOST_SCREENS = 100
export function addScreen(plan: Plan): void {
  const { shoot } = plan
  if (shoot.screens.length >= MOST_SCREENS) {
    tell('fault', say.full(MOST_SCREENS))
    return
  }
  const added = newScreen(crypto.randomUUID(), plan, mapMiddle())
  void changeShoot(say.edit.add, { ...shoot, screens: [...shoot.screens, added] })
}

export function removeScreen(shoot: Shoot, gone: ScreenRecord, name: string): void {
  void changeShoot(say.edit.remove, { ...shoot, screens: shoot.screens.filter((screen) => screen.id !== gone.id) })
  tell('done', say.removed(name), undoOffer())
}
