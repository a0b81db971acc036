/** Where the built-in map of the world has sea, coarsely, over a raster: painted small and read back. */
import type { MapRaster } from '#renderer/view/ground/map-raster.ts'
import type { Seas } from '#renderer/view/ground/water.ts'
import { loadCoast } from '#renderer/view/sketch/coast-data.ts'
import { paintCoastMap } from '#renderer/view/sketch/paint-coast.ts'
import { LIGHT_PALETTE, type SketchPalette } from '#renderer/view/sketch/sketch-palette.ts'

/** Squares across: some hundred metres each, finer than the map of the world itself. */
const SIDE = 64
/** Land black, everything else bright. */
const TWO_TONES: SketchPalette = {
  ...LIGHT_PALETTE,
  sea: '#fff',
  waterline: '#fff',
  land: '#000',
  coast: '#000',
  border: '#000',
}

export async function coarseSeas({ west, north, pixel, columns, rows }: MapRaster): Promise<Seas> {
  const coast = await loadCoast()
  const canvas = document.createElement('canvas')
  canvas.width = SIDE
  canvas.height = SIDE
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (context === null) return { columns: 1, rows: 1, sea: new Uint8Array(1) }
  // A raster is about as high as wide; the longer side decides.
  const world = Math.max(columns, rows) * pixel
  const zoom = Math.log2(SIDE / world / 256)
  const window = { zoom, left: (west / world) * SIDE, top: (north / world) * SIDE, width: SIDE, height: SIDE }
  paintCoastMap(context, coast, window, TWO_TONES, 1)
  const { data } = context.getImageData(0, 0, SIDE, SIDE)
  const across = Math.max(1, Math.round((SIDE * columns * pixel) / world))
  const down = Math.max(1, Math.round((SIDE * rows * pixel) / world))
  const sea = new Uint8Array(across * down)
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++)
      sea[row * across + column] = (data[(row * SIDE + column) * 4] ?? 0) > 127 ? 1 : 0
  }
  return { columns: across, rows: down, sea }
}
