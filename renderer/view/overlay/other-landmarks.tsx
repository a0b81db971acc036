/** The plan's other landmarks, drawn quietly. */
import type { Landmark } from '#core/scene/landmark.ts'
import { steadyPart } from '#renderer/part/steady-part.tsx'
import { landmarkName } from '#renderer/text/names.ts'
import { figure } from '#renderer/text/path-text.ts'
import { drawLandmark } from '#renderer/view/drawing/plan-drawing.ts'
import type { PlanView } from '#renderer/view/drawing/plan-view.ts'

interface OthersProps {
  readonly landmarks: readonly Landmark[]
  readonly chosen: string | undefined
  readonly view: PlanView
}

export const OtherLandmarks = steadyPart(function otherLandmarks({ landmarks, chosen, view }: OthersProps) {
  return (
    <g class="other-landmarks">
      {landmarks.map((landmark) => {
        const shape = landmark.id === chosen ? null : drawLandmark(landmark, view)
        return shape === null ? null : (
          <g key={landmark.id}>
            <path d={shape.outline} />
            {shape.size < 8 ? <circle cx={figure(shape.at.x)} cy={figure(shape.at.y)} r={4} /> : null}
            <text x={figure(shape.at.x)} y={figure(Math.min(shape.box.top, shape.at.y - 4) - 6)}>
              {landmarkName(landmark)}
            </text>
          </g>
        )
      })}
    </g>
  )
})
