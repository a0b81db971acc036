/** The planned instant as it is changed: to where a hand has it, or at once to another. */
import { checkInstant, clampInstant } from '#core/time/civil.ts'
import { lightWords } from '#renderer/words/en-light.ts'
import { changeSpot } from '#renderer/state/library/history.ts'
import { savedSpot } from '#renderer/state/library/library.ts'
import { type Arrangement, settle } from './live-change.ts'
import { tell } from '#renderer/state/library/notices.ts'

/** What was taken hold of, at an instant; one outside the years that can be reckoned is taken to their edge. */
export function atInstant(start: Arrangement, instant: number): Arrangement {
  const when = Math.round(clampInstant(instant))
  return when === start.spot.when ? start : { ...start, spot: { ...start.spot, when } }
}

/** Goes to an instant at once; out of the years that can be reckoned it says so and stays. */
export function goToInstant(instant: number): void {
  settle()
  const saved = savedSpot.peek()
  const checked = checkInstant(Math.round(instant))
  if (!checked.ok) tell('fault', checked.fault.message)
  else if (saved !== null && saved.when !== checked.value)
    void changeSpot(lightWords.edit.when, { ...saved, when: checked.value })
}
