/** The worker of the ground: keeps the elevations handed over, does what is asked on them in steps, sends what it finds. */
import { afterMessages, runJobs } from '#renderer/job/run-jobs.ts'
import type { GroundJob, GroundUpdate, ToGroundWorker } from './ground-job.ts'
import { groundBuffers, groundWork } from './ground-work.ts'

const { take, stepsOf } = groundWork()

const hear = runJobs<GroundJob, GroundUpdate>({
  stepsOf,
  send: (message) =>
    postMessage(message, {
      transfer: message.say === 'found' ? (groundBuffers(message.update) as ArrayBuffer[]) : [],
    }),
  later: afterMessages(),
})

addEventListener('message', (event: MessageEvent<ToGroundWorker>) => {
  if (event.data.say === 'ground') take(event.data)
  else hear(event.data)
})
