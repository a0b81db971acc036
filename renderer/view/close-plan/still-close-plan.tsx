/** The close plan as a still drawing for paper: subject and standpoint in true size, with wedge, sharp zone, light and distances. */
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import type { UnitSystem } from '#core/units/length.ts'
import { figure } from '#renderer/text/path-text.ts'
import { raysBox, sunNow } from '#renderer/view/drawing/light-drawing.ts'
import { LightRays, SideStrokes } from '#renderer/view/drawing/light-marks.tsx'
import { Hatch, KITE, LandmarkShape } from '#renderer/view/drawing/marks.tsx'
import { drawPlan, inSight } from '#renderer/view/drawing/plan-drawing.ts'
import { thingsLight } from '#renderer/view/drawing/things-light.ts'
import { North, StillScale } from '#renderer/view/still-map/scale-and-north.tsx'
import { frameView, nextFrame } from './close-frame.ts'
import { CloseLabel } from './close-label.tsx'
import { placeLabels } from './close-labels.ts'
import { Grid, Lines } from './close-lines.tsx'
import { raysGap } from './close-state.ts'
import { closeTexts } from './close-texts.ts'
import './still-close-plan.css'

interface StillClosePlanProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly width: number
  readonly height: number
  readonly units: UnitSystem
  readonly label: string
}

const HATCH = 'hatch-still-close'
/** No title lies over a still plan. */
const NO_HEAD = 0

export function StillClosePlan({ plan, assessment, width, height, units, label }: StillClosePlanProps) {
  const size = { width, height }
  const frame = nextFrame(plan, size, null)
  const view = frameView(frame, size)
  const drawing = drawPlan(plan, assessment, null, view, frame.across * 3)
  const light = thingsLight(plan, assessment, drawing, sunNow(plan, assessment), view, true)
  const { subject, standpoint, landmark, aim } = drawing
  const { sun } = assessment.light
  const gap = raysGap(drawing, sun.azimuth)
  const placed = placeLabels(
    drawing,
    closeTexts(assessment, plan.landmark, units),
    view,
    [
      { left: width - 36, top: 0, right: width, bottom: 46 },
      { left: width * 0.68, top: height - 34, right: width, bottom: height },
      ...(sun.up ? [raysBox(subject.at, sun.azimuth, gap)] : []),
    ],
    NO_HEAD,
  )
  return (
    <svg
      class="still-close"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={label}
    >
      <defs>
        <Hatch id={HATCH} />
      </defs>
      <rect class="still-close-paper" width={width} height={height} />
      <Grid across={frame.across} width={width} height={height} />
      <Lines drawing={drawing} light={light} view={view} head={NO_HEAD} />
      {landmark === null || !inSight(landmark.box, view) ? null : <LandmarkShape landmark={landmark} hatch={HATCH} />}
      <LightRays at={subject.at} sun={sun} gap={gap} />
      <SideStrokes strokes={light.subjectSides} />
      <path class="subject-body" d={subject.body + subject.notch} />
      <path
        class="standpoint-kite"
        transform={`translate(${figure(standpoint.x)},${figure(standpoint.y)}) rotate(${figure(aim)})`}
        d={KITE}
      />
      <CloseLabel label={placed.sharp} kind="quiet" />
      <CloseLabel label={placed.landmark} kind="landmark" />
      <CloseLabel label={placed.distance} kind="ink" />
      <StillScale view={view} centre={frame.middle} width={width} height={height} units={units} />
      <North width={width} />
    </svg>
  )
}
