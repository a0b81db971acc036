/** The worker's side: one job of each kind at a time, a step of each in turn, and an ear for the page between the steps. */
import { messageOf } from '#core/message-of.ts'
import type { FromWorker, OfKind, Step, ToWorker } from './messages.ts'

interface Begun<Update extends OfKind> {
  readonly id: number
  readonly steps: Iterator<Step<Update>>
}

interface Outside<Job extends OfKind, Update extends OfKind> {
  readonly stepsOf: (job: Job) => Iterator<Step<Update>>
  readonly send: (message: FromWorker<Job, Update>) => void
  /** Calls back once, after waiting messages have been heard. */
  readonly later: (turn: () => void) => void
}

/** Returns the listener for the page's messages. */
export function runJobs<Job extends OfKind, Update extends OfKind>({
  stepsOf,
  send,
  later,
}: Outside<Job, Update>): (message: ToWorker<Job>) => void {
  const live = new Map<Job['kind'], Begun<Update>>()
  let waiting = false

  const goOn = (kind: Job['kind'], { id, steps }: Begun<Update>): void => {
    try {
      const next = steps.next()
      if (next.done === true) live.delete(kind)
      else send({ say: 'found', id, ...next.value })
    } catch (error) {
      live.delete(kind)
      send({ say: 'failed', id, kind, message: messageOf(error) })
    }
  }
  const soon = (): void => {
    if (waiting || live.size === 0) return
    waiting = true
    later(() => {
      waiting = false
      for (const [kind, begun] of live) goOn(kind, begun)
      soon()
    })
  }
  return (message) => {
    if (message.say === 'stop') {
      if (live.get(message.kind)?.id === message.id) live.delete(message.kind)
      return
    }
    const { id, job } = message
    try {
      live.set(job.kind, { id, steps: stepsOf(job) })
    } catch (error) {
      live.delete(job.kind)
      send({ say: 'failed', id, kind: job.kind, message: messageOf(error) })
    }
    soon()
  }
}

/** `later` of a worker: a message to itself comes after those that wait, and a timer would be held back to 4 ms. */
export function afterMessages(): (turn: () => void) => void {
  const { port1, port2 } = new MessageChannel()
  let turn: (() => void) | null = null
  port1.addEventListener('message', () => turn?.())
  port1.start()
  return (next) => {
    turn = next
    port2.postMessage(null)
  }
}
