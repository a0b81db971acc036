/** What is begun and is no edit yet: a field's text, a thing in the hand. Each says how it ends when something else is about to act. */

const endings = new Set<() => void>()

/** Takes note of something begun; `end` makes it an edit, or leaves it where it can't be one. Returns what forgets it. */
export function beginUnfinished(end: () => void): () => void {
  // A wrapper of its own: the same function may be begun twice.
  const ending = (): void => end()
  endings.add(ending)
  return () => void endings.delete(ending)
}

/** To be called by whatever acts on more than its own field: undo, commands, another page, leaving. */
export function settleUnfinished(): void {
  // Ends come off the set while it is gone through; what one of them begins again is not its turn.
  for (const end of Array.from(endings)) end()
}

/** Whether something could not be brought to an end: a text that can't be taken as it stands. */
export function somethingUnfinished(): boolean {
  return endings.size > 0
}
