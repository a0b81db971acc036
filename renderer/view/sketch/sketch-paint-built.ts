/** Quays, walls, buildings and the lighthouse of the sketch map. */
import type { SketchIndex } from './sketch-index.ts'
import { type SketchPen, byZoom, fillAreas, shownBox, strokeFeatures } from './sketch-pen.ts'

export function paintQuays(pen: SketchPen, index: SketchIndex): void {
  if (pen.zoom < 12) return
  const quays = index.within('quay', shownBox(pen, 8))
  // The edge is drawn below the fill, so that quay and mole read as one piece where they meet.
  strokeFeatures(pen, index, quays, pen.palette.quayEdge, byZoom(pen.zoom, [13, 1.4], [16, 2.2], [19, 3.6]))
  fillAreas(pen, index, 'quay', pen.palette.quay)
  if (pen.zoom >= 15) fillAreas(pen, index, 'wall', pen.palette.quayEdge)
}

export function paintBuildings(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom } = pen
  if (zoom < 13) return
  const buildings = fillAreas(pen, index, 'building', palette.building)
  // Below zoom 16 a house is smaller than a pen stroke: the stroke keeps it in sight.
  const edge = byZoom(zoom, [13, 0.9], [15, 1.1], [16, 0.8], [18, 1])
  strokeFeatures(pen, index, buildings, zoom < 16 ? palette.building : palette.buildingEdge, edge)
  paintLighthouse(pen, index)
}

function paintLighthouse(pen: SketchPen, index: SketchIndex): void {
  const { context, palette, scale, left, top } = pen
  for (const light of index.within('lighthouse', shownBox(pen, 30))) {
    const x = ((light.box.west + light.box.east) / 2) * scale - left
    const y = ((light.box.north + light.box.south) / 2) * scale - top
    const reach = Math.max(((light.box.east - light.box.west) / 2) * scale, 2.6)
    context.beginPath()
    context.arc(x, y, reach, 0, Math.PI * 2)
    context.fillStyle = palette.road
    context.fill()
    context.strokeStyle = palette.bridge
    context.lineWidth = byZoom(pen.zoom, [14, 1.2], [18, 1.8])
    context.stroke()
    context.beginPath()
    context.arc(x, y, reach * 0.38, 0, Math.PI * 2)
    context.fillStyle = palette.bridge
    context.fill()
  }
}
