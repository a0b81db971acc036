/** The planned instant as it is changed by hand: shown everywhere while it moves, saved as one edit when it stands. */
import { checkInstant, clampInstant } from '#core/time/civil.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { changeSpot } from '#renderer/state/library/history.ts'
import { boardSpot, liveSpot, savedSpot } from '#renderer/state/library/library.ts'
import { tell } from '#renderer/state/library/notices.ts'

/** Shows an instant on the board without saving it; one outside the years that can be reckoned is taken to their edge. */
export function showWhen(instant: number): void {
  const spot = boardSpot.peek()
  if (spot !== null) liveSpot.value = { ...spot, when: Math.round(clampInstant(instant)) }
}

/** Saves the instant shown, or puts back the saved one when nothing has changed. */
export function keepWhen(): void {
  const shown = liveSpot.peek()
  const saved = savedSpot.peek()
  if (shown === null || saved === null || shown.id !== saved.id) return
  if (shown.when === saved.when) liveSpot.value = null
  else void changeSpot(lightWords.edit.when, { ...saved, when: shown.when })
}

export function giveUpWhen(): void {
  liveSpot.value = null
}

/** Goes to an instant at once; out of the years that can be reckoned it says so and stays. */
export function goToInstant(instant: number): void {
  const saved = savedSpot.peek()
  const checked = checkInstant(Math.round(instant))
  if (!checked.ok) tell('fault', checked.fault.message)
  else if (saved !== null && saved.when !== checked.value)
    void changeSpot(lightWords.edit.when, { ...saved, when: checked.value })
}
