/** Writes the placed labels on a canvas, each with its halo. */
import type { Letter } from './label-place.ts'
import { fontOf, type LabelStyle } from './label-text.ts'
import type { Label } from './sketch-labels.ts'
import type { SketchPen } from './sketch-pen.ts'
import { type WorldBox, boxesMeet } from './world.ts'

/** Writes the labels that touch the canvas. */
export function paintLabels(pen: SketchPen, labels: readonly Label[]): void {
  const { context, left, top, width, height } = pen
  const window: WorldBox = { west: left - 4, north: top - 4, east: left + width + 4, south: top + height + 4 }
  context.lineJoin = 'round'
  context.textBaseline = 'alphabetic'
  for (const label of labels) {
    if (!label.boxes.some((box) => boxesMeet(box, window))) continue
    context.font = fontOf(label.style)
    context.letterSpacing = label.letters.length === 1 ? `${label.style.spacing}px` : '0px'
    if (label.peak !== null) paintPeak(pen, label.peak, label.style)
    context.strokeStyle = label.style.halo
    context.lineWidth = label.style.family === 'serif' ? 3.4 : 3
    // Numbers lie on the shading of their slope: a full halo would punch a hole in it.
    context.globalAlpha = label.style.family === 'figures' ? 0.6 : 0.9
    for (const letter of label.letters) write(pen, letter, 'halo')
    context.globalAlpha = 1
    context.fillStyle = label.style.colour
    for (const letter of label.letters) write(pen, letter, 'ink')
  }
  context.letterSpacing = '0px'
}

function write(pen: SketchPen, letter: Letter, what: 'halo' | 'ink'): void {
  const { context, left, top } = pen
  const put = (x: number, y: number): void => {
    if (what === 'halo') context.strokeText(letter.text, x, y)
    else context.fillText(letter.text, x, y)
  }
  if (letter.turn === 0) return put(letter.x - left, letter.y - top)
  context.save()
  context.translate(letter.x - left, letter.y - top)
  context.rotate(letter.turn)
  put(0, 0)
  return context.restore()
}

function paintPeak(pen: SketchPen, at: readonly [number, number], style: LabelStyle): void {
  const { context } = pen
  const [x, y] = [at[0] - pen.left, at[1] - pen.top]
  context.beginPath()
  context.moveTo(x, y - 3.6)
  context.lineTo(x + 3.8, y + 2.8)
  context.lineTo(x - 3.8, y + 2.8)
  context.closePath()
  context.strokeStyle = style.halo
  context.lineWidth = 2.4
  context.stroke()
  context.fillStyle = style.colour
  context.fill()
}
