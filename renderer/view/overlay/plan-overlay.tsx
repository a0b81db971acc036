/** The plan over the map: wedge, ring, sightline and the things, drawn from one computed drawing. */
import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { assessment, plan, ring } from '#renderer/state/plan/board-plan.ts'
import { landmarkName } from '#renderer/text/names.ts'
import { selectedThing } from '#renderer/state/session/navigation.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { dayBeads } from './day-hours.ts'
import { followDrags } from '#renderer/view/hand/drag.ts'
import { type PlanDrawing, drawPlan, isJoined, wedgeReach } from '#renderer/view/drawing/plan-drawing.ts'
import { DrawPreview } from './draw-preview.tsx'
import { ChosenDrawnHandles, DrawnMarks, KeepOutHatch } from './drawn-marks.tsx'
import type { HourLabel } from '#renderer/view/drawing/hour-ring.ts'
import { sunNow } from '#renderer/view/drawing/light-drawing.ts'
import {
  type ThingsLight,
  hourLabels,
  hourRing,
  nameLine,
  ringBoxes,
  thingsLight,
} from '#renderer/view/drawing/things-light.ts'
import { HourRing, LightRays, Shadows, SideStrokes } from '#renderer/view/drawing/light-marks.tsx'
import { OtherLandmarks } from './other-landmarks.tsx'
import { FirstEnd } from './first-end.tsx'
import { LoneLandmarks } from './lone-landmarks.tsx'
import { spokenToLandmark, spokenToSubject } from '#renderer/view/drawing/spoken-distance.ts'
import { mapView } from '#renderer/view/drawing/map-look.ts'
import {
  Hatch,
  HeadingHandle,
  LandmarkMark,
  PairMark,
  ParkingMark,
  StandpointMark,
  SubjectMark,
} from '#renderer/view/drawing/marks.tsx'
import { CornerMarks } from '#renderer/view/drawing/corner-marks.tsx'
import type { PlanView, Point } from '#renderer/view/drawing/plan-view.ts'
import { type RingDrawing, ringRaysGap } from '#renderer/view/drawing/ring-marks.ts'
import { ScanMarks, ScanScores } from './scan-marks.tsx'
import { figure } from '#renderer/text/path-text.ts'
import { heldGrip } from '#renderer/state/act/held.ts'
import { OnTheWay, ObstructionMarks } from './obstruction-marks.tsx'
import { type PlacedSightline, SightlineMark, placeSightline, plateBox } from '#renderer/view/drawing/sightline.tsx'
import { StandpointLineDrawing } from './standpoint-line.tsx'
import { KEY_STEP, followKeys } from '#renderer/view/hand/key-steps.ts'

const HATCH = 'hatch-map'
/** Made once: they never change. */
const HATCHES = (
  <defs>
    <Hatch id={HATCH} />
    <KeepOutHatch />
  </defs>
)

interface Drawn {
  readonly now: Plan
  readonly view: PlanView
  readonly reading: Assessment
  readonly drawing: PlanDrawing
  readonly joined: boolean
  readonly light: ThingsLight
  readonly ring: RingDrawing | null
  readonly labels: readonly HourLabel[]
  readonly sightline: PlacedSightline | null
}

let joinedBefore = false

const drawn = computed<Drawn | null>(() => {
  const now = plan.value
  const reading = assessment.value
  const view = mapView.value
  if (now === null || reading === null || view === null) return null
  // A group doesn't fall apart, nor two things grow together, under the hand that drags them.
  if (heldGrip.value === null) joinedBefore = isJoined(view, now)
  const drawing = drawPlan(now, reading, ring.value, view, wedgeReach(now))
  const round = hourRing(now, reading, drawing, dayBeads.value, view)
  const sightline = placeSightline(drawing, reading, view, ringBoxes(round))
  const plate = sightline?.plate ?? null
  return {
    now,
    view,
    reading,
    drawing,
    joined: joinedBefore,
    light: thingsLight(now, reading, drawing, sunNow(now, reading), view, !joinedBefore),
    ring: round,
    labels: round === null ? [] : hourLabels(round, reading, drawing, plate === null ? null : plateBox(plate), view),
    sightline,
  }
})

