/** The scan's work in steps of some milliseconds, so that a worker hears the page between them. */
import { exhaustive } from '#core/exhaustive.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { candidateWindow } from '#core/scan/candidate-spot.ts'
import { polish } from '#core/scan/polish.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'
import { scanPart } from '#core/scan/scan.ts'
import { whyNonePart } from '#core/scan/why-none.ts'
import type { Step as JobStep } from '#renderer/job/messages.ts'
import type { LookJob, PolishJob, ScanJob, ScanUpdate, WhyJob } from './scan-job.ts'

type Step = JobStep<ScanUpdate>

export function scanSteps(job: ScanJob, terrain: ElevationGrid | null): Iterator<Step> {
  const request = { ...job.request, terrain }
  switch (job.kind) {
    case 'look':
      return lookSteps(request, job)
    case 'polish':
      return polishSteps(request, job)
    case 'why':
      return whySteps(request, job)
    default:
      return exhaustive(job)
  }
}

/** The last step says that all is done, also of a part without any place. */
function* lookSteps(request: ScanRequest, { part, of }: LookJob): Generator<Step> {
  for (const { share, found } of scanPart(request, part, of))
    yield { share: Math.min(share, 0.999), update: { kind: 'look', found } }
  yield { share: 1, update: { kind: 'look', found: [] } }
}

function* polishSteps(request: ScanRequest, job: PolishJob): Generator<Step> {
  const candidate = polish(request, job.candidate)
  yield { share: 1, update: { kind: 'polish', candidate, window: candidateWindow(request, candidate) } }
}

function* whySteps(request: ScanRequest, { part, of }: WhyJob): Generator<Step> {
  for (const step of whyNonePart(request, part, of))
    yield { share: step.share, update: { kind: 'why', part: step.part } }
}
