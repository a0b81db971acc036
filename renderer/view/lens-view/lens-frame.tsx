/** The frame one works in: the drawing with its guides, moved by pointer and keys. */
import { moving } from '#renderer/state/library/library.ts'
import { lensBoard } from '#renderer/state/plan/calm-board.ts'
import { steady } from '#renderer/job/steady.ts'
import { WorkingPicture } from './working-picture.tsx'
import { useEffect, useId, useRef } from 'preact/hooks'
import { cropSize } from '#core/frame/crop.ts'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { type FrameDrag, centre, dragTo, giveUp, keyDown, letGo } from './compose.ts'
import { cropGuide, thirds } from './guide-choice.ts'
import { CropGuide, CutMarks, Thirds, cropRect } from './guides.tsx'
import { BodyMarks } from './body-marks.tsx'
import { EmptyFrame } from '#renderer/view/lens-picture/lens-drawing.tsx'
import { besidePicture, describe } from '#renderer/view/lens-picture/picture-text.ts'

interface LensFrameProps {
  readonly plan: Plan
  readonly assessment: Assessment
  readonly width: number
  readonly height: number
}

export function LensFrame({ plan, assessment, width, height }: LensFrameProps) {
  const id = useId()
  const dragRef = useRef<FrameDrag | null>(null)
  useEffect(() => giveUp, [])
  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId)
    dragRef.current = { x: event.clientX, y: event.clientY, change: null }
  }
  const move = (event: PointerEvent): void => {
    if (dragRef.current !== null) dragTo(dragRef.current, event.clientX, event.clientY, { width, height })
  }
  const up = (): void => {
    if (dragRef.current?.change !== null) letGo()
    dragRef.current = null
  }
  const cancel = (): void => {
    dragRef.current = null
    giveUp()
  }
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && dragRef.current !== null) cancel()
    else if (event.ctrlKey || event.metaKey || event.altKey || !keyDown(event.key, event.shiftKey)) return
    event.preventDefault()
    event.stopPropagation()
  }
  const framed = assessment.view !== null
  return (
    <div
      class="lens-frame"
      tabIndex={0}
      role="group"
      aria-label={lensViewWords.frame}
      aria-describedby={`${id}-keys`}
      style={{ width: `${width}px`, height: `${height}px` }}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={cancel}
      onDblClick={centre}
      onKeyDown={key}
      onKeyUp={() => letGo()}
      onBlur={() => letGo()}
    >
      {framed ? (
        <>
          <WorkingPicture plan={plan} assessment={assessment} width={width} height={height} moving={moving.value} />
          <OverPicture assessment={assessment} width={width} height={height} />
        </>
      ) : (
        <EmptyFrame plan={plan} assessment={assessment} width={width} />
      )}
      <Beside />
      <p class="unseen" id={`${id}-keys`}>
        {lensViewWords.keys}
      </p>
    </div>
  )
}

/** The picture in words, for those who don't see it, and what is told beside it: read, not watched. */
const inWords = steady(() => {
  const plan = lensBoard.plan.value
  const found = lensBoard.assessment.value
  return plan === null || found === null || found.view === null
    ? { name: undefined, beside: null }
    : { name: describe(plan, found), beside: besidePicture(plan, found) }
})

function Beside() {
  const { beside } = inWords.value
  return (
    <p class="lens-note" role="status" aria-live={moving.value ? 'off' : 'polite'} hidden={beside === null}>
      {beside}
    </p>
  )
}

/** Guides and marks over the picture, and its name. */
function OverPicture({ assessment, width, height }: Omit<LensFrameProps, 'plan'>) {
  const crop = cropGuide.value
  const rect = cropRect(crop, width, height)
  const frame = assessment.view
  const millimetres =
    frame === null
      ? { width: 1, height: 1 }
      : crop === null
        ? { width: frame.frameWidth, height: frame.frameHeight }
        : cropSize(crop, frame.frameWidth, frame.frameHeight)
  return (
    <svg
      class="lens-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      focusable="false"
      role="img"
      aria-label={inWords.value.name}
    >
      {crop === null ? null : <CropGuide crop={crop} rect={rect} width={width} height={height} />}
      {thirds.value ? <Thirds {...rect} /> : null}
      <CutMarks assessment={assessment} rect={rect} millimetres={millimetres} />
      <BodyMarks light={assessment.light} width={width} height={height} />
    </svg>
  )
}
