/** Marks at the frame's edge for sun and moon that stand a little outside: which way, and how far. */
import type { BodyReading, LightReading } from '#core/plan/light-reading.ts'
import { degreesText } from '#renderer/text/figure.ts'
import { lensViewWords } from '#renderer/words/en-lens-view.ts'

/** Degrees outside the frame beyond which a body is no longer near. */
const NEAR_FRAME = 12

interface EdgeMark {
  /** Where the way from the frame's middle to the body crosses the edge, in the drawing's units. */
  readonly x: number
  readonly y: number
  /** Degrees clockwise from the right in which the body lies. */
  readonly turn: number
  /** Degrees between the body's middle and the frame. */
  readonly out: number
}

/** Null when the body is down or behind the ground, in the frame, or far outside it. */
export function edgeMark(body: BodyReading, width: number, height: number): EdgeMark | null {
  const { inFrame, up, behindGround, radius } = body
  if (!up || behindGround || inFrame === null || inFrame.at === null) return null
  const out = -inFrame.within
  // While a part of it is in the picture it is drawn.
  if (out <= radius || out > NEAR_FRAME) return null
  const { x, y } = inFrame.at
  const beyond = Math.max(Math.abs(x), Math.abs(y)) * 2
  const turn = (Math.atan2(-y * height, x * width) * 180) / Math.PI
  return { x: width * (0.5 + x / beyond), y: height * (0.5 - y / beyond), turn, out }
}

interface BodyMarksProps {
  readonly light: LightReading
  readonly width: number
  readonly height: number
}

export function BodyMarks({ light, width, height }: BodyMarksProps) {
  const place = { width, height }
  return (
    <>
      <BodyMark {...place} body={light.moon} words={lensViewWords.moonOut} />
      <BodyMark {...place} body={light.sun} words={lensViewWords.sunOut} />
    </>
  )
}

interface BodyMarkProps {
  readonly body: BodyReading
  readonly words: (angle: string) => string
  readonly width: number
  readonly height: number
}

/** Units between the edge and the words, and about how far the words reach. */
const ASIDE = 15
const WORDS_WIDE = 92

function BodyMark({ body, words, width, height }: BodyMarkProps) {
  const mark = edgeMark(body, width, height)
  if (mark === null) return null
  const { x, y, turn, out } = mark
  const anchor = x < WORDS_WIDE ? 'start' : x > width - WORDS_WIDE ? 'end' : 'middle'
  const shift = anchor === 'start' ? ASIDE : anchor === 'end' ? -ASIDE : 0
  // Beside a mark on an upright edge, under one on the upper edge, over one on the lower.
  const down = y < ASIDE ? ASIDE + 9 : y > height - ASIDE ? -ASIDE : 4
  const textX = anchor === 'middle' ? x : Math.min(Math.max(x + shift, ASIDE), width - ASIDE)
  return (
    <g class="lens-body-mark">
      <path
        d="M-1 0L-14 -4.5L-11 0L-14 4.5Z"
        transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(1)})`}
      />
      <text class="lens-label" x={textX.toFixed(1)} y={(y + down).toFixed(1)} text-anchor={anchor}>
        {words(degreesText(out))}
      </text>
    </g>
  )
}
