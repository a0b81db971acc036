/** Turns at one thing: each piece of work on it begins once those asked for before it have ended, well or ill. */

type Turns = <Value>(work: () => Promise<Value>) => Promise<Value>

/** No work may ask for a turn of its own and wait for it. */
export function makeTurns(): Turns {
  let before: Promise<unknown> = Promise.resolve()
  return async (work) => {
    const turn = before.then(work)
    before = turn.catch(() => undefined)
    return turn
  }
}
