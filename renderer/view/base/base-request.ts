/** What passes between the page and the worker that paints the base of the map: what it is painted of, and which window is wanted. */
import type { ContourDrawing } from '#renderer/view/ground/contour-drawing.ts'
import type { ReliefPictures } from '#renderer/view/ground/relief-pictures.ts'
import type { WorldWindow } from '#renderer/view/sketch/world.ts'

/** How the base looks; the coasts of the world are always there. */
export interface BaseLook {
  readonly palette: 'light' | 'dark'
  /** The built-in island over the coasts. */
  readonly sketch: boolean
}

export interface BaseRequest {
  readonly say: 'paint'
  /** Grows with every request; an answer names the one it is to. */
  readonly turn: number
  readonly window: WorldWindow
  /** Device pixels painted a CSS pixel. */
  readonly sharpness: number
  /** Names are left out where they would be too coarse to read. */
  readonly labels: boolean
}

/** The look and the ground's pictures change seldom, so they are sent when they do and kept. */
export type ToBaseWorker =
  | { readonly say: 'look'; readonly look: BaseLook }
  | { readonly say: 'relief'; readonly pictures: ReliefPictures | null }
  | { readonly say: 'contours'; readonly drawing: ContourDrawing | null }
  | BaseRequest

export type FromBaseWorker =
  | { readonly say: 'painted'; readonly turn: number; readonly picture: ImageBitmap }
  | { readonly say: 'failed'; readonly turn: number; readonly message: string }
