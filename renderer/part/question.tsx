/** A question with its answer: the sections of the right side. */
import type { ComponentChildren } from 'preact'
import { useId, useState } from 'preact/hooks'

export function Question({ title, children }: { title: string; children: ComponentChildren }) {
  const id = useId()
  return (
    <section class="question" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  )
}

/** What an open answer begins with: its figure, with all that belongs to it. */
export function AnswerFigure({ figure, note }: { figure: string; note: string }) {
  return (
    <p class="answer-first">
      <strong>{figure}</strong> <small>{note}</small>
    </p>
  )
}

/** A part that is read seldom: closed until asked for. What it holds is drawn only while it is open, which spares every drag its work. */
export function Fold({ title, children }: { title: string; children: ComponentChildren }) {
  const [open, setOpen] = useState(false)
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open ? <div class="fold-body">{children}</div> : null}
    </details>
  )
}
