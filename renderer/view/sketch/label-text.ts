/** How names are written on the sketch map: type, size, spacing and colour by what is named, and from which zoom on. */
import type { SketchPalette } from './sketch-palette.ts'

export interface LabelStyle {
  /** CSS pixels. */
  readonly size: number
  readonly family: 'serif' | 'figures'
  /** CSS pixels added after each letter. */
  readonly spacing: number
  readonly colour: string
  readonly halo: string
}

export const SERIF = 'italic 400 SIZEpx "Source Serif 4", Georgia, serif'
const FIGURES = '400 SIZEpx "Source Sans 3", sans-serif'

export function fontOf(style: LabelStyle): string {
  return (style.family === 'serif' ? SERIF : FIGURES).replace('SIZE', String(style.size))
}

/** Zooms between which a name is written, by how much it matters. */
const FIRST_ZOOM = [0, 11, 13, 13.5, 14, 15, 16] as const

export function isNamed(nameClass: string, importance: number, zoom: number): boolean {
  if (nameClass === 'island') return zoom >= 8.5 && zoom < 13
  return zoom >= (FIRST_ZOOM[importance] ?? 16)
}

export function styleOf(nameClass: string, importance: number, zoom: number, palette: SketchPalette): LabelStyle {
  const land = { family: 'serif', spacing: 0.2, colour: palette.label, halo: palette.landHalo } as const
  const water = { family: 'serif', spacing: 1.6, colour: palette.waterLabel, halo: palette.waterHalo } as const
  const larger = zoom >= 15 ? 1 : 0
  if (nameClass === 'island') return { ...land, size: zoom < 11 ? 15 : 22, spacing: zoom < 11 ? 1.5 : 5 }
  if (nameClass === 'sea') return { ...water, size: importance === 1 ? 15 + larger : 13 + larger }
  if (nameClass === 'water') return { ...water, size: 12.5 + larger, halo: palette.landHalo, spacing: 1 }
  if (nameClass === 'village') return { ...land, size: (importance === 1 ? 16 : 14.5) + larger }
  if (nameClass === 'feature' || nameClass === 'landmark') return { ...land, size: 12.5 + larger }
  return { ...land, size: 13.5 + larger }
}

export function contourStyle(palette: SketchPalette): LabelStyle {
  return { size: 10, family: 'figures', spacing: 0, colour: palette.contourLabel, halo: palette.landHalo }
}
