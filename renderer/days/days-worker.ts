/** The worker of the days page: hears what is asked, does it in steps, sends what it finds. */
import type { ToWorker } from './job.ts'
import { runJobs } from './run-jobs.ts'
import { buffersOf, stepsOf } from './work.ts'

/** A message to itself comes after those that wait; a timer would be held back to 4 ms. */
const { port1, port2 } = new MessageChannel()
let turn: (() => void) | null = null
port1.addEventListener('message', () => turn?.())
port1.start()

const hear = runJobs({
  stepsOf,
  send: (message) =>
    postMessage(message, { transfer: message.say === 'found' ? (buffersOf(message.update) as ArrayBuffer[]) : [] }),
  later: (next) => {
    turn = next
    port2.postMessage(null)
  },
})

addEventListener('message', (event: MessageEvent<ToWorker>) => hear(event.data))
