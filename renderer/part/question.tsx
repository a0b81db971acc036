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

interface FoldProps {
  readonly title: string
  readonly children: ComponentChildren
}

/** A part that is read seldom: closed until asked for. What it holds is drawn only while it is open, which spares every drag its work. */
export function Fold({ title, children }: FoldProps) {
  const [open, setOpen] = useState(false)
  return (
    <HeldFold title={title} open={open} onOpen={setOpen}>
      {children}
    </HeldFold>
  )
}

interface HeldFoldProps extends FoldProps {
  readonly open: boolean
  readonly onOpen: (open: boolean) => void
}

/** A fold that something else opens too. */
export function HeldFold({ title, open, onOpen, children }: HeldFoldProps) {
  return (
    <details class="fold" open={open} onToggle={(event) => onOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open ? <div class="fold-body">{children}</div> : null}
    </details>
  )
}
