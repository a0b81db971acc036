/** Parts of the legend's sentences that hang on the plan and on how far the answer is. */
import type { Plan } from '#core/plan/plan.ts'
import type { AreaState } from '#renderer/view/ground/keep-area.ts'
import { share } from '#renderer/text/figure.ts'
import { groundMapWords as say } from '#renderer/words/en-ground-map.ts'

/** Which share of the landmark, in words. */
export function shareWords(wanted: number): string {
  if (wanted <= 0.01) return say.anyShare
  return wanted >= 1 ? say.wholeShare : say.atLeast(share(wanted))
}

/** The landmark as far as its showing is told: a long or broad one by its middle, a summit by its top. */
export function landmarkWords({ landmark }: Plan): string {
  const name = landmark === null || landmark.name.trim() === '' ? say.theLandmark : landmark.name
  if (landmark?.kind === 'summit') return say.top(name)
  return landmark?.kind === 'upright' || landmark === null ? name : say.atMiddle(name)
}

/** How far the answer is: the word that tells a preview from the exact one. */
export function stateWords({ shown, share: done, fault }: AreaState): string {
  if (fault !== null) return say.failed(fault)
  const percent = share(Math.floor((done ?? 0) * 100) / 100)
  if (shown === null) return say.working(percent)
  if (shown.of.kind === 'shade') return done === null ? say.shadeDone : say.working(percent)
  if (!shown.preview) return say.exact
  return done === null ? say.preview : say.settling(percent)
}
