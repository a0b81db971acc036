/** The frame through the lens as an SVG drawing: for the working view, the thumb, side by side and the sheet alike. */
import { useMemo } from 'preact/hooks'
import type { Assessment } from '#core/plan/assess.ts'
import type { Plan } from '#core/plan/plan.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'
import { pictureOf } from './picture.ts'
import { strokesOf } from './strokes.ts'
import { StrokesDrawn } from './svg-pen.tsx'
import { cannotBeSeen, describe } from './picture-text.ts'
import './lens-view.css'

interface LensDrawingProps {
  readonly plan: Plan
  readonly assessment: Assessment
  /** The frame's width in CSS pixels; the height follows from the frame as held. */
  readonly width: number
  /** True where words beside the drawing say the same, as in a list. */
  readonly decorative?: boolean
  /** True on paper, where night is not drawn as dark as on the screen. */
  readonly onPaper?: boolean
}

/** Draws whatever the plan's state; where nothing can be framed the frame carries a sentence. */
export function LensDrawing({ plan, assessment, width, decorative = false, onPaper = false }: LensDrawingProps) {
  const strokes = useMemo(() => {
    const picture = pictureOf(plan, assessment, width)
    return picture === null ? null : strokesOf(picture, onPaper ? 'paper' : 'screen')
  }, [plan, assessment, width, onPaper])
  if (strokes === null) return <EmptyFrame plan={plan} assessment={assessment} width={width} decorative={decorative} />
  const said = decorative
    ? ({ 'aria-hidden': 'true' } as const)
    : ({ role: 'img', 'aria-label': describe(plan, assessment) } as const)
  return (
    <svg
      class="lens-drawing"
      width={width}
      height={strokes.height}
      viewBox={`0 0 ${width} ${strokes.height}`}
      focusable="false"
      {...said}
    >
      <StrokesDrawn strokes={strokes} />
    </svg>
  )
}

/** What fills the frame when there is no picture: paper, and why. */
export function EmptyFrame({ plan, assessment, width, decorative = false }: LensDrawingProps) {
  const { sensorWidth, sensorHeight } = plan.shoot.bag.camera
  const ratio = Math.min(sensorWidth, sensorHeight) / Math.max(sensorWidth, sensorHeight)
  const height = plan.spot.shot.orientation === 'lying' ? width * ratio : width / ratio
  return (
    <span class="lens-empty" style={{ width: `${width}px`, height: `${height}px` }}>
      {decorative || width < 120 ? (
        <span aria-hidden="true">{lensViewWords.nothing}</span>
      ) : (
        <span>{cannotBeSeen(plan, assessment)}</span>
      )}
    </span>
  )
}
