/** What follows from the board: the plan, its one assessment, the proportion ring. Everything on screen reads these. */
import { computed } from '@preact/signals'
import { assess } from '#core/plan/assess.ts'
import { groundProfile } from '#core/plan/ground-profile.ts'
import { planOf } from '#core/plan/plan.ts'
import { proportionRing } from '#core/plan/proportion-ring.ts'
import { boardShoot, boardSpot } from '#renderer/state/library/library.ts'
import { boardPins } from './pin-heights.ts'
import { terrain } from './terrain.ts'

export const plan = computed(() => {
  const shoot = boardShoot.value
  const spot = boardSpot.value
  return shoot === null || spot === null ? null : planOf(shoot, spot, terrain.value, boardPins.value)
})

export const assessment = computed(() => (plan.value === null ? null : assess(plan.value)))

/** The ground on the way to the landmark, as it is drawn; null without elevations or landmark. */
export const groundLine = computed(() => {
  const now = plan.value
  const found = assessment.value
  return now === null || found === null ? null : groundProfile(now, found.levels)
})

/** Only while the proportion is held. */
export const ring = computed(() => {
  const now = plan.value
  const proportion = assessment.value?.proportion ?? null
  return now === null || proportion === null || now.spot.hold !== 'proportion' ? null : proportionRing(now, proportion)
})
