/** Readings: rows of a name and its figure, and the dash that stands for what is unknown. */
import type { ComponentChildren } from 'preact'
import { words } from '#renderer/words/en.ts'

/** An en dash on paper, the word for those who listen. */
export function Unknown() {
  return (
    <span class="unknown">
      <span aria-hidden="true">–</span>
      <span class="unseen">{words.board.unknown}</span>
    </span>
  )
}

export function Readings({ children }: { children: ComponentChildren }) {
  return <dl class="readings">{children}</dl>
}

/** One row; null is unknown. */
export function Reading({ name, value }: { name: string; value: ComponentChildren }) {
  return (
    <div class="reading">
      <dt>{name}</dt>
      <dd>{value === null ? <Unknown /> : value}</dd>
    </div>
  )
}
