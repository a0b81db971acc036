/** What every wished crop shows of subject and landmark, the camera lying and upright. */
import type { Assessment } from '#core/plan/assess.ts'
import type { CropReading } from '#core/plan/crop-readings.ts'
import type { Plan } from '#core/plan/plan.ts'
import { Unknown } from '#renderer/part/reading.tsx'
import { cropName, landmarkName, subjectName } from '#renderer/text/names.ts'
import { words } from '#renderer/words/en.ts'
import { cutText, fillText } from '#renderer/text/framing-text.ts'

function CropRow({ plan, reading }: { plan: Plan; reading: CropReading }) {
  const { subjectFill, landmarkFill } = plan.spot.shot
  const { subject, landmark } = reading
  return (
    <tr>
      <th scope="row">
        {cropName(reading.crop)}
        <br />
        <small>{words.answers.orientation[reading.orientation]}</small>
      </th>
      <td>
        {fillText(subject, subjectFill.axis)}
        <br />
        <small>{cutText(subject)}</small>
      </td>
      <td>
        {landmark === null ? <Unknown /> : fillText(landmark, landmarkFill.axis)}
        <br />
        {landmark === null ? null : <small>{cutText(landmark)}</small>}
      </td>
    </tr>
  )
}

export function CropTable({ plan, found }: { plan: Plan; found: Assessment }) {
  const { crops } = words.answers
  if (plan.shoot.crops.length === 0) return <p class="hint">{crops.none}</p>
  return (
    <table class="figures">
      <caption class="unseen">{crops.caption}</caption>
      <thead>
        <tr>
          <th scope="col">{crops.crop}</th>
          <th scope="col">{subjectName(plan.shoot.subject)}</th>
          <th scope="col">{landmarkName(plan.landmark)}</th>
        </tr>
      </thead>
      <tbody>
        {found.crops.map((reading) => (
          <CropRow
            key={`${reading.crop.wide}:${reading.crop.high}-${reading.orientation}`}
            plan={plan}
            reading={reading}
          />
        ))}
      </tbody>
    </table>
  )
}
