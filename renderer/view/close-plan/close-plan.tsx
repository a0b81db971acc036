/** The close plan in the map's corner: subject and standpoint in true size, with wedge, sharp zone, ring and distances. */
import { useEffect, useRef } from 'preact/hooks'
import { followDrags } from '#renderer/view/hand/drag.ts'
import { inSight } from '#renderer/view/drawing/plan-drawing.ts'
import { raysBox } from '#renderer/view/drawing/light-drawing.ts'
import { LightRays, SideStrokes } from '#renderer/view/drawing/light-marks.tsx'
import { Hatch, HeadingHandle, LandmarkMark, StandpointMark, SubjectMark } from '#renderer/view/drawing/marks.tsx'
import { spokenToLandmark, spokenToSubject } from '#renderer/view/drawing/spoken-distance.ts'
import type { PlanView } from '#renderer/view/drawing/plan-view.ts'
import { KEY_STEP, followKeys } from '#renderer/view/hand/key-steps.ts'
import { metres } from '#renderer/text/figure.ts'
import { plan } from '#renderer/state/plan/board-plan.ts'
import { selectedThing } from '#renderer/state/session/navigation.ts'
import { settings } from '#renderer/state/library/settings.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { CloseHead, HEAD_HEIGHT } from './close-head.tsx'
import { CloseLabel } from './close-label.tsx'
import { placeLabels } from './close-labels.ts'
import { closeTexts } from './close-texts.ts'
import { Grid, Lines } from './close-lines.tsx'
import { type Close, close, size } from './close-state.ts'

const HATCH = 'hatch-close'
/** Made once: they never change. */
const HATCHES = (
  <defs>
    <Hatch id={HATCH} />
  </defs>
)

function CloseThings(shown: Close) {
  const { drawing, light, reading, view, raysGap } = shown
  const { subject, landmark } = drawing
  const far = reading.toLandmark
  const { sun } = reading.light
  const placed = placeLabels(drawing, closeTexts(reading, plan.value?.landmark ?? null, settings.value.units), view, [
    { left: 0, top: 0, right: view.box.right, bottom: HEAD_HEIGHT },
    ...(sun.up ? [raysBox(subject.at, sun.azimuth, raysGap)] : []),
  ])
  return (
    <>
      <Lines {...shown} />
      {landmark === null || far === null || !inSight(landmark.box, view) ? null : (
        <>
          <SideStrokes strokes={light.landmarkSides} />
          <LandmarkMark
            landmark={landmark}
            hatch={HATCH}
            name={mapWords.landmarkNamed(landmark.name, spokenToLandmark.value)}
            pressed={selectedThing.value === 'landmark'}
          />
        </>
      )}
      <LightRays at={subject.at} sun={sun} gap={raysGap} />
      <SideStrokes strokes={light.subjectSides} />
      <SubjectMark
        subject={subject}
        name={mapWords.subjectNamed(spokenToSubject.value)}
        pressed={selectedThing.value === 'subject'}
      />
      <HeadingHandle subject={subject} name={mapWords.headingNamed} />
      <StandpointMark
        at={drawing.standpoint}
        aim={drawing.aim}
        name={mapWords.standpointNamed(spokenToSubject.value)}
        pressed={selectedThing.value === 'standpoint'}
      />
      <CloseLabel label={placed.ring} kind="quiet" />
      <CloseLabel label={placed.sharp} kind="quiet" />
      <CloseLabel label={placed.landmark} kind="landmark" />
      <CloseLabel label={placed.distance} kind="ink" />
    </>
  )
}

function Surface(shown: Close) {
  const surface = useRef<SVGSVGElement>(null)
  useEffect(() => {
    const svg = surface.current
    if (svg === null) return undefined
    const view = (): PlanView => {
      const now = close.peek()
      if (now === null) throw new Error('a thing is dragged in a close plan that shows nothing')
      return now.view
    }
    const pointOf = (event: PointerEvent): { x: number; y: number } => {
      const box = svg.getBoundingClientRect()
      return { x: event.clientX - box.left, y: event.clientY - box.top }
    }
    const stopDrags = followDrags({ svg, where: 'close', view, pointOf })
    const stopKeys = followKeys(svg, KEY_STEP.close)
    return () => {
      stopDrags()
      stopKeys()
    }
  }, [])
  const { width, height } = size.value
  return (
    <svg
      ref={surface}
      class="close-surface"
      role="group"
      aria-label={mapWords.closePlanThings}
      width={width}
      height={height}
    >
      {HATCHES}
      <Grid across={shown.frame.across} width={width} height={height} />
      <CloseThings {...shown} />
    </svg>
  )
}

export function ClosePlan() {
  if (plan.value === null) return null
  const shown = close.value
  const across = shown === null ? null : metres(shown.frame.across, settings.value.units)
  const { width, height } = size.value
  return (
    <aside
      class="map-over close-plan"
      aria-label={mapWords.closePlan}
      style={{ width: `${width}px`, height: `${height}px` }}
    >
      {shown === null ? null : <Surface {...shown} />}
      <CloseHead title={across === null ? mapWords.closePlan : mapWords.closePlanAcross(across)} />
    </aside>
  )
}
