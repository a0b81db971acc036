/** The plan over the map: wedge, ring, sightline and the things, drawn from one computed drawing. */
import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { bearing, metres } from '#renderer/part/figure.ts'
import { assessment, plan, ring } from '#renderer/state/derived.ts'
import { selected } from '#renderer/state/page.ts'
import { settings } from '#renderer/state/settings.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { coveredBoxes } from './covered.ts'
import { followDrags } from './drag.ts'
import { type LandmarkDrawing, type PlanDrawing, drawLandmark, drawPlan, isJoined, wedgeReach } from './drawing.ts'
import { mapView } from './map-look.ts'
import {
  CornerMarks,
  Hatch,
  HeadingHandle,
  LandmarkMark,
  PairMark,
  ParkingMark,
  Plate,
  StandpointMark,
  SubjectMark,
} from './marks.tsx'
import type { Box, PlanView, Point } from './plan-view.ts'
import { clipSegment, figure, inset, linePath, placeLabel, textWidth } from './screen-line.ts'
import { held } from './settle.ts'
import { followKeys } from './walk.ts'

const HATCH = 'hatch-map'
const LABEL_SIZE = 13
/** Metres that an arrow key moves a thing on the map. */
const MAP_STEP = 1

interface Drawn {
  readonly now: Plan
  readonly view: PlanView
  readonly reading: Assessment
  readonly drawing: PlanDrawing
  readonly joined: boolean
}

let joinedBefore = false

const drawn = computed<Drawn | null>(() => {
  const now = plan.value
  const reading = assessment.value
  const view = mapView.value
  if (now === null || reading === null || view === null) return null
  // A group doesn't fall apart, nor two things grow together, under the hand that drags them.
  if (held.value === null) joinedBefore = isJoined(view, now)
  const drawing = drawPlan(now, reading, ring.value, view, wedgeReach(now))
  return { now, view, reading, drawing, joined: joinedBefore }
})

/** The plan's other landmarks, drawn quietly. */
function OtherLandmarks({ now, view }: Drawn) {
  return (
    <g class="other-landmarks">
      {now.shoot.landmarks.map((landmark) => {
        const shape = landmark.id === now.landmark?.id ? null : drawLandmark(landmark, view)
        return shape === null ? null : (
          <g key={landmark.id}>
            <path d={shape.outline} />
            {shape.size < 8 ? <circle cx={figure(shape.at.x)} cy={figure(shape.at.y)} r={4} /> : null}
            <text x={figure(shape.at.x)} y={figure(Math.min(shape.box.top, shape.at.y - 4) - 6)}>
              {landmark.name}
            </text>
          </g>
        )
      })}
    </g>
  )
}

function midway(from: Point, to: Point, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
}

function around(at: Point, by: number): Box {
  return { left: at.x - by, right: at.x + by, top: at.y - by, bottom: at.y + by }
}

/** The dotted line to the landmark with its distance and bearing, wherever a stretch of it is in sight. */
function Sightline({ drawing, reading, view }: Drawn) {
  const { landmark, standpoint } = drawing
  const to = reading.toLandmark
  if (landmark === null || to === null) return null
  const seen = clipSegment(standpoint, landmark.at, inset(view.box, -10))
  if (seen === null) return null
  const distance = metres(to.distance, settings.value.units)
  const text = to.bearing === null ? distance : mapWords.sightline(distance, bearing(to.bearing))
  const width = textWidth(text, LABEL_SIZE) + 22
  const shares = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.82]
  const at = placeLabel(
    shares.map((share) => midway(seen[0], seen[1], share)),
    { width, height: 21 },
    inset(view.box, 6),
    [...coveredBoxes(view.box), around(drawing.subject.at, 24), around(standpoint, 18), around(landmark.at, 12)],
  )
  return (
    <>
      <path class="sightline" d={linePath(seen, false)} />
      {at === null ? null : <Plate at={at} text={text} width={width} />}
    </>
  )
}

function Ground({ drawing }: Drawn) {
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
    </>
  )
}

/** Over a long thing's middle, where its tick leaves room; over the whole of one that is as high as wide. */
function nameLine(landmark: LandmarkDrawing): number {
  const { box, at } = landmark
  const high = box.bottom - box.top
  const long = landmark.kind === 'span' && box.right - box.left > 2 * high
  return (long ? at.y - 12 : Math.min(box.top, at.y - 15)) - 8
}

function LandmarkParts({ drawing, reading, away }: Drawn & { readonly away: string }) {
  const { landmark } = drawing
  if (landmark === null || reading.toLandmark === null) return null
  const chosen = selected.value === 'landmark'
  return (
    <>
      <LandmarkMark
        landmark={landmark}
        hatch={HATCH}
        name={mapWords.landmarkNamed(landmark.name, away)}
        pressed={chosen}
      />
      <text class="landmark-name" x={figure(landmark.at.x)} y={figure(nameLine(landmark))}>
        {landmark.name}
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

function Near({ drawing, reading, joined }: Drawn) {
  const { subject, standpoint, aim } = drawing
  const apart = metres(reading.toSubject.distance, settings.value.units)
  const pressed = selected.value
  if (joined) {
    const name = mapWords.pairNamed(apart)
    const chosen = pressed === 'subject' || pressed === 'standpoint'
    return <PairMark subject={subject} standpoint={standpoint} aim={aim} name={name} pressed={chosen} />
  }
  return (
    <>
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
    const stopDrags = followDrags({ surface: svg, where: 'map', view, pointOf })
    const stopKeys = followKeys(svg, MAP_STEP)
    return () => {
      stopDrags()
      stopKeys()
    }
  }, [pointOf])
  const shown = drawn.value
  const away = shown?.reading.toLandmark?.distance ?? null
  return (
    <svg ref={surface} class="plan-things" role="group" aria-label={mapWords.things} width={1} height={1}>
      <defs>
        <Hatch id={HATCH} />
      </defs>
      {shown === null ? null : (
        <>
          <Ground {...shown} />
          <OtherLandmarks {...shown} />
          <Sightline {...shown} />
          {shown.drawing.parking === null ? null : (
            <ParkingMark at={shown.drawing.parking} name={mapWords.parkingNamed} />
          )}
          <LandmarkParts {...shown} away={away === null ? '' : metres(away, settings.value.units)} />
          <Near {...shown} />
        </>
      )}
    </svg>
  )
}
