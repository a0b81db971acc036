/** The ground as two pictures for the map: land and water as they are known, and over it the light on slopes as tint with opacity. */
import { type ReliefLight, hillshade } from '#core/ground/relief.ts'
import { RADIANS_PER_DEGREE } from '#core/units/angle.ts'
import { tintSlope } from '#renderer/view/sketch/relief-shade.ts'
import type { SketchPalette } from '#renderer/view/sketch/sketch-palette.ts'
import type { LaidGrid, MapRaster } from './map-raster.ts'
import { warpLine } from './warp.ts'

/** Four bytes a pixel, row by row of the raster. */
export interface ReliefPictures {
  readonly raster: MapRaster
  readonly ground: Uint8ClampedArray<ArrayBuffer>
  readonly light: Uint8ClampedArray<ArrayBuffer>
}

/** Heights are drawn so many times as steep as they are: maps read flat without it. */
const EXAGGERATION = 1.5
/** Level ground under a sun low down counts as this bright at least, or every slope would be black or white. */
const LEAST_LEVEL = 0.4
/** What comes from the whole sky rather than the sun: it shows the ground's form within the shade too. */
const SKY_SHARE = 0.3
const SKY: ReliefLight = { azimuth: 0, altitude: 90 }
/** Share of the raster's width and height over which the light fades toward its edges, so that the known ground doesn't end like a stamp. */
const FADE = 0.05

type Colour = readonly [number, number, number]

function colourOf(hex: string): Colour {
  const value = Number.parseInt(hex.slice(1), 16)
  return [value >> 16, (value >> 8) & 255, value & 255]
}

/** What lies at a place between cells, each corner by its share. */
interface Sample {
  known: number
  wet: number
  bright: number
}

/** Pictures on their way; a row means something once it has been painted. */
export interface ReliefState {
  readonly laid: LaidGrid
  /** 1 where a cell is open water. */
  readonly water: Uint8Array
  /** Brightness by cell; 0 where unknown. */
  readonly shade: Uint8Array
  /** The brightness of level ground, 0..1. */
  readonly level: number
  readonly palette: SketchPalette
  readonly pictures: ReliefPictures
}

/** Begins the pictures; paint them by reliefRows. */
export function beginRelief(
  laid: LaidGrid,
  water: Uint8Array,
  light: ReliefLight,
  palette: SketchPalette,
): ReliefState {
  const { columns, rows } = laid.raster
  return {
    laid,
    water,
    shade: mixed(hillshade(laid.grid, light, EXAGGERATION), hillshade(laid.grid, SKY, EXAGGERATION)),
    level: (1 - SKY_SHARE) * Math.sin(light.altitude * RADIANS_PER_DEGREE) + SKY_SHARE,
    palette,
    pictures: {
      raster: laid.raster,
      ground: new Uint8ClampedArray(columns * rows * 4),
      light: new Uint8ClampedArray(columns * rows * 4),
    },
  }
}

/** The sun's light with some of the sky's; unknown in both alike. */
function mixed(sun: Uint8Array, sky: Uint8Array): Uint8Array {
  return sun.map((bright, cell) => Math.round((1 - SKY_SHARE) * bright + SKY_SHARE * (sky[cell] as number)))
}

/** 0 at the edges to 1 within. */
function fadeAt(index: number, count: number): number {
  return Math.min(1, (Math.min(index, count - 1 - index) + 0.5) / (FADE * count))
}

/** Paints rows of pixels from `fromRow` up to, not including, `toRow`. */
export function reliefRows(state: ReliefState, fromRow: number, toRow: number): void {
  const { laid, water, shade, level, palette, pictures } = state
  const { columns, rows } = laid.raster
  const [land, sea] = [colourOf(palette.land), colourOf(palette.sea)]
  const xs = new Float64Array(columns)
  const ys = new Float64Array(columns)
  const sample: Sample = { known: 0, wet: 0, bright: 0 }
  for (let row = fromRow; row < Math.min(rows, toRow); row++) {
    warpLine(laid.toGrid, row + 0.5, xs, ys)
    const faded = fadeAt(row, rows)
    for (let column = 0; column < columns; column++) {
      sampleAt(laid, shade, water, xs[column] as number, ys[column] as number, sample)
      const { known, wet } = sample
      if (known === 0) continue
      const at = (row * columns + column) * 4
      const dry = 1 - wet / known
      pictures.ground[at] = sea[0] + dry * (land[0] - sea[0])
      pictures.ground[at + 1] = sea[1] + dry * (land[1] - sea[1])
      pictures.ground[at + 2] = sea[2] + dry * (land[2] - sea[2])
      pictures.ground[at + 3] = 255 * known
      const bright = (sample.bright / known - 1) / 254
      tintSlope(pictures.light, at, ((bright - level) / Math.max(LEAST_LEVEL, level)) * dry, palette)
      const edge = Math.min(faded, fadeAt(column, columns))
      if (edge < 1) pictures.light[at + 3] = (pictures.light[at + 3] as number) * edge
    }
  }
}

function sampleAt({ grid }: LaidGrid, shade: Uint8Array, water: Uint8Array, x: number, y: number, into: Sample): void {
  into.known = 0
  into.wet = 0
  into.bright = 0
  if (x < -0.5 || y < -0.5 || x > grid.columns - 0.5 || y > grid.rows - 0.5) return
  const left = Math.max(0, Math.min(grid.columns - 2, Math.floor(x)))
  const top = Math.max(0, Math.min(grid.rows - 2, Math.floor(y)))
  const u = Math.max(0, Math.min(1, x - left))
  const v = Math.max(0, Math.min(1, y - top))
  const cell = top * grid.columns + left
  add(into, shade, water, cell, (1 - u) * (1 - v))
  add(into, shade, water, cell + 1, u * (1 - v))
  add(into, shade, water, cell + grid.columns, (1 - u) * v)
  add(into, shade, water, cell + grid.columns + 1, u * v)
}

/** A shade of 0 is unknown ground. */
function add(into: Sample, shade: Uint8Array, water: Uint8Array, cell: number, share: number): void {
  const bright = shade[cell] as number
  if (bright === 0) return
  into.known += share
  into.wet += share * (water[cell] as number)
  into.bright += share * bright
}