function Ground({ drawing, light }: Drawn) {
  const { wedge, ring: round } = drawing
  return (
    <>
      {wedge === null ? null : (
        <>
          <path class="wedge" d={wedge.area} />
          <path class="wedge-edge" d={wedge.left + wedge.right} />
        </>
      )}
      {round === null ? null : <path class="proportion-ring" d={round.line} />}
      <Shadows {...light} />
    </>
  )
}

function LandmarkParts({ drawing, reading, light }: Drawn) {
  const { landmark } = drawing
  if (landmark === null || reading.toLandmark === null) return null
  const chosen = selectedThing.value === 'landmark'
  return (
    <>
      <SideStrokes strokes={light.landmarkSides} />
      <LandmarkMark
        landmark={landmark}
        hatch={HATCH}
        name={mapWords.landmarkNamed(landmark.name, spokenToLandmark.value)}
        pressed={chosen}
      />
      <text class="landmark-name" x={figure(landmark.at.x)} y={figure(nameLine(landmark))}>
        {landmarkName(landmark)}
      </text>
      {chosen && landmark.size > 60 ? (
        <CornerMarks
          landmark={landmark}
          cornerName={(index, count) => mapWords.cornerNamed(index + 1, count)}
          edgeName={(index) => mapWords.edgeNamed(index + 1)}
        />
      ) : null}
    </>
  )
}

function Hours({ ring: round, labels, reading }: Drawn) {
  if (round === null) return null
  return (
    <>
      <LightRays at={round.middle} sun={reading.light.sun} gap={ringRaysGap(round)} />
      <HourRing ring={round} labels={labels} light={reading.light} />
    </>
  )
}

function Near({ drawing, joined, light }: Drawn) {
  const { subject, standpoint, aim } = drawing
  const apart = spokenToSubject.value
  const pressed = selectedThing.value
  if (joined) {
    const name = mapWords.pairNamed(apart)
    const chosen = pressed === 'subject' || pressed === 'standpoint'
    return <PairMark subject={subject} standpoint={standpoint} aim={aim} name={name} pressed={chosen} />
  }
  return (
    <>
      <SideStrokes strokes={light.subjectSides} />
      <SubjectMark subject={subject} name={mapWords.subjectNamed(apart)} pressed={pressed === 'subject'} />
      <HeadingHandle subject={subject} name={mapWords.headingNamed} />
      <StandpointMark
        at={standpoint}
        aim={aim}
        name={mapWords.standpointNamed(apart)}
        pressed={pressed === 'standpoint'}
      />
    </>
  )
}

export interface ThingsProps {
  readonly pointOf: (event: PointerEvent) => Point
}

export function Things({ pointOf }: ThingsProps) {
  const surface = useRef<SVGSVGElement>(null)
  useEffect(() => {
    const svg = surface.current
    if (svg === null) return undefined
    const view = (): PlanView => {
      const now = mapView.peek()
      if (now === null) throw new Error('a thing is dragged on a map that shows nothing')
      return now
    }
    const stopDrags = followDrags({ svg, where: 'map', view, pointOf })
    const stopKeys = followKeys(svg, KEY_STEP.map)
    return () => {
      stopDrags()
      stopKeys()
    }
  }, [pointOf])
  const shown = drawn.value
  return (
    <svg ref={surface} class="plan-things" role="group" aria-label={mapWords.things} width={1} height={1}>
      {HATCHES}
      <LoneLandmarks hatch={HATCH} />
      <FirstEnd />
      {shown === null ? null : (
        <>
          <Ground {...shown} />
          <DrawnMarks shoot={shown.now.shoot} view={shown.view} />
          <OtherLandmarks landmarks={shown.now.shoot.landmarks} chosen={shown.now.landmark?.id} view={shown.view} />
          <StandpointLineDrawing view={shown.view} />
          <ScanScores />
          <ObstructionMarks plan={shown.now} view={shown.view} found={shown.reading} />
          <Hours {...shown} />
          {shown.sightline === null ? null : <SightlineMark {...shown.sightline} />}
          {shown.drawing.parking === null ? null : (
            <ParkingMark at={shown.drawing.parking} name={mapWords.parkingNamed} />
          )}
          <OnTheWay view={shown.view} found={shown.reading} />
          <LandmarkParts {...shown} />
          <ChosenDrawnHandles shoot={shown.now.shoot} view={shown.view} />
          <ScanMarks />
          <Near {...shown} />
          <DrawPreview view={shown.view} />
        </>
      )}
    </svg>
  )
}
