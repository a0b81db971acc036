/** What is hoped of every picture: subject and landmark whole in the frame, the landmark not hidden, the subject sharp end to end. */
import { type Framing, LEAST_CUT } from '#core/frame/framing.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { type Condition, type CutSide, type How, cutOn } from './condition.ts'

/** Share of the landmark's height that it may lose before that counts, where nothing is wished. */
const SHOWN_SLACK = 0.05

const SIDES = [
  ['left', 'cutLeft'],
  ['right', 'cutRight'],
  ['top', 'cutTop'],
  ['bottom', 'cutBottom'],
] as const satisfies readonly (readonly [CutSide, keyof Framing])[]

/** How a thing is cut: by every side at which some of it is lost that can be told; null while it is whole. */
export function cutOf(framing: Framing): How | null {
  if (framing.whole) return null
  const most = Math.max(...SIDES.map(([, cut]) => framing[cut]))
  if (!(most > 0)) return 'behind-camera'
  return cutOn(SIDES.flatMap(([side, cut]) => (framing[cut] >= Math.min(LEAST_CUT, most) ? [side] : [])))
}

function subjectWhole({ subject }: Assessment): How | null {
  return subject === null ? 'nothing-framed' : cutOf(subject)
}

function landmarkWhole({ landmark, view }: Assessment): How | null {
  if (landmark === null) return view === null ? 'nothing-framed' : 'behind-camera'
  return cutOf(landmark)
}

function sharp({ sharp: found, problems }: Assessment): How | null {
  if (found === null) return 'nothing-framed'
  if (problems.includes('focus-too-near')) return 'focus-too-near'
  return found.endToEnd ? null : 'not-sharp'
}

/** The least share of the landmark that is to show: what is wished where that holds now, else a little less than shows now. */
function leastShown(plan: Plan, now: number): number {
  const demandLeast = plan.shoot.scanWishes.landmarkShown?.least ?? null
  return demandLeast !== null && now >= demandLeast ? demandLeast : now - SHOWN_SLACK
}

/** Those that make sense for a plan, whether they hold or not; the landmark's share only where it is known. */
export function pictureConditions(plan: Plan, now: Assessment): Condition[] {
  const shown = now.ground?.landmarkShown ?? null
  const least = shown === null ? null : leastShown(plan, shown)
  return [
    { kind: 'subject-whole', fails: ({ found }) => subjectWhole(found) },
    ...(plan.landmark === null
      ? []
      : [{ kind: 'landmark-whole', fails: ({ found }) => landmarkWhole(found) } satisfies Condition]),
    ...(least === null ? [] : [shownCondition(least)]),
    { kind: 'sharp', fails: ({ found }) => sharp(found) },
  ]
}

function shownCondition(least: number): Condition {
  return {
    kind: 'landmark-shown',
    fails: ({ found }) => {
      const there = found.ground?.landmarkShown ?? null
      if (there === null) return 'ground-unknown'
      return there >= least ? null : 'hidden'
    },
  }
}
