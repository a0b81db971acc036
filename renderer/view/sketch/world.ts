/** The square Web Mercator world of the sketch map: 0..1 from west to east and from north to south, boxes in it, and windows on it. */

/** A rectangle; `west <= east`, `north <= south`, in whatever unit the caller works in. */
export interface WorldBox {
  readonly west: number
  readonly north: number
  readonly east: number
  readonly south: number
}

/** Mercator ends where the world becomes square. */
const MOST_NORTHERN = 85.05112877980659

export function worldX(lon: number): number {
  return lon / 360 + 0.5
}

export function worldY(lat: number): number {
  const sine = Math.sin((Math.min(MOST_NORTHERN, Math.max(-MOST_NORTHERN, lat)) * Math.PI) / 180)
  return 0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)
}

export function latitudeAt(y: number): number {
  return (Math.atan(Math.sinh(Math.PI * (1 - 2 * y))) * 180) / Math.PI
}

/** CSS pixels across the whole world. */
export function worldPixels(zoom: number): number {
  return 256 * 2 ** zoom
}

/** A piece of the world at a zoom, such as a canvas shows: in CSS pixels of the whole world at that zoom. */
export interface WorldWindow {
  readonly zoom: number
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export function windowAround(
  centre: { readonly lat: number; readonly lon: number },
  zoom: number,
  width: number,
  height: number,
): WorldWindow {
  const scale = worldPixels(zoom)
  return {
    zoom,
    left: worldX(centre.lon) * scale - width / 2,
    top: worldY(centre.lat) * scale - height / 2,
    width,
    height,
  }
}

export function boxesMeet(first: WorldBox, second: WorldBox): boolean {
  return (
    first.west <= second.east && second.west <= first.east && first.north <= second.south && second.north <= first.south
  )
}

export function grown(box: WorldBox, margin: number): WorldBox {
  return { west: box.west - margin, north: box.north - margin, east: box.east + margin, south: box.south + margin }
}

/** The smallest box around points given as x, y, x, y. */
export function worldBoxAround(points: Float64Array, from = 0, to = points.length): WorldBox {
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let place = from; place < to; place += 2) {
    const x = points[place] ?? 0
    const y = points[place + 1] ?? 0
    if (x < west) west = x
    if (x > east) east = x
    if (y < north) north = y
    if (y > south) south = y
  }
  return { west, north, east, south }
}
