/** A candidate judged by the plan it makes: its demands as assess() tells them, its score, and the limits that leave it out. */
import { sunAt } from '#core/light/sky.ts'
import { type Assessment, assess } from '#core/plan/assess.ts'
import { lightSceneOf } from '#core/plan/day-light.ts'
import { skylinesToward } from '#core/plan/plan-skylines.ts'
import { planOfCandidate } from './candidate-spot.ts'
import { type MeasuredDemand, clearSpace, measureDemands } from './demands.ts'
import { type KeptOutGround, cameraKeptOut, subjectKeptOut } from './kept-out.ts'
import { framesBoth } from './picture-limits.ts'
import type { ScanRequest } from './scan-request.ts'
import type { Candidate, ScanLimit } from './scan-found.ts'
import { meets, scoreOf } from './score.ts'

export interface JudgedCandidate {
  readonly measured: readonly MeasuredDemand[]
  readonly score: number
  readonly limits: readonly ScanLimit[]
  /** Share of the frame's side that is clear of the subject at the tightest border; null when nothing is framed. */
  readonly subjectClear: number | null
}

/** The limits of a picture as assessed; keep-outs are asked by themselves. */
function limitsOf({ lens, problems, subject, subjectExtent, landmark, landmarkExtent }: Assessment): ScanLimit[] {
  const limits: ScanLimit[] = []
  if (lens === null || !lens.reaches) limits.push('lens')
  if (problems.includes('focus-too-near')) limits.push('closest-focus')
  if (subject === null || subjectExtent === null || !framesBoth(subject, subjectExtent, landmark, landmarkExtent))
    limits.push('framing')
  return limits
}

/** `out` are the keep-outs of the scan. */
export function judge(request: ScanRequest, out: KeptOutGround, candidate: Candidate): JudgedCandidate {
  const plan = planOfCandidate(request, candidate)
  const found = assess(plan)
  const { azimuth } = sunAt(candidate.at, candidate.instant)
  const scene = lightSceneOf(plan, found, skylinesToward(plan, found.levels, azimuth))
  const measured = measureDemands(plan, found, scene, request.parkings, request.zone)
  const limits = limitsOf(found)
  if (subjectKeptOut(out, candidate.at) || cameraKeptOut(out, candidate.at, candidate.standpoint))
    limits.push('keep-out')
  const subjectClear = found.subject === null ? null : clearSpace(found.subject)
  return { measured, score: scoreOf(measured), limits, subjectClear }
}

/** Whether all musts are met and no limit leaves it out. */
export function isGood({ measured, limits }: JudgedCandidate): boolean {
  return limits.length === 0 && measured.every(({ must, margin }) => !must || meets(margin))
}

/** Room below which a picture is tight: so much clear beside the subject, and so much margin of a must or of the light. */
const ROOM_BESIDE = 0.02
const ROOM_WITHIN = 0.1

/** What is tight where it is met at all: for each must, for the light and for the frame's border, 1 where there is room enough. */
function roomsOf({ measured, subjectClear }: JudgedCandidate): number[] {
  return [
    (subjectClear ?? 0) / ROOM_BESIDE,
    ...measured.filter(({ kind, must }) => must || kind === 'light').map(({ margin }) => margin / ROOM_WITHIN),
  ]
}

/** Whether none of them is tighter than in the other, or has room all the same: nobody stands to the centimetre on the day. */
export function keepsRoom(judged: JudgedCandidate, than: JudgedCandidate): boolean {
  const before = roomsOf(than)
  return roomsOf(judged).every((room, index) => room >= Math.min(1, before[index] ?? 1))
}
