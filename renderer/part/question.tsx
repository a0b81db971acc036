/** A question with its answer: the sections of the right side. */
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

export function Question({ title, children }: { title: string; children: ComponentChildren }) {
  const id = useId()
  return (
    <section class="question" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  )
}

/** The one figure that answers, with what belongs to it in small. */
export function BigFigure({ figure, note }: { figure: string; note: string }) {
  return (
    <p class="big-figure">
      <strong>{figure}</strong> <small>{note}</small>
    </p>
  )
}

/** A part that is read seldom: closed until asked for. */
export function Fold({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <details class="fold">
      <summary>{title}</summary>
      <div class="fold-body">{children}</div>
    </details>
  )
}
