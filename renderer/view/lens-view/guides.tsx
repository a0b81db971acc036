/** Guides over the frame: thirds, the chosen crop, and marks where subject or landmark is cut. */
import { type Crop, cropSize } from '#core/frame/crop.ts'
import { type Extent, type Framing, LEAST_CUT, framingOf } from '#core/frame/framing.ts'
import type { Assessment } from '#core/plan/assess.ts'
import { share } from '#renderer/text/figure.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'

export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The chosen crop, or the whole frame, in the drawing's units. */
export function cropRect(crop: Crop | null, width: number, height: number): Rect {
  const size = crop === null ? { width, height } : cropSize(crop, width, height)
  return { x: (width - size.width) / 2, y: (height - size.height) / 2, ...size }
}

export function guideCropName(crop: Crop): string {
  return `${crop.wide}:${crop.high}`
}

export function Thirds({ x, y, width, height }: Rect) {
  const lines = [1, 2].map((third) => {
    const [across, down] = [(x + (width * third) / 3).toFixed(1), (y + (height * third) / 3).toFixed(1)]
    return `M${across} ${y}v${height}M${x} ${down}h${width}`
  })
  const d = lines.join('')
  return (
    <>
      <path class="lens-thirds-halo" d={d} />
      <path class="lens-thirds" d={d} />
    </>
  )
}

/** What the crop leaves out is veiled, its edge dashed and named. */
export function CropGuide({ crop, rect, width, height }: { crop: Crop; rect: Rect; width: number; height: number }) {
  const { x, y } = rect
  const edge = { x: x + 0.75, y: y + 0.75, width: rect.width - 1.5, height: rect.height - 1.5 }
  return (
    <g>
      <path
        class="lens-veil"
        fill-rule="evenodd"
        d={`M0 0H${width}V${height}H0ZM${x} ${y}h${rect.width}v${rect.height}h${-rect.width}Z`}
      />
      <rect class="lens-crop-halo" {...edge} />
      <rect class="lens-crop" {...edge} />
      <text class="lens-label" x={x + rect.width - 7} y={y + 16} text-anchor="end">
        {guideCropName(crop)}
      </text>
    </g>
  )
}

interface Cut {
  readonly side: 'left' | 'right' | 'top' | 'bottom'
  readonly amount: number
  /** Where along the edge the thing crosses it, shares from the middle. */
  readonly from: number
  readonly to: number
}

/** The edges that cut a thing; none when it isn't in the frame at all. */
export function cutsOf(framing: Framing): Cut[] {
  if (!framing.inFrame) return []
  const within = (value: number): number => Math.min(0.5, Math.max(-0.5, value))
  const high = { from: within(framing.bottom), to: within(framing.top) }
  const wide = { from: within(framing.left), to: within(framing.right) }
  const all: Cut[] = [
    { side: 'left', amount: framing.cutLeft, ...high },
    { side: 'right', amount: framing.cutRight, ...high },
    { side: 'top', amount: framing.cutTop, ...wide },
    { side: 'bottom', amount: framing.cutBottom, ...wide },
  ]
  return all.filter(({ amount }) => amount >= LEAST_CUT)
}

interface CutMarksProps {
  readonly assessment: Assessment
  readonly rect: Rect
  /** Millimetres of the crop or frame. */
  readonly millimetres: { readonly width: number; readonly height: number }
}

export function CutMarks({ assessment, rect, millimetres }: CutMarksProps) {
  const marks = (extent: Extent | null, kind: 'subject' | 'landmark') =>
    extent === null
      ? null
      : cutsOf(framingOf(extent, millimetres.width, millimetres.height)).map((cut) => (
          <CutMark key={`${kind}-${cut.side}`} cut={cut} kind={kind} rect={rect} />
        ))
  return (
    <>
      {marks(assessment.landmarkExtent, 'landmark')}
      {marks(assessment.subjectExtent, 'subject')}
    </>
  )
}

function CutMark({ cut, kind, rect }: { cut: Cut; kind: 'subject' | 'landmark'; rect: Rect }) {
  const { side, amount, from, to } = cut
  const upright = side === 'left' || side === 'right'
  const x = (share: number): number => rect.x + rect.width * (0.5 + share)
  const y = (share: number): number => rect.y + rect.height * (0.5 - share)
  const edgeX = side === 'left' ? rect.x + 2 : rect.x + rect.width - 2
  const edgeY = side === 'top' ? rect.y + 2 : rect.y + rect.height - 2
  const line = upright
    ? { x1: edgeX, x2: edgeX, y1: y(from), y2: y(to) }
    : { x1: x(from), x2: x(to), y1: edgeY, y2: edgeY }
  const middle = { x: (line.x1 + line.x2) / 2, y: (line.y1 + line.y2) / 2 }
  const anchor = side === 'left' ? 'start' : side === 'right' ? 'end' : 'middle'
  const shift = { left: [6, 4], right: [-6, 4], top: [0, 16], bottom: [0, -7] }[side]
  return (
    <g class={`lens-cut lens-cut-${kind}`}>
      <line class="lens-cut-halo" {...line} />
      <line {...line} />
      <text class="lens-label" x={middle.x + (shift[0] ?? 0)} y={middle.y + (shift[1] ?? 0)} text-anchor={anchor}>
        {lensViewWords.cut(share(amount))}
      </text>
    </g>
  )
}
