/** A candidate as a spot of the shoot, and the light window about its instant. */
import type { Span } from '#core/light/crossing.ts'
import { dayWindows } from '#core/light/light-window.ts'
import { assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { type Plan, planOf } from '#core/plan/plan.ts'
import type { Spot } from '#core/record/spot.ts'
import { civilDayOf } from '#core/time/civil.ts'
import type { ScanRequest } from './scan-request.ts'
import type { Candidate } from './scan-found.ts'

/** The scan's spot moved to a candidate; of it assess() tells the same figures as the scan. */
export function spotOfCandidate({ spot, shoot }: Pick<ScanRequest, 'spot' | 'shoot'>, candidate: Candidate): Spot {
  const { at, heading, standpoint, lensHeight, focalLength, lensId, across, up, instant, met } = candidate
  const wish = shoot.scanWishes.subjectFill
  const filled = met.find(({ kind }) => kind === 'subjectFill')?.value ?? null
  return {
    ...spot,
    stop: { at, heading, elevation: null, slope: null, aspect: null },
    standpoint: { at: standpoint, lensHeight, elevation: null, slope: null, aspect: null },
    hold: 'focal-length',
    when: instant,
    shot: {
      ...spot.shot,
      focalLength,
      lensId,
      placement: { across, up },
      subjectFill: wish === null || filled === null ? spot.shot.subjectFill : { share: filled, axis: wish.axis },
    },
  }
}

export function planOfCandidate(request: ScanRequest, candidate: Candidate): Plan {
  return planOf(request.shoot, spotOfCandidate(request, candidate), request.terrain, request.pins)
}

/** Milliseconds beyond a window's end at which an instant still counts as its own: windows are exact to a second. */
const BESIDE = 1000

/**
 * When all light wishes hold about the candidate's instant, exact to a second; null when they don't hold then, or none are made. Over
 * ground it goes by the skylines, which are kept in steps of a quarter of a degree.
 */
export function candidateWindow(request: ScanRequest, candidate: Candidate): Span | null {
  const plan = planOfCandidate(request, candidate)
  const day = civilDayOf(candidate.instant, request.zone)
  const { common } = dayWindows(lightSceneOf(plan, assess(plan)), request.shoot.light, day, request.zone)
  const { instant } = candidate
  return common.find(({ from, until }) => instant >= from - BESIDE && instant <= until + BESIDE) ?? null
}
