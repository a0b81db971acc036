/** Roads, tracks, paths and the bridge of the sketch map. */
import type { SketchFeature, SketchIndex } from './sketch-index.ts'
import { type SketchPen, byZoom, shownBox, strokeDashed, strokeFeatures } from './sketch-pen.ts'

type Stops = readonly (readonly [number, number])[]
/** CSS pixels across the road's own surface; at the closest zooms about true to scale. */
const ROAD: Stops = [
  [9, 0.9],
  [11, 1.3],
  [13, 2.2],
  [15, 4],
  [16, 5.4],
  [17, 8],
  [18, 14],
  [19, 26],
  [20, 52],
  [21, 104],
  [22, 208],
]
const MINOR: Stops = [
  [10, 0.6],
  [12, 1],
  [13, 1.4],
  [15, 2.6],
  [16, 3.6],
  [17, 5.4],
  [18, 9],
  [19, 16],
  [20, 32],
  [21, 64],
  [22, 128],
]
const TRACK: Stops = [
  [12, 0.7],
  [14, 1.1],
  [16, 1.6],
  [18, 2],
  [20, 2.6],
]

export function paintWays(pen: SketchPen, index: SketchIndex): void {
  const { palette, zoom, context } = pen
  const roadWidth = byZoom(zoom, ...ROAD)
  const margin = roadWidth + 4
  const box = shownBox(pen, margin)
  context.lineJoin = 'round'
  if (zoom >= 14) paintFootways(pen, index, index.within('path', box))
  if (zoom >= 12.5) paintTracks(pen, index, index.within('track', box))
  const minor = zoom >= 11 ? index.within('minor', box) : []
  const road = index.within('road', box)
  const minorWidth = byZoom(zoom, ...MINOR)
  const edge = byZoom(zoom, [11, 0.5], [14, 0.8], [18, 1.2])
  context.lineCap = 'round'
  if (zoom < 12.5) {
    strokeFeatures(pen, index, minor, palette.roadCasing, minorWidth)
    strokeFeatures(pen, index, road, palette.roadCasing, roadWidth)
  } else {
    strokeFeatures(pen, index, minor, palette.roadCasing, minorWidth + edge * 2)
    strokeFeatures(pen, index, road, palette.roadCasing, roadWidth + edge * 2)
    strokeFeatures(pen, index, minor, palette.minorRoad, minorWidth)
    strokeFeatures(pen, index, road, palette.road, roadWidth)
  }
  context.lineCap = 'butt'
  paintBridges(pen, index, roadWidth)
}

function paintTracks(pen: SketchPen, index: SketchIndex, tracks: readonly SketchFeature[]): void {
  const { context, palette, zoom } = pen
  const width = byZoom(zoom, ...TRACK)
  const dash = byZoom(zoom, [13, 3], [15, 5], [17, 7], [20, 11])
  if (zoom >= 17.5) {
    // Close up a track is a surface of its own: two wheel lines and the strip between them.
    const across = byZoom(zoom, [17, 3.4], [18, 6.5], [19, 13], [20, 26], [21, 52], [22, 104])
    context.lineCap = 'round'
    context.globalAlpha = 0.55
    strokeFeatures(pen, index, tracks, palette.road, across)
    context.globalAlpha = 1
    context.lineCap = 'butt'
    outlineDashed(pen, index, tracks, across, width, dash)
    return
  }
  context.strokeStyle = palette.track
  context.lineWidth = width
  for (const track of tracks) strokeDashed(pen, index.shape(track, zoom), [dash, dash * 0.6], 8)
}

/** The two dashed edges of a track, drawn as a wide dashed line with its middle taken back by the surface. */
function outlineDashed(
  pen: SketchPen,
  index: SketchIndex,
  tracks: readonly SketchFeature[],
  across: number,
  width: number,
  dash: number,
): void {
  const { context, palette, zoom } = pen
  context.strokeStyle = palette.track
  context.lineWidth = across + width
  for (const track of tracks) strokeDashed(pen, index.shape(track, zoom), [dash, dash * 0.55], across + 4)
  strokeFeatures(pen, index, tracks, palette.name === 'light' ? '#f4eedf' : '#45443c', across - width)
}

function paintFootways(pen: SketchPen, index: SketchIndex, paths: readonly SketchFeature[]): void {
  const { context, palette, zoom } = pen
  context.strokeStyle = palette.path
  context.lineWidth = byZoom(zoom, [14, 0.8], [17, 1.3], [20, 2])
  const dash = byZoom(zoom, [14, 1.6], [17, 2.6], [20, 5])
  for (const path of paths) strokeDashed(pen, index.shape(path, zoom), [dash, dash * 1.1], 8)
}

/** The bridge: its deck between two strong edges, and its towers across it. */
function paintBridges(pen: SketchPen, index: SketchIndex, roadWidth: number): void {
  const { context, palette, zoom, scale, left, top } = pen
  for (const bridge of index.within('bridge', shownBox(pen, roadWidth * 2 + 12))) {
    const edge = byZoom(zoom, [11, 0.6], [14, 1], [17, 1.8], [20, 3])
    context.lineCap = 'butt'
    strokeFeatures(pen, index, [bridge], palette.bridge, roadWidth + edge * 2 + byZoom(zoom, [12, 0.4], [16, 1.6]))
    strokeFeatures(pen, index, [bridge], palette.road, roadWidth)
    if (zoom < 14) continue
    const [points] = bridge.raw
    if (points === undefined) continue
    const [x, y] = [(points[2] ?? 0) * scale - left, (points[3] ?? 0) * scale - top]
    const [nextX, nextY] = [(points[4] ?? 0) * scale - left, (points[5] ?? 0) * scale - top]
    const length = Math.hypot(nextX - x, nextY - y)
    const reach = roadWidth / 2 + edge * 2.4
    const [acrossX, acrossY] = [(-(nextY - y) / length) * reach, ((nextX - x) / length) * reach]
    context.beginPath()
    for (const [towerX, towerY] of [
      [x, y],
      [nextX, nextY],
    ] as const) {
      for (const side of [-1, 1]) {
        context.moveTo(towerX + acrossX * side * 0.62, towerY + acrossY * side * 0.62)
        context.lineTo(towerX + acrossX * side * 1.25, towerY + acrossY * side * 1.25)
      }
    }
    context.strokeStyle = palette.bridge
    context.lineWidth = byZoom(zoom, [14, 2.2], [16, 3.4], [18, 9], [20, 34])
    context.stroke()
  }
}
