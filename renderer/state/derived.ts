/** What follows from the board: the plan, its one assessment, the proportion ring. Everything on screen reads these. */
import { computed } from '@preact/signals'
import { assess } from '#core/plan/assess.ts'
import { planOf } from '#core/plan/plan.ts'
import { proportionRing } from '#core/plan/proportion-ring.ts'
import { boardShoot, boardSpot } from './library.ts'

export const plan = computed(() => {
  const shoot = boardShoot.value
  const spot = boardSpot.value
  return shoot === null || spot === null ? null : planOf(shoot, spot)
})

export const assessment = computed(() => (plan.value === null ? null : assess(plan.value)))

/** Only while the proportion is held. */
export const ring = computed(() => {
  const now = plan.value
  const proportion = assessment.value?.proportion ?? null
  return now === null || proportion === null || now.spot.hold !== 'proportion' ? null : proportionRing(now, proportion)
})
