/** Distance and true bearing of each sightline, and how far off its side the subject is seen. */
import type { Assessment, SightlineReading } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { bearing, degreesText, metres } from '#renderer/text/figure.ts'
import { Reading, Readings } from '#renderer/part/reading.tsx'
import { landmarkName, subjectName } from '#renderer/text/names.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { words } from '#renderer/words/en.ts'

function lineText(line: SightlineReading): string {
  const parts = [metres(line.distance, settings.value.units)]
  if (line.bearing !== null) parts.push(bearing(line.bearing))
  if (line.altitude !== null) parts.push(`${line.altitude < -0.05 ? '↓' : '↑'} ${degreesText(Math.abs(line.altitude))}`)
  return parts.join(' · ')
}

export function Sightlines({ plan, found }: { plan: Plan; found: Assessment }) {
  const { sightlines } = words.answers
  const subject = subjectName(plan.shoot.subject)
  const landmark = landmarkName(plan.landmark)
  const { toLandmark, subjectToLandmark, offSide } = found
  return (
    <Readings>
      <Reading name={sightlines.cameraSubject(subject)} value={lineText(found.toSubject)} />
      {toLandmark === null ? null : <Reading name={sightlines.cameraLandmark(landmark)} value={lineText(toLandmark)} />}
      {subjectToLandmark === null ? null : (
        <Reading name={sightlines.subjectLandmark(subject, landmark)} value={lineText(subjectToLandmark)} />
      )}
      <Reading
        name={sightlines.offSide}
        value={offSide === null ? null : offSide < 0.05 ? sightlines.squareOn : degreesText(offSide)}
      />
    </Readings>
  )
}
