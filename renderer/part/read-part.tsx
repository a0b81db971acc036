/**
 * A part of the board that is read: it follows calmly, and rests while a hand moves something that nobody reads here. Writing what lies
 * below the fold would cost every drag its frames.
 */
import { type ReadonlySignal, computed } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useMemo, useRef } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { moving } from '#renderer/state/library/library.ts'
import { answersBoard } from '#renderer/state/plan/calm-board.ts'
import { useInSight } from './in-sight.ts'

type Show = (plan: Plan, found: Assessment) => ComponentChildren

/** What is shown: while it rests, what was shown before, drawn again by nothing. */
function shownWhile(seen: ReadonlySignal<boolean>, show: Show): ReadonlySignal<ComponentChildren> {
  let last: ComponentChildren = null
  return computed(() => {
    if (!seen.value && moving.value) return last
    const plan = answersBoard.plan.value
    const found = answersBoard.assessment.value
    last = plan === null || found === null ? null : show(plan, found)
    return last
  })
}

export function ReadPart({ show }: { readonly show: Show }) {
  const holder = useRef<HTMLDivElement>(null)
  const seen = useInSight(holder)
  const shown = useMemo(() => shownWhile(seen, show), [seen, show])
  return (
    <div class="read-part" ref={holder}>
      {/* Read here, not handed over as a signal: a fault in it is this part's. */}
      {shown.value}
    </div>
  )
}
