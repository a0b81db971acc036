/** Whether what a scan was asked still stands: what has changed since, told by kind. */
import { wishesMade } from '#core/light/light-wish.ts'
import type { ScanRequest } from '#core/scan/scan-request.ts'

export const CHANGES = ['ground', 'wishes', 'light', 'plan', 'shot', 'elevations'] as const
/** `plan`: subject, landmarks, bag or obstructions; `shot`: the spot's own frame, landmark or day, from which the scan set out. */
export type ScanChange = (typeof CHANGES)[number]

type RequestParts = Readonly<Record<Exclude<ScanChange, 'elevations'>, string>>

/** What counts of a request, each part as one text: an edit that is undone again has changed nothing. */
function partsOf({ shoot, spot, zone, parkings }: ScanRequest): RequestParts {
  const { stoppingGround, keepOuts, scanWishes, light, subject, landmarks, bag, crops, refraction, obstructions } =
    shoot
  const ground = stoppingGround.map(({ id, form, points, turn }) => [id, form, points, turn])
  const keep = keepOuts.map(({ form, points, width, whom, noCrossing }) => [form, points, width, whom, noCrossing])
  const { name: _subject, features: _features, ...body } = subject
  return {
    ground: JSON.stringify([ground, keep]),
    wishes: JSON.stringify([scanWishes, scanWishes.parking === null ? [] : parkings]),
    light: scanWishes.light === null || wishesMade(light).length === 0 ? '' : JSON.stringify(light),
    plan: JSON.stringify([body, subject.features, landmarks, bag, crops, refraction, obstructions, zone]),
    shot: JSON.stringify([spot.shot, spot.landmarkId, spot.when]),
  }
}

const partsBefore = new WeakMap<ScanRequest, RequestParts>()

function partsOnce(request: ScanRequest): RequestParts {
  const known = partsBefore.get(request) ?? partsOf(request)
  partsBefore.set(request, known)
  return known
}

/** In the order of CHANGES; empty while the answer is that of the question. */
export function changedSince(asked: ScanRequest, now: ScanRequest): ScanChange[] {
  const [before, after] = [partsOnce(asked), partsOnce(now)]
  return CHANGES.filter((change) =>
    change === 'elevations' ? (asked.terrain === null) !== (now.terrain === null) : before[change] !== after[change],
  )
}
