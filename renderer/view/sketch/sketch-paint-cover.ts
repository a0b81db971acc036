/** What lies on the land of the sketch map: fields, woods, sand, crags, streams, the lake, contours. */
import type { PaintContext } from './canvas-context.ts'
import { scatterMarks, type Mark } from './scatter.ts'
import type { SketchIndex } from './sketch-index.ts'
import { type WorldBox, grown } from './world.ts'
import { type SketchPen, byZoom, fillAreas, shownBox, strokeFeatures, traceAreas } from './sketch-pen.ts'

/** Tints under the relief. */
export function paintTints(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom } = pen
  const tufts = { spacing: byZoom(zoom, [16, 34], [20, 74]), size: byZoom(zoom, [16, 2], [20, 4.5]), draw: tuftMark }
  markAreas(pen, index, palette.tuft, { kind: 'land', fromZoom: 16.5, filled: false, ...tufts })
  fillAreas(pen, index, 'beach', palette.beach)
  if (zoom >= 13) {
    fillFields(pen, index)
  }
  fillAreas(pen, index, 'wood', palette.wood)
}

function fillFields(pen: SketchPen, index: SketchIndex): void {
  const fields = index.within('field', shownBox(pen, 8))
  for (const tilled of [false, true]) {
    pen.context.beginPath()
    traceAreas(
      pen,
      fields.filter((field) => (field.properties['tilled'] === true) === tilled),
      index,
      16,
    )
    pen.context.fillStyle = tilled ? pen.palette.tilledField : pen.palette.field
    pen.context.fill()
  }
}

/** Pixels of a contour between the labelled ones, and of those. */
export function contourWidths(zoom: number): { readonly fine: number; readonly strong: number } {
  const fine = byZoom(zoom, [12, 0.5], [14, 0.6], [16, 0.8], [19, 1.1])
  return { fine, strong: fine * (zoom < 13 ? 1.1 : 1.5) }
}

export function paintContours(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom } = pen
  if (zoom < 11.5) return
  const shown = index.within('contour', shownBox(pen, 4))
  const every = zoom < 12.5 ? 50 : zoom < 13.5 ? 20 : 10
  const minor = shown.filter((line) => Number(line.properties['elevation']) % 50 !== 0)
  const major = shown.filter((line) => Number(line.properties['elevation']) % 50 === 0)
  const { fine, strong } = contourWidths(zoom)
  if (every < 50) {
    const chosen = minor.filter((line) => Number(line.properties['elevation']) % every === 0)
    strokeFeatures(pen, index, chosen, palette.contour, fine)
  }
  strokeFeatures(pen, index, major, palette.majorContour, strong)
}

export function paintFieldWalls(pen: SketchPen, index: SketchIndex): void {
  if (pen.zoom < 13.5) return
  const width = byZoom(pen.zoom, [14, 0.45], [16, 0.8], [18, 1.3], [20, 2])
  strokeFeatures(pen, index, index.within('field', shownBox(pen, 4)), pen.palette.fieldWall, width)
}

export function paintWaters(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom } = pen
  if (zoom >= 12) {
    const streams = index.within('stream', shownBox(pen, 6))
    strokeFeatures(pen, index, streams, palette.waterEdge, byZoom(zoom, [12, 0.6], [15, 1.2], [18, 2.4], [20, 5]))
    if (zoom >= 17.5) strokeFeatures(pen, index, streams, palette.water, byZoom(zoom, [18, 1.2], [20, 3.4]))
  }
  const lakes = fillAreas(pen, index, 'lake', palette.water)
  strokeFeatures(pen, index, lakes, palette.waterEdge, byZoom(zoom, [12, 0.7], [16, 1.1], [19, 1.6]))
}

/** A round crown. */
function crownMark(context: PaintContext, mark: Mark, size: number): void {
  const reach = crownReach(mark, size)
  if (reach === 0) return
  context.moveTo(mark.x + reach, mark.y)
  context.arc(mark.x, mark.y, reach, 0, Math.PI * 2)
}

/** The crown's shaded side, away from the light in the north-west. */
function treeMark(context: PaintContext, mark: Mark, size: number): void {
  const reach = crownReach(mark, size)
  if (reach === 0) return
  context.moveTo(mark.x + reach * Math.cos(-0.9), mark.y + reach * Math.sin(-0.9))
  context.arc(mark.x, mark.y, reach, -0.9, 2.5)
}

