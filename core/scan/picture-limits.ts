/** What makes a picture no picture at all, whatever is demanded: the subject cut, or the landmark before it. */
import type { Extent, Framing } from '#core/frame/framing.ts'
import { landmarkDepth } from '#core/plan/assess.ts'

/** Whether the subject stands whole in the frame, and the landmark, where it is in the frame, behind its nearest point. */
export function framesBoth(
  subject: Framing,
  subjectExtent: Extent,
  landmark: Framing | null,
  landmarkExtent: Extent | null,
): boolean {
  if (!subject.whole) return false
  if (landmark === null || landmarkExtent === null || landmarkExtent.partlyBehind || !landmark.inFrame) return true
  return landmarkDepth(landmarkExtent) >= subjectExtent.near
}
