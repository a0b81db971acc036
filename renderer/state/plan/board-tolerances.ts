/** How far off the arrangement on the board may be: worked out bit by bit while nothing is being dragged, dropped when something is. */
import { computed, signal } from '@preact/signals'
import type { Plan } from '#core/plan/plan.ts'
import { type PlanTolerances, type ToleranceRequest, toleranceSteps } from '#core/tolerance/plan-tolerances.ts'
import { steady } from '#renderer/job/steady.ts'
import { atLeisure } from '#renderer/job/at-leisure.ts'
import { sameParts } from '#renderer/job/same-parts.ts'
import { plan } from './board-plan.ts'
import { moving, spots } from '#renderer/state/library/library.ts'
import { parkingsOf } from '#core/record/parkings.ts'
import { skylines } from './skylines.ts'
import { toleranceParts } from './tolerance-parts.ts'
import { calmly } from './calmly.ts'
import { zone } from './zone.ts'

/** Milliseconds that the plan must have rested. */
const REST = 150

interface Known {
  readonly parts: readonly unknown[]
  readonly skylines: ToleranceRequest['skylines']
  readonly plan: Plan
  /** Null when nothing is framed. */
  readonly found: PlanTolerances | null
}

const lastFound = signal<Known | null>(null)

/** Whether what was found is of what is asked. A copy of a spot goes by the same, but is told as itself. */
function answers(known: Known, { plan: asked, zone: here, skylines: edges }: ToleranceRequest): boolean {
  const { spot } = known.plan
  return spot.id === asked.spot.id && known.skylines === edges && sameParts(known.parts, toleranceParts(asked, here))
}

/** What the board found for any spot that goes by these parts; null when it knows nothing of it. */
export function knownOnBoard(parts: readonly unknown[]): { readonly found: PlanTolerances | null } | null {
  const last = lastFound.peek()
  return last !== null && sameParts(last.parts, parts) ? last : null
}

/** Null while something is dragged. */
const wanted = computed<ToleranceRequest | null>(() => {
  const now = plan.value
  if (now === null || moving.value) return null
  return { plan: now, zone: zone.value, parkings: parkingsOf(spots.value), skylines: skylines.value }
})

export interface BoardTolerances {
  readonly plan: Plan
  readonly found: PlanTolerances | null
  /** False while the board is not yet, or no longer, as it was when this was worked out. */
  readonly current: boolean
}

/** Null until it has been worked out for the spot on the board. */
export const boardTolerances = steady<BoardTolerances | null>(() => {
  const last = lastFound.value
  if (last === null || last.plan.spot.id !== plan.value?.spot.id) return null
  const request = wanted.value
  return { plan: last.plan, found: last.found, current: request !== null && answers(last, request) }
})

/** Keeps it worked out for whatever rests on the board. */
export function followTolerances(): void {
  calmly(() => {
    const request = wanted.value
    if (request === null) return undefined
    const parts = toleranceParts(request.plan, request.zone)
    const last = lastFound.peek()
    if (last !== null && answers(last, request)) return undefined
    const known = { parts, plan: request.plan, skylines: request.skylines }
    return atLeisure(toleranceSteps(request), REST, (found) => (lastFound.value = { ...known, found }))
  })
}
