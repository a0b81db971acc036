/** The worker's side where only the newest request counts: one at a time, and of those that wait the last, since the others would be seen by nobody. */
import { messageOf } from '#core/message-of.ts'

interface Turned {
  /** Grows with every request; an answer names the one it is to. */
  readonly turn: number
}

interface Doing<Request extends Turned> {
  /** Answers by itself. */
  readonly work: (request: Request) => void | Promise<void>
  readonly failed: (answer: { readonly say: 'failed'; readonly turn: number; readonly message: string }) => void
  /** Calls back once, after waiting messages have been heard. */
  readonly later: (turn: () => void) => void
}

/** Returns the listener for requests. */
export function newestOnly<Request extends Turned>({
  work,
  failed,
  later,
}: Doing<Request>): (request: Request) => void {
  let waiting: Request | null = null
  let atWork = false

  async function workOnNewest(): Promise<void> {
    const request = waiting
    waiting = null
    if (request === null) return
    atWork = true
    try {
      await work(request)
    } catch (error) {
      failed({ say: 'failed', turn: request.turn, message: messageOf(error) })
    }
    atWork = false
    if (waiting !== null) soon()
  }
  const soon = (): void => later(() => void workOnNewest())

  return (request) => {
    if (waiting === null && !atWork) soon()
    waiting = request
  }
}
