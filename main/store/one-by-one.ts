/** Work on one thing, piece by piece: each begins once those asked for before it have ended, well or ill. */

type OneByOne = <Value>(work: () => Promise<Value>) => Promise<Value>

/** No piece may ask for another and wait for it. */
export function oneByOne(): OneByOne {
  let before: Promise<unknown> = Promise.resolve()
  return async (work) => {
    const piece = before.then(work)
    before = piece.catch(() => undefined)
    return piece
  }
}
