/** How places fall on a drawing surface: the map's Mercator and the close plan's level metres, behind one pair of functions. */
import { unwrapNear } from '#core/geo/bounds.ts'
import type { LatLon } from '#core/geo/lat-lon.ts'
import { WGS84_SEMI_MAJOR, localFrame, placeUnder, toEarth, toLocal } from '#core/geo/local-frame.ts'
import { fromMercator, metresPerPixel, toMercator } from '#core/geo/web-mercator.ts'

/** Pixels, x to the right, y down. */
export interface Point {
  readonly x: number
  readonly y: number
}

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface PlanView {
  toPoint(at: LatLon): Point
  toPlace(point: Point): LatLon
  pixelsPerMetre(at: LatLon): number
  /** What can be seen, in the same pixels. */
  readonly box: Box
}

/** The map's state as numbers: zoom, the world pixel that lies at 0, 0, and what is in the window. */
export interface MapLook {
  readonly zoom: number
  readonly originX: number
  readonly originY: number
  /** Degrees, of any turn, in the window's middle: things are drawn on the turn nearest to it. */
  readonly middleLon: number
  readonly box: Box
}

const HALF_WORLD = Math.PI * WGS84_SEMI_MAJOR
export const TILE_SIZE = 256

export function mercatorView(look: MapLook): PlanView {
  const size = TILE_SIZE * 2 ** look.zoom
  return {
    toPoint(at) {
      const lon = unwrapNear(at.lon, look.middleLon)
      const { north } = toMercator(at)
      return {
        x: size * (0.5 + lon / 360) - look.originX,
        y: size * (0.5 - north / (2 * HALF_WORLD)) - look.originY,
      }
    },
    toPlace(point) {
      return fromMercator({
        east: ((point.x + look.originX) / size - 0.5) * 2 * HALF_WORLD,
        north: (0.5 - (point.y + look.originY) / size) * 2 * HALF_WORLD,
      })
    },
    pixelsPerMetre: (at) => 1 / metresPerPixel(at.lat, look.zoom),
    box: look.box,
  }
}

/** A level plan around a place: true metres, north up; the place lies at the middle of a window of the given size. */
export function levelView(middle: LatLon, pixelsPerMetre: number, width: number, height: number): PlanView {
  const frame = localFrame(middle, 0)
  return {
    toPoint(at) {
      const local = toLocal(frame, localFrame(at, 0).origin)
      return { x: width / 2 + local.east * pixelsPerMetre, y: height / 2 - local.north * pixelsPerMetre }
    },
    toPlace(point) {
      const east = (point.x - width / 2) / pixelsPerMetre
      const north = (height / 2 - point.y) / pixelsPerMetre
      return placeUnder(toEarth(frame, east, north, 0))
    },
    pixelsPerMetre: () => pixelsPerMetre,
    box: { left: 0, top: 0, right: width, bottom: height },
  }
}

export function distanceBetween(one: Point, other: Point): number {
  return Math.hypot(one.x - other.x, one.y - other.y)
}
