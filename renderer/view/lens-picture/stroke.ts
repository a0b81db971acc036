/** What pens draw: areas and lines with their paints, alone or in groups of one softness. */
import type { Colour } from './colour.ts'

/** What a stroke is of. */
export type StrokePart = 'sky' | 'bodies' | 'ground' | 'water' | 'obstructions' | 'shadow' | 'landmark' | 'subject'

export interface PaintStop {
  /** 0..1, never falling. */
  readonly at: number
  readonly colour: Colour
}

/** One colour, or one that changes straight down the picture or out from a place, in the drawing's units. */
export type Paint =
  | { readonly kind: 'even'; readonly colour: Colour }
  | { readonly kind: 'down'; readonly from: number; readonly to: number; readonly stops: readonly PaintStop[] }
  | {
      readonly kind: 'around'
      readonly x: number
      readonly y: number
      readonly radius: number
      readonly stops: readonly PaintStop[]
    }

export interface StrokeLine {
  readonly paint: Paint
  readonly width: number
  /** Lengths of dash and gap; null for an unbroken line. */
  readonly dashes: readonly [number, number] | null
  readonly round: boolean
}

export interface Stroke {
  readonly part: StrokePart
  /** SVG path text. */
  readonly path: string
  readonly fill: Paint | null
  readonly line: StrokeLine | null
}

/** Strokes drawn with one softness, or cut out by one outline. */
export interface StrokeGroup {
  /** Standard deviation of the blur in the drawing's units; 0 for sharp. */
  readonly deviation: number
  /** Path text of what is shown of them; null for all. */
  readonly within: string | null
  readonly strokes: readonly Stroke[]
}

export interface Strokes {
  readonly width: number
  readonly height: number
  readonly groups: readonly StrokeGroup[]
}

export const even = (colour: Colour): Paint => ({ kind: 'even', colour })
export const SEAM = 0.7

export function filledStroke(part: StrokePart, path: string, fill: Paint): Stroke {
  return { part, path, fill, line: null }
}

export function drawnStroke(part: StrokePart, path: string, paint: Paint, width: number, round = false): Stroke {
  return { part, path, fill: null, line: { paint, width, dashes: null, round } }
}

export function sharp(strokes: readonly Stroke[]): StrokeGroup[] {
  const shown = strokes.filter(({ path }) => path !== '')
  return shown.length === 0 ? [] : [{ deviation: 0, within: null, strokes: shown }]
}

/** A rectangle as path text. */
export function rect(left: number, top: number, width: number, height: number): string {
  return `M${left} ${top}h${width}v${height}h${-width}Z`
}
