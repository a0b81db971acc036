/** The close plan's words: how far the subject is, what is sharp, the ring, and how far the landmark is. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Landmark } from '#core/scene/landmark.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { metres } from '#renderer/text/figure.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import type { LabelTexts } from './close-labels.ts'

/** Between a figure and its unit. */
const GAP = '\u{a0}'

function sharpText({ sharp }: Assessment, units: UnitSystem): string | null {
  if (sharp === null) return null
  const near = metres(sharp.limits.near, units)
  if (sharp.limits.far === null) return mapWords.sharpFrom(near)
  const far = metres(sharp.limits.far, units)
  const [size, unit] = near.split(GAP)
  // Two figures of one unit name it once: 6.3–8.6 m.
  return mapWords.sharpFromTo(unit === far.split(GAP)[1] ? (size ?? near) : near, far)
}

export function closeTexts(reading: Assessment, landmark: Landmark | null, units: UnitSystem): LabelTexts {
  const to = reading.toLandmark
  return {
    distance: metres(reading.toSubject.distance, units),
    sharp: sharpText(reading, units),
    ring: mapWords.proportionRing,
    landmark: to === null ? null : mapWords.toLandmark(landmarkName(landmark), metres(to.distance, units)),
  }
}
