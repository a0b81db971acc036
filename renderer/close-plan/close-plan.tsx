/** The close plan in the map's corner: subject and standpoint in true size, with wedge, sharp zone, ring and distances. */
import { computed } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import { closePlanSize, closePlanState } from '#renderer/map/covered.ts'
import { followDrags } from '#renderer/map/drag.ts'
import { type PlanDrawing, drawPlan, inSight } from '#renderer/map/drawing.ts'
import { mapLook } from '#renderer/map/map-look.ts'
import { Hatch, HeadingHandle, LandmarkMark, StandpointMark, SubjectMark } from '#renderer/map/marks.tsx'
import type { PlanView } from '#renderer/map/plan-view.ts'
import { figure, linePath } from '#renderer/map/screen-line.ts'
import { held } from '#renderer/map/settle.ts'
import { followKeys } from '#renderer/map/walk.ts'
import { metres } from '#renderer/part/figure.ts'
import { assessment, plan, ring } from '#renderer/state/derived.ts'
import { selected } from '#renderer/state/page.ts'
import { settings } from '#renderer/state/settings.ts'
import { mapWords } from '#renderer/words/en-map.ts'
import { type CloseFrame, frameView, gridStep, nextFrame } from './close-frame.ts'
import { CloseHead, HEAD_HEIGHT } from './close-head.tsx'
import { type LabelTexts, type PlacedLabel, leavingLine, placeLabels } from './close-labels.ts'

/** Between a figure and its unit. */
const GAP = '\u{a0}'
const HATCH = 'hatch-close'
/** Metres that an arrow key moves a thing in the close plan. */
const CLOSE_STEP = 0.1

const size = computed(() => {
  const box = mapLook.value?.box ?? { left: 0, top: 0, right: 1000, bottom: 800 }
  return closePlanSize(box.right - box.left, box.bottom - box.top)
})

interface Close {
  readonly frame: CloseFrame
  readonly view: PlanView
  readonly drawing: PlanDrawing
  readonly reading: Assessment
}

let frameBefore: { readonly frame: CloseFrame; readonly spotId: string; readonly width: number } | null = null

const close = computed<Close | null>(() => {
  const now = plan.value
  const reading = assessment.value
  if (now === null || reading === null || closePlanState.value === 'folded') return null
  const room = size.value
  const same = frameBefore !== null && frameBefore.spotId === now.spot.id && frameBefore.width === room.width
  const before = same ? (frameBefore?.frame ?? null) : null
  // Under a hand that drags, the plan neither zooms nor shifts.
  const frame = held.value !== null && before !== null ? before : nextFrame(now, room, before)
  frameBefore = { frame, spotId: now.spot.id, width: room.width }
  const view = frameView(frame, room)
  return { frame, view, reading, drawing: drawPlan(now, reading, ring.value, view, frame.across * 3) }
})

function Grid({ frame, view }: Close) {
  const { width, height } = size.value
  const step = gridStep(frame.across)
  const pixels = (step * width) / frame.across
  const lines: string[] = []
  for (let x = (view.box.right / 2) % pixels; x < width; x += pixels) lines.push(`M${figure(x)},0V${figure(height)}`)
  for (let y = (view.box.bottom / 2) % pixels; y < height; y += pixels) lines.push(`M0,${figure(y)}H${figure(width)}`)
  return <path class="close-grid" d={lines.join('')} />
}

function textsOf({ reading }: Close): LabelTexts {
  const { units } = settings.value
  const limits = reading.sharp?.limits ?? null
  const name = plan.value?.landmark?.name ?? ''
  const sharp = (): string | null => {
    if (limits === null) return null
    const near = metres(limits.near, units)
    if (limits.far === null) return mapWords.sharpFrom(near)
    const far = metres(limits.far, units)
    const [size, unit] = near.split(GAP)
    // Two figures of one unit name it once: 6.3–8.6 m.
    return mapWords.sharpFromTo(unit === far.split(GAP)[1] ? (size ?? near) : near, far)
  }
  const to = reading.toLandmark
  return {
    distance: metres(reading.toSubject.distance, units),
    sharp: sharp(),
    ring: mapWords.proportionRing,
    landmark: to === null ? null : mapWords.toLandmark(name, metres(to.distance, units)),
  }
}

function Label({ label, kind }: { readonly label: PlacedLabel | null; readonly kind: string }) {
  return label === null ? null : (
    <text class={`close-label close-label-${kind}`} x={figure(label.at.x)} y={figure(label.at.y + 4.3)}>
      {label.text}
    </text>
  )
}

function Leaving({ drawing, view }: Close) {
  const line = leavingLine(drawing, view)
  if (line === null) return null
  return (
    <>
      <path class="sightline" d={linePath([line.from, line.at], false)} />
      <path
        class="landmark-arrow"
        transform={`translate(${figure(line.at.x)},${figure(line.at.y)}) rotate(${figure(line.turn)})`}
        d="M0,-6L5,5L0,2.6L-5,5Z"
      />
    </>
  )
}

function Lines(shown: Close) {
  const { wedge, sharp, ring: round, standpoint, subject } = shown.drawing
  return (
    <>
      {wedge === null ? null : (
        <>
          <path class="wedge" d={wedge.area} />
          <path class="wedge-edge" d={wedge.left + wedge.right} />
        </>
      )}
      {sharp === null ? null : <path class="sharp-band" d={sharp.area} />}
      {round === null ? null : <path class="proportion-ring" d={round.line} />}
      <Leaving {...shown} />
      <path class="near-line" d={linePath([standpoint, subject.at], false)} />
    </>
  )
}

function CloseThings(shown: Close) {
  const { drawing, reading, view } = shown
  const { subject, landmark } = drawing
  const distance = metres(reading.toSubject.distance, settings.value.units)
  const far = reading.toLandmark
  const placed = placeLabels(drawing, textsOf(shown), view, [
    { left: 0, top: 0, right: view.box.right, bottom: HEAD_HEIGHT },
  ])
  return (
    <>
      <Lines {...shown} />
      {landmark === null || far === null || !inSight(landmark.box, view) ? null : (
        <LandmarkMark
          landmark={landmark}
          hatch={HATCH}
          name={mapWords.landmarkNamed(landmark.name, metres(far.distance, settings.value.units))}
          pressed={selected.value === 'landmark'}
        />
      )}
      <SubjectMark subject={subject} name={mapWords.subjectNamed(distance)} pressed={selected.value === 'subject'} />
      <HeadingHandle subject={subject} name={mapWords.headingNamed} />
      <StandpointMark
        at={drawing.standpoint}
        aim={drawing.aim}
        name={mapWords.standpointNamed(distance)}
        pressed={selected.value === 'standpoint'}
      />
      <Label label={placed.ring} kind="quiet" />
      <Label label={placed.sharp} kind="quiet" />
      <Label label={placed.landmark} kind="landmark" />
      <Label label={placed.distance} kind="ink" />
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
    const stopDrags = followDrags({ surface: svg, where: 'close', view, pointOf })
    const stopKeys = followKeys(svg, CLOSE_STEP)
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
      <defs>
        <Hatch id={HATCH} />
      </defs>
      <Grid {...shown} />
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
