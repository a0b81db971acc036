/** The field whose text is being taken right now: an edit made meanwhile is its own, and tells it when it could not be saved. */
import type { Refusal } from './refusals.ts'

export interface TextSource {
  /** The text could not be saved: it stands in the field again. */
  readonly refused: (refusal: Refusal) => void
}

let current: TextSource | null = null

/** Runs what takes the text; edits begun before it returns come from the field. */
export function takenFrom<Value>(source: TextSource, take: () => Value): Value {
  const outer = current
  current = source
  try {
    return take()
  } finally {
    current = outer
  }
}

export function textSource(): TextSource | null {
  return current
}
