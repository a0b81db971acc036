/** The veil over the map: a canvas below the plan, somewhat larger than the window, drawn again when the window leaves it. */
import { type PaintCanvas } from '#renderer/view/sketch/canvas-context.ts'
import type L from 'leaflet'
import type { ShownArea } from '#renderer/view/ground/keep-area.ts'
import type { MapRaster } from '#renderer/view/ground/map-raster.ts'
import type { Masks } from '#renderer/view/ground/masks.ts'
import { shownArea } from '#renderer/view/ground/shown-area.ts'
import { dark } from '#renderer/state/library/settings.ts'
import { GRAIN, crispMask } from './crisp-mask.ts'
import { followZoom, readLook, standStill } from './leaflet-seam.ts'
import { mapLook } from '#renderer/view/drawing/map-look.ts'
import { type Box, type MapLook, TILE_SIZE } from '#renderer/view/drawing/plan-view.ts'
import { type OnMap, drawRaster, rasterPicture, rasterBox } from '#renderer/view/base/raster-picture.ts'
import { calmly } from '#renderer/state/plan/calmly.ts'
import { type VeilKind, veilFill } from './veil-pattern.ts'

type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

/** Share of the window's width and height drawn beyond each of its sides; of a preview, which the next replaces, nothing. */
const BEYOND = 0.3

/** Pixels that a raster's pixel must have on the map to be seen as one, and its edge drawn clearly. */
const ENLARGED = 2

interface Veil {
  readonly masks: Masks
  readonly kind: VeilKind
}

let lastVeil: { readonly of: ShownArea; readonly veil: Veil } | null = null

function veilOf(area: ShownArea): Veil {
  if (lastVeil?.of === area) return lastVeil.veil
  const veil: Veil = { masks: area.masks, kind: area.of.kind === 'shade' ? 'shade' : 'hidden' }
  lastVeil = { of: area, veil }
  return veil
}

/** Black with a mask's opacity, four bytes a pixel. */
function inked(mask: Uint8ClampedArray): Uint8ClampedArray<ArrayBuffer> {
  const bytes = new Uint8ClampedArray(mask.length * 4)
  for (let pixel = 0; pixel < mask.length; pixel++) bytes[pixel * 4 + 3] = mask[pixel] as number
  return bytes
}

const pictures = new WeakMap<Uint8ClampedArray, PaintCanvas>()

function drawMask(pen: Pen, mask: Uint8ClampedArray, raster: MapRaster, on: OnMap, box: Box): void {
  if (raster.pixel * on.size > ENLARGED) {
    const { columns, rows, bytes } = crispMask(mask, raster, on, box)
    pen.drawImage(rasterPicture(bytes, { columns, rows }), box.left, box.top, columns * GRAIN, rows * GRAIN)
    return
  }
  const known = pictures.get(mask) ?? rasterPicture(inked(mask), raster)
  pictures.set(mask, known)
  drawRaster(pen, known, raster, on, box)
}

function grown({ left, top, right, bottom }: Box, beyond: number): Box {
  const [x, y] = [Math.ceil((right - left) * beyond), Math.ceil((bottom - top) * beyond)]
  return { left: left - x, top: top - y, right: right + x, bottom: bottom + y }
}

function within(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}

/** The turn of the world on which the window's middle lies nearest to the raster. */
function onMap(look: MapLook, raster: MapRaster): OnMap {
  const size = TILE_SIZE * 2 ** look.zoom
  const middle = raster.west + (raster.columns * raster.pixel) / 2
  const turn = Math.round(look.middleLon / 360 + 0.5 - middle)
  return { size, left: look.originX - turn * size, top: look.originY }
}

function paint(canvas: HTMLCanvasElement, veil: Veil, look: MapLook, box: Box): void {
  const pixelRatio = devicePixelRatio
  const { raster, veiled, unknown } = veil.masks
  const [width, height] = [box.right - box.left, box.bottom - box.top]
  canvas.width = Math.round(width * pixelRatio)
  canvas.height = Math.round(height * pixelRatio)
  canvas.style.width = `${width}px`
  canvas.style.height = `${height}px`
  canvas.style.left = `${box.left}px`
  canvas.style.top = `${box.top}px`
  const context = canvas.getContext('2d')
  if (context === null) return
  const theme = dark.peek() ? 'dark' : 'light'
  const on = onMap(look, raster)
  const place = (pen: Pen): void =>
    pen.setTransform(pixelRatio, 0, 0, pixelRatio, -box.left * pixelRatio, -box.top * pixelRatio)
  place(context)
  drawMask(context, veiled, raster, on, box)
  fillIn(context, veilFill(context, veil.kind, theme, pixelRatio), box)
  const apart = new OffscreenCanvas(canvas.width, canvas.height)
  const other = apart.getContext('2d')
  if (other === null) return
  place(other)
  outside(other, rasterBox(raster, on), box)
  if (unknown !== null) drawMask(other, unknown, raster, on, box)
  fillIn(other, veilFill(other, 'unknown', theme, pixelRatio), box)
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.globalCompositeOperation = 'source-over'
  context.drawImage(apart, 0, 0)
}

/** Puts a fill in the place of what is drawn, as far as that is opaque. */
function fillIn(context: Pen, fill: CanvasPattern | string, { left, top, right, bottom }: Box): void {
  context.globalCompositeOperation = 'source-in'
  context.fillStyle = fill
  context.fillRect(left, top, right - left, bottom - top)
}

/** Beyond the elevations at hand nothing is known. */
function outside(context: OffscreenCanvasRenderingContext2D, known: Box, box: Box): void {
  context.fillStyle = '#000'
  context.beginPath()
  context.rect(box.left, box.top, box.right - box.left, box.bottom - box.top)
  context.rect(known.left, known.top, known.right - known.left, known.bottom - known.top)
  context.fill('evenodd')
}

/** Lays the veil. Returns a function that removes it. */
export function layVeil(map: L.Map): () => void {
  const pane = map.createPane('veil')
  const canvas = document.createElement('canvas')
  canvas.className = 'ground-veil'
  canvas.setAttribute('aria-hidden', 'true')
  pane.append(canvas)
  let drawn: { readonly veil: Veil; readonly look: MapLook; readonly box: Box; readonly dark: boolean } | null = null
  followZoom(map, pane, () => drawn?.look ?? readLook(map))

  return calmly(() => {
    const { shown } = shownArea.value
    const look = mapLook.value
    const isDark = dark.value
    if (shown === null || look === null) {
      drawn = null
      lastVeil = null
      canvas.hidden = true
      return
    }
    const veil = veilOf(shown)
    const still =
      drawn !== null &&
      drawn.veil === veil &&
      drawn.dark === isDark &&
      drawn.look.zoom === look.zoom &&
      drawn.look.originX === look.originX &&
      drawn.look.originY === look.originY &&
      within(look.box, drawn.box)
    if (still) return
    standStill(pane)
    canvas.hidden = false
    drawn = { veil, look, box: grown(look.box, shown.preview ? 0 : BEYOND), dark: isDark }
    paint(canvas, veil, look, drawn.box)
  })
}
