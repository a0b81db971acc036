/** Which piece of the world to paint next so that the map's window always lies in what is painted. Pure arithmetic on windows. */
import type { WorldWindow } from '#renderer/view/sketch/world.ts'

/** CSS pixels painted beyond the map's window on each side, fine. */
export const MARGIN = 288
/** What is left of the margin when the next piece is asked for. */
const RENEW_WITHIN = 128
/** Device pixels a CSS pixel of the coarse piece that lies under the fine one. */
export const COARSE_SHARE = 0.25
/** The coarse piece reaches this many windows beyond the map's own on each side. */
const COARSE_REACH = 1

function grown({ zoom, left, top, width, height }: WorldWindow, across: number, down: number): WorldWindow {
  return { zoom, left: left - across, top: top - down, width: width + 2 * across, height: height + 2 * down }
}

/** The fine piece about a window, its corner on whole pixels so that nothing is smeared. */
export function finePiece(window: WorldWindow): WorldWindow {
  return grown({ ...window, left: Math.round(window.left), top: Math.round(window.top) }, MARGIN, MARGIN)
}

export function coarsePiece(window: WorldWindow): WorldWindow {
  return grown(
    { ...window, left: Math.round(window.left), top: Math.round(window.top) },
    Math.round(window.width * COARSE_REACH),
    Math.round(window.height * COARSE_REACH),
  )
}

/** Whether a piece covers a window of its zoom with so many pixels to spare. */
export function covers(piece: WorldWindow, window: WorldWindow, spare: number): boolean {
  return (
    piece.zoom === window.zoom &&
    piece.left <= window.left - spare &&
    piece.top <= window.top - spare &&
    piece.left + piece.width >= window.left + window.width + spare &&
    piece.top + piece.height >= window.top + window.height + spare
  )
}

export interface PaintedPiece {
  readonly piece: WorldWindow
  /** Of the look and the pictures it was painted from. */
  readonly version: number
}

export type Wanted = 'fine' | 'coarse' | null

/** What to paint next for a window: nothing, the coarse piece where little or nothing is there, else the fine one. */
export function wanted(
  window: WorldWindow,
  version: number,
  fine: PaintedPiece | null,
  coarse: PaintedPiece | null,
): Wanted {
  const serves = (painted: PaintedPiece | null, spare: number): boolean =>
    painted !== null && painted.version === version && covers(painted.piece, window, spare)
  // First of all something: coarse at the start, or where the window has left all that was painted.
  const nothing =
    (fine === null || !windowsMeet(fine.piece, window)) && (coarse === null || !windowsMeet(coarse.piece, window))
  if (nothing) return 'coarse'
  if (!serves(fine, RENEW_WITHIN)) return 'fine'
  return serves(coarse, 0) ? null : 'coarse'
}

/** Whether a piece, brought to the window's zoom, shows any of it. */
export function windowsMeet(piece: WorldWindow, window: WorldWindow): boolean {
  const scale = 2 ** (window.zoom - piece.zoom)
  return (
    piece.left * scale < window.left + window.width &&
    (piece.left + piece.width) * scale > window.left &&
    piece.top * scale < window.top + window.height &&
    (piece.top + piece.height) * scale > window.top
  )
}
