/** How far off spots may be that are shown outside the board, each worked out once for as long as nothing changes that it goes by. */
import { signal } from '@preact/signals'
import { parkingsOf } from '#core/record/parkings.ts'
import type { Plan } from '#core/plan/plan.ts'
import {
  type PlanTolerances,
  type ToleranceRequest,
  planTolerances,
  toleranceSteps,
} from '#core/tolerance/plan-tolerances.ts'
import type { Zone } from '#core/time/civil.ts'
import { keptSkylinesOf } from './assessments.ts'
import { knownOnBoard } from './board-tolerances.ts'
import { sameParts } from '#renderer/job/same-parts.ts'
import { statesOfSpots } from './states-of-spots.ts'
import { toleranceParts } from './tolerance-parts.ts'
import { atLeisure } from '#renderer/job/at-leisure.ts'
import { spots } from '#renderer/state/library/library.ts'

interface Known {
  readonly parts: readonly unknown[]
  readonly found: PlanTolerances | null
}

const states = statesOfSpots<Known>()
/** Grows whenever one more is known. */
const count = signal(0)

/** What the board knows already is not worked out again. */
function knownOf({ spot }: Plan, parts: readonly unknown[]): Known | null {
  const before = states.find(spot, parts)
  if (before !== null) return before
  const boards = knownOnBoard(parts)
  if (boards === null) return null
  const known = { parts, found: boards.found }
  states.keep(spot, known)
  return known
}

function requestOf(plan: Plan, zone: Zone): ToleranceRequest {
  return { plan, zone, parkings: parkingsOf(spots.value), skylines: keptSkylinesOf(plan) }
}

/** Worked out at once when it is new, in some tens of milliseconds, hundreds among hills. Null when nothing is framed. */
export function tolerancesFor(plan: Plan, zone: Zone): PlanTolerances | null {
  const parts = toleranceParts(plan, zone)
  const before = knownOf(plan, parts)
  if (before !== null) return before.found
  const found = planTolerances(requestOf(plan, zone))
  states.keep(plan.spot, { parts, found })
  return found
}

/** As far as it is known: `working` until it has been worked out, with an ear for the hand meanwhile. To be read in a drawing. */
export function tolerancesAtLeisure(plan: Plan, zone: Zone): PlanTolerances | null | 'working' {
  void count.value
  const parts = toleranceParts(plan, zone)
  const before = knownOf(plan, parts)
  if (before !== null) return before.found
  wait({ plan, zone, parts })
  return 'working'
}

interface Waiting {
  readonly plan: Plan
  readonly zone: Zone
  readonly parts: readonly unknown[]
}

/** In turn, each spot once: a newer state of one takes the place of that which waits. */
let waiting: readonly Waiting[] = []
let stop: (() => void) | null = null

function wait(asked: Waiting): void {
  if (waiting.some(({ parts }) => sameParts(parts, asked.parts))) return
  const [first] = waiting
  if (first?.plan.spot.id === asked.plan.spot.id) {
    stop?.()
    stop = null
  }
  waiting = [...waiting.filter(({ plan }) => plan.spot.id !== asked.plan.spot.id), asked]
  next()
}

function next(): void {
  const [first] = waiting
  if (first === undefined || stop !== null) return
  const { plan, zone, parts } = first
  const goOn = (): void => {
    waiting = waiting.slice(1)
    stop = null
    next()
  }
  const done = (found: PlanTolerances | null): void => {
    states.keep(plan.spot, { parts, found })
    count.value += 1
    goOn()
  }
  stop = atLeisure(toleranceSteps(requestOf(plan, zone)), 0, done, goOn)
}
