/** Which tiles cover a still map, and where on it each falls. */
import type { LatLon } from '#core/geo/lat-lon.ts'
import { TILE_SIZE, mercatorView } from '#renderer/view/drawing/plan-view.ts'

interface Piece {
  readonly x: number
  readonly y: number
  readonly left: number
  readonly top: number
}

/** The tiles that cover the picture at a whole zoom, and where each falls; columns wrap round the world. */
export function piecesFor(
  centre: LatLon,
  zoom: number,
  tileZoom: number,
  width: number,
  height: number,
): { pieces: Piece[]; size: number } {
  const scale = 2 ** (zoom - tileZoom)
  const size = TILE_SIZE * scale
  const nowhere = { left: 0, top: 0, right: 0, bottom: 0 }
  const middle = mercatorView({ zoom, originX: 0, originY: 0, middleLon: centre.lon, box: nowhere }).toPoint(centre)
  const left = middle.x - width / 2
  const top = middle.y - height / 2
  const count = 2 ** tileZoom
  const pieces: Piece[] = []
  for (
    let row = Math.max(0, Math.floor(top / size));
    row <= Math.min(count - 1, Math.floor((top + height) / size));
    row++
  ) {
    for (let column = Math.floor(left / size); column <= Math.floor((left + width) / size); column++) {
      pieces.push({ x: ((column % count) + count) % count, y: row, left: column * size - left, top: row * size - top })
    }
  }
  return { pieces, size }
}
