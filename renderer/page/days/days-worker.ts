/** The worker of the days page: hears what is asked, does it in steps, sends what it finds. */
import type { ToWorker } from '#renderer/job/messages.ts'
import { afterMessages, runJobs } from '#renderer/job/run-jobs.ts'
import type { Job, Update } from './days-job.ts'
import { buffersOf, daysSteps } from './days-work.ts'

const hear = runJobs<Job, Update>({
  stepsOf: daysSteps,
  send: (message) =>
    postMessage(message, { transfer: message.say === 'found' ? (buffersOf(message.update) as ArrayBuffer[]) : [] }),
  later: afterMessages(),
})

addEventListener('message', (event: MessageEvent<ToWorker<Job>>) => hear(event.data))
