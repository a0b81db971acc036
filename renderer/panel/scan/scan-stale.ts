/** Whether what a scan was asked still stands: what has changed since, told by kind. */
import { wishesMade } from '#core/light/light-wish.ts'
import type { ScanAsk } from '#core/scan/scan-ask.ts'

export const CHANGES = ['ground', 'wishes', 'light', 'plan', 'shot', 'elevations'] as const
/** `plan`: subject, landmarks, bag or obstructions; `shot`: the spot's own frame, landmark or day, from which the scan set out. */
export type ScanChange = (typeof CHANGES)[number]

type Told = Readonly<Record<Exclude<ScanChange, 'elevations'>, string>>

/** What counts of an ask, each part as one text: an edit that is undone again has changed nothing. */
function toldOf({ shoot, spot, zone, parkings }: ScanAsk): Told {
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

const told = new WeakMap<ScanAsk, Told>()

function toldOnce(ask: ScanAsk): Told {
  const known = told.get(ask) ?? toldOf(ask)
  told.set(ask, known)
  return known
}

/** In the order of CHANGES; empty while the answer is that of the question. */
export function changedSince(asked: ScanAsk, now: ScanAsk): ScanChange[] {
  const [before, after] = [toldOnce(asked), toldOnce(now)]
  return CHANGES.filter((change) =>
    change === 'elevations' ? (asked.terrain === null) !== (now.terrain === null) : before[change] !== after[change],
  )
}
