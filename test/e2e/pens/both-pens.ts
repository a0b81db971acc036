/** Runs in a browser's empty page: draws the same strokes with both pens and measures how far the pictures differ. */
import { h, render } from 'preact'
import { drawStrokes, softReach, spareSheet } from '#renderer/view/lens-picture/canvas-pen.ts'
import type { Strokes } from '#renderer/view/lens-picture/stroke.ts'
import { StrokesDrawn } from '#renderer/view/lens-picture/svg-pen.tsx'

export interface PenDifference {
  /** Mean of the greatest difference of the three colours, 0..255. */
  readonly mean: number
  /** Share of pixels that differ by more than 24 of 255. */
  readonly far: number
  /** Greatest difference of any pixel's neighbourhood of 5 by 5, averaged: a thing misplaced or missing shows, an edge does not. */
  readonly patch: number
  /** How many colours the canvas holds: a blank picture agrees with a blank one. */
  readonly colours: number
}

type Pixels = ImageData

function byCanvas(strokes: Strokes, pixelRatio: number): Pixels {
  const [width, height] = [Math.round(strokes.width * pixelRatio), Math.round(strokes.height * pixelRatio)]
  const context = new OffscreenCanvas(width, height).getContext('2d')
  const margin = softReach(strokes, pixelRatio)
  const spare = spareSheet(width + margin * 2, height + margin * 2)
  if (context === null || spare === null) throw new Error('no canvas')
  drawStrokes(context, strokes, pixelRatio, spare, margin)
  return context.getImageData(0, 0, width, height)
}

async function bySvg(strokes: Strokes, pixelRatio: number): Promise<Pixels> {
  const { width, height } = strokes
  const holder = document.createElement('div')
  render(
    h('svg', { xmlns: 'http://www.w3.org/2000/svg', width, height, viewBox: `0 0 ${width} ${height}` }, [
      h(StrokesDrawn, { strokes }),
    ]),
    holder,
  )
  const svg = holder.querySelector('svg')
  if (svg === null) throw new Error('nothing drawn')
  svg.setAttribute('width', String(Math.round(width * pixelRatio)))
  svg.setAttribute('height', String(Math.round(height * pixelRatio)))
  const image = new Image()
  image.src = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(svg)], { type: 'image/svg+xml' }))
  await image.decode()
  const context = new OffscreenCanvas(image.width, image.height).getContext('2d')
  if (context === null) throw new Error('no canvas')
  context.drawImage(image, 0, 0)
  return context.getImageData(0, 0, image.width, image.height)
}

/** Mean of one colour over the 5 by 5 pixels about a place. */
function patchMean({ data, width }: Pixels, column: number, row: number, colour: number): number {
  let sum = 0
  for (let y = row - 2; y <= row + 2; y++)
    for (let x = column - 2; x <= column + 2; x++) sum += data[(y * width + x) * 4 + colour] ?? 0
  return sum / 25
}

function difference(one: Pixels, other: Pixels): PenDifference {
  if (one.width !== other.width || one.height !== other.height) throw new Error('the pictures are not of one size')
  const count = one.width * one.height
  let [sum, far, patch] = [0, 0, 0]
  const colours = new Set<number>()
  for (let pixel = 0; pixel < count; pixel++) {
    let most = 0
    for (let colour = 0; colour < 3; colour++) {
      const [mine, theirs] = [one.data[pixel * 4 + colour] ?? 0, other.data[pixel * 4 + colour] ?? 0]
      most = Math.max(most, Math.abs(mine - theirs))
    }
    sum += most
    if (most > 24) far += 1
    colours.add(
      (one.data[pixel * 4] ?? 0) * 65_536 + (one.data[pixel * 4 + 1] ?? 0) * 256 + (one.data[pixel * 4 + 2] ?? 0),
    )
  }
  for (let row = 2; row < one.height - 2; row += 3)
    for (let column = 2; column < one.width - 2; column += 3)
      for (let colour = 0; colour < 3; colour++)
        patch = Math.max(patch, Math.abs(patchMean(one, column, row, colour) - patchMean(other, column, row, colour)))
  return { mean: sum / count, far: far / count, patch, colours: colours.size }
}

async function compare(strokes: Strokes, pixelRatio: number): Promise<PenDifference> {
  return difference(byCanvas(strokes, pixelRatio), await bySvg(strokes, pixelRatio))
}

Object.assign(globalThis, { comparePens: compare })