/** Some places carry no tree, and no two neighbours are of one size. */
function crownReach(mark: Mark, size: number): number {
  return mark.chance < 0.14 ? 0 : size * (0.55 + mark.chance * 0.6)
}

/** Three blades of grass, at every other place. */
function tuftMark(context: PaintContext, mark: Mark, size: number): void {
  if (mark.chance < 0.5) return
  for (const lean of [-0.7, 0, 0.7]) {
    context.moveTo(mark.x + lean * size * 0.4, mark.y)
    context.lineTo(mark.x + lean * size, mark.y - size * (1 - Math.abs(lean) * 0.35))
  }
}

function dotMark(context: PaintContext, mark: Mark, size: number): void {
  context.rect(mark.x, mark.y, size, size)
}

/** A short stroke down the slope. */
function cragMark(context: PaintContext, mark: Mark, size: number): void {
  const lean = (mark.chance - 0.5) * size
  context.moveTo(mark.x, mark.y)
  context.lineTo(mark.x + lean, mark.y + size)
}

interface Marking {
  readonly kind: string
  readonly spacing: number
  readonly fromZoom: number
  readonly draw: (context: PaintContext, mark: Mark, size: number) => void
  readonly size: number
  readonly filled: boolean
}

/** Small marks strewn inside areas. */
export function paintMarks(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom } = pen
  const tree = byZoom(zoom, [13, 1.5], [15, 2.1], [17, 3.4], [20, 7])
  markAreas(pen, index, palette.woodCrown, {
    kind: 'wood',
    spacing: tree * 3,
    fromZoom: 15.5,
    draw: crownMark,
    size: tree,
    filled: true,
  })
  markAreas(pen, index, palette.woodMark, {
    kind: 'wood',
    spacing: tree * 3,
    fromZoom: 13.5,
    draw: treeMark,
    size: tree,
    filled: false,
  })
  const beach = {
    kind: 'beach',
    spacing: 5,
    fromZoom: 14,
    draw: dotMark,
    size: byZoom(zoom, [14, 0.8], [18, 1.3]),
    filled: true,
  }
  markAreas(pen, index, palette.beachMark, beach)
  const crag = {
    spacing: byZoom(zoom, [14, 4], [18, 9], [20, 26]),
    fromZoom: 13.5,
    draw: cragMark,
    size: byZoom(zoom, [14, 2.4], [18, 6], [20, 13]),
    filled: false,
  }
  markAreas(pen, index, palette.crag, { kind: 'crag', ...crag })
  markAreas(pen, index, palette.crag, { kind: 'rock', ...crag })
}

function markAreas(pen: SketchPen, index: SketchIndex, colour: string, marking: Marking): void {
  if (pen.zoom < marking.fromZoom) return
  const areas = index.within(marking.kind, shownBox(pen, 8))
  if (areas.length === 0) return
  const { context } = pen
  context.save()
  context.beginPath()
  traceAreas(pen, areas, index, 16)
  context.clip()
  context.beginPath()
  const boxes = areas.map((area) => canvasBox(pen, area.box, marking.size * 2))
  for (const mark of scatterMarks(pen, marking.spacing)) {
    if (boxes.some((box) => holds(box, mark))) marking.draw(context, mark, marking.size)
  }
  if (marking.filled) {
    context.fillStyle = colour
    context.fill()
  } else {
    context.strokeStyle = colour
    context.lineWidth = byZoom(pen.zoom, [13, 0.7], [17, 1], [20, 1.4])
    context.stroke()
  }
  context.restore()
}

/** A world box in the canvas's own pixels, with a margin. */
function canvasBox(pen: SketchPen, box: WorldBox, margin: number): WorldBox {
  return grown(
    {
      west: box.west * pen.scale - pen.left,
      east: box.east * pen.scale - pen.left,
      north: box.north * pen.scale - pen.top,
      south: box.south * pen.scale - pen.top,
    },
    margin,
  )
}

function holds(box: WorldBox, mark: Mark): boolean {
  return mark.x >= box.west && mark.x <= box.east && mark.y >= box.north && mark.y <= box.south
}
