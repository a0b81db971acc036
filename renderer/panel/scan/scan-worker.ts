/** A worker of the scan: keeps the elevations it was handed, does its jobs in steps, sends what it finds. */
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import type { ToWorker } from '#renderer/job/messages.ts'
import { afterMessages, runJobs } from '#renderer/job/run-jobs.ts'
import { ringKeeper } from '#renderer/job/sent-rings.ts'
import type { GroundMessage, ScanJob, ScanUpdate } from './scan-job.ts'
import { scanSteps } from './scan-work.ts'

let terrain: ElevationGrid | null = null
const groundOf = ringKeeper()

const hear = runJobs<ScanJob, ScanUpdate>({
  stepsOf: (job) => scanSteps(job, terrain),
  send: (message) => postMessage(message),
  later: afterMessages(),
})

addEventListener('message', ({ data }: MessageEvent<ToWorker<ScanJob> | GroundMessage>) => {
  if (data.say === 'ground') terrain = groundOf(data.rings)
  else hear(data)
})
