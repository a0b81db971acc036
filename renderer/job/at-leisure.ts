/** Work done bit by bit beside everything else the page does: in slices short enough that the hand never waits. */

/** Milliseconds of work between two looks at what the hand does. */
const SLICE = 8

function toldToMenders(fault: unknown): void {
  // oxlint-disable-next-line no-console -- for whoever mends it
  console.error(fault)
}

/** Begins after so many milliseconds of rest; answers with the way to stop. Work that cannot be done ends with `failed`. */
export function atLeisure<Found>(
  steps: Generator<undefined, Found>,
  rest: number,
  done: (found: Found) => void,
  failed: () => void = () => {},
): () => void {
  let timer = setTimeout(goOn, rest)
  function tried(): IteratorResult<undefined, Found> | null {
    try {
      return steps.next()
    } catch (fault) {
      toldToMenders(fault)
      failed()
      return null
    }
  }
  function goOn(): void {
    const until = performance.now() + SLICE
    do {
      const step = tried()
      if (step === null) return
      if (step.done === true) {
        done(step.value)
        return
      }
    } while (performance.now() < until)
    timer = setTimeout(goOn, 0)
  }
  return () => clearTimeout(timer)
}
