/** Work done bit by bit beside everything else the page does: in slices short enough that the hand never waits. */

/** Milliseconds of work between two looks at what the hand does. */
const SLICE = 8

/** Begins after so many milliseconds of rest; answers with the way to stop. */
export function atLeisure<Found>(
  steps: Generator<undefined, Found>,
  rest: number,
  done: (found: Found) => void,
): () => void {
  let timer = setTimeout(goOn, rest)
  function goOn(): void {
    const until = performance.now() + SLICE
    do {
      const step = steps.next()
      if (step.done === true) {
        done(step.value)
        return
      }
    } while (performance.now() < until)
    timer = setTimeout(goOn, 0)
  }
  return () => clearTimeout(timer)
}
