/** The scan's work in steps of some milliseconds, so that a worker hears the page between them. */
import { exhaustive } from '#core/exhaustive.ts'
import type { ElevationGrid } from '#core/ground/elevation-grid.ts'
import { candidateWindow } from '#core/scan/candidate-spot.ts'
import { polish } from '#core/scan/polish.ts'
import type { ScanAsk } from '#core/scan/scan-ask.ts'
import { scanPart } from '#core/scan/scan.ts'
import { whyNonePart } from '#core/scan/why-none.ts'
import type { Step as JobStep } from '#renderer/job/messages.ts'
import type { LookJob, PolishJob, ScanJob, ScanUpdate, WhyJob } from './scan-job.ts'

type Step = JobStep<ScanUpdate>

export function stepsOf(job: ScanJob, terrain: ElevationGrid | null): Iterator<Step> {
  const ask = { ...job.ask, terrain }
  switch (job.kind) {
    case 'look':
      return lookSteps(ask, job)
    case 'polish':
      return polishSteps(ask, job)
    case 'why':
      return whySteps(ask, job)
    default:
      return exhaustive(job)
  }
}

/** The last step says that all is done, also of a part without any place. */
function* lookSteps(ask: ScanAsk, { part, of }: LookJob): Generator<Step> {
  for (const { share, found } of scanPart(ask, part, of))
    yield { share: Math.min(share, 0.999), update: { kind: 'look', found } }
  yield { share: 1, update: { kind: 'look', found: [] } }
}

function* polishSteps(ask: ScanAsk, job: PolishJob): Generator<Step> {
  const candidate = polish(ask, job.candidate)
  yield { share: 1, update: { kind: 'polish', candidate, window: candidateWindow(ask, candidate) } }
}

function* whySteps(ask: ScanAsk, { part, of }: WhyJob): Generator<Step> {
  for (const step of whyNonePart(ask, part, of)) yield { share: step.share, update: { kind: 'why', part: step.part } }
}
