/** The lines and areas on the close plan's ground, under the things themselves. */
import { steadyPart } from '#renderer/part/steady-part.tsx'
import { Shadows } from '#renderer/view/drawing/light-marks.tsx'
import { figure, linePath } from '#renderer/text/path-text.ts'
import { gridStep } from './close-frame.ts'
import { leavingLine } from './close-labels.ts'
import type { Close } from './close-state.ts'

interface GridProps {
  /** Metres across the plan's width. */
  readonly across: number
  /** Pixels. */
  readonly width: number
  readonly height: number
}

export const Grid = steadyPart(function grid({ across, width, height }: GridProps) {
  const pixels = (gridStep(across) * width) / across
  const lines: string[] = []
  for (let x = (width / 2) % pixels; x < width; x += pixels) lines.push(`M${figure(x)},0V${figure(height)}`)
  for (let y = (height / 2) % pixels; y < height; y += pixels) lines.push(`M0,${figure(y)}H${figure(width)}`)
  return <path class="close-grid" d={lines.join('')} />
})

/** What the lines are drawn of; `head` is what a title takes at the top, where it is not the usual one. */
type Drawn = Pick<Close, 'drawing' | 'light' | 'view'> & { readonly head?: number }

function Leaving({ drawing, view, head }: Drawn) {
  const line = leavingLine(drawing, view, head)
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

export function Lines(shown: Drawn) {
  const { wedge, sharp, ring: round, standpoint, subject } = shown.drawing
  return (
    <>
      {wedge === null ? null : (
        <>
          <path class="wedge" d={wedge.area} />
          <path class="wedge-edge" d={wedge.left + wedge.right} />
        </>
      )}
      <Shadows {...shown.light} />
      {sharp === null ? null : <path class="sharp-band" d={sharp.area} />}
      {round === null ? null : <path class="proportion-ring" d={round.line} />}
      <Leaving {...shown} />
      <path class="near-line" d={linePath([standpoint, subject.at], false)} />
    </>
  )
}
