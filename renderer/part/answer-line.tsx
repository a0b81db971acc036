/** A question of the board with its one answer in a line that is always in sight; pressed, it opens under its line. */
import type { ReadonlySignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useId, useMemo } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { steady } from '#renderer/job/steady.ts'
import { answersBoard } from '#renderer/state/plan/calm-board.ts'
import { openAnswers, turnAnswer } from '#renderer/state/session/open-answers.ts'
import type { AnswerGlance } from '#renderer/text/glance-text.ts'
import { Icon } from './icon.tsx'
import { ReadPart } from './read-part.tsx'

export interface BoardAnswer {
  readonly id: string
  readonly title: string
  /** The answer in its line. */
  readonly glance: (plan: Plan, found: Assessment) => AnswerGlance
  /** All of it, drawn while it is open. */
  readonly show: (plan: Plan, found: Assessment) => ComponentChildren
}

/** Written again only when the line says something else. */
function calm(glance: BoardAnswer['glance']): ReadonlySignal<AnswerGlance | null> {
  return steady(() => {
    const [plan, found] = [answersBoard.plan.value, answersBoard.assessment.value]
    return plan === null || found === null ? null : glance(plan, found)
  })
}

function InLine({ said }: { readonly said: ReadonlySignal<AnswerGlance | null> }) {
  const now = said.value
  if (now === null) return null
  const { figure, note, wrong } = now
  return (
    <span class="answer-said">
      <strong class="answer-figure">
        {wrong === null ? null : <Icon name="warning" />} {figure}
      </strong>
      <span class={wrong === null ? 'answer-aside' : 'answer-aside answer-wrong'}>
        {wrong === null || wrong === '' ? note : wrong}
      </span>
    </span>
  )
}

export function AnswerLine({ answer }: { readonly answer: BoardAnswer }) {
  const { id, title, glance, show } = answer
  const name = useId()
  const said = useMemo(() => calm(glance), [glance])
  const open = openAnswers.value.includes(id)
  return (
    <section class={open ? 'answer answer-open' : 'answer'} aria-labelledby={name}>
      <h2>
        <button type="button" aria-expanded={open} onClick={() => turnAnswer(id)}>
          <span class="answer-title" id={name}>
            {title}
          </span>{' '}
          <InLine said={said} />
        </button>
      </h2>
      {open ? (
        <div class="answer-body" tabIndex={0} role="group" aria-labelledby={name}>
          <ReadPart show={show} />
        </div>
      ) : null}
    </section>
  )
}
