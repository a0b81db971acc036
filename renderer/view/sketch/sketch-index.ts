/** The island's features in world coordinates: which of them touch a tile, and how fine each is drawn at a zoom. */
import type { Feature, FeatureCollection, Position } from 'geojson'
import { simplified } from '#core/geo/simplify.ts'
import { cutCorners } from './curve.ts'
import { worldBoxAround, boxesMeet, type WorldBox, worldPixels, worldX, worldY } from './world.ts'

/** Points in one run, cut into stretches with a box each, so that far stretches of a long line are skipped. */
export interface SketchPart {
  readonly points: Float64Array
  readonly stretches: readonly WorldBox[]
}
export const STRETCH = 32

export interface SketchFeature {
  readonly kind: string
  readonly properties: Readonly<Record<string, unknown>>
  /** True when the parts are rings of one area. */
  readonly area: boolean
  readonly box: WorldBox
  readonly raw: readonly Float64Array[]
}

/** Kinds made by people, whose corners stay sharp. */
const ANGULAR: ReadonlySet<string> = new Set(['building', 'quay', 'wall', 'field', 'bridge', 'lighthouse', 'place'])

/** From this zoom on lines are made finer than the data; below it coarser. */
const FINE_ZOOM = 17

function flat(line: readonly Position[]): Float64Array {
  const points = new Float64Array(line.length * 2)
  line.forEach(([lon = 0, lat = 0], place) => {
    points[place * 2] = worldX(lon)
    points[place * 2 + 1] = worldY(lat)
  })
  return points
}

function parts(feature: Feature): Float64Array[] {
  const { geometry } = feature
  if (geometry.type === 'Point') return [flat([geometry.coordinates])]
  if (geometry.type === 'LineString') return [flat(geometry.coordinates)]
  if (geometry.type === 'Polygon') return geometry.coordinates.map(flat)
  throw new TypeError(`the island has no ${geometry.type}`)
}

function around(raw: readonly Float64Array[]): WorldBox {
  const boxes = raw.map((part) => worldBoxAround(part))
  return {
    west: Math.min(...boxes.map((box) => box.west)),
    north: Math.min(...boxes.map((box) => box.north)),
    east: Math.max(...boxes.map((box) => box.east)),
    south: Math.max(...boxes.map((box) => box.south)),
  }
}

export function stretchesOf(points: Float64Array): WorldBox[] {
  const stretches: WorldBox[] = []
  for (let from = 0; from < points.length - 2; from += STRETCH * 2) {
    stretches.push(worldBoxAround(points, from, Math.min(points.length, from + STRETCH * 2 + 2)))
  }
  return stretches
}

/** How a part is drawn at a whole zoom. */
export function shapedFor(raw: Float64Array, kind: string, area: boolean, zoom: number): Float64Array {
  const pixel = 1 / worldPixels(zoom)
  if (ANGULAR.has(kind)) return zoom < 15 ? simplified(raw, pixel * 0.3) : raw
  const end = raw.length - 2
  const closed = area || (raw.length > 6 && raw[0] === raw[end] && raw[1] === raw[end + 1])
  if (zoom < FINE_ZOOM) return simplified(zoom < 14 ? raw : cutCorners(cutCorners(raw, closed), closed), pixel * 0.25)
  let points = raw
  for (let round = 0; round < (zoom < 19 ? 2 : 3); round++) points = cutCorners(points, closed)
  return points
}

/** Zooms that look alike share one shape. */
function shapeZoom(zoom: number): number {
  const whole = Math.min(22, Math.max(6, Math.round(zoom)))
  if (whole >= 19) return 19
  return whole >= FINE_ZOOM ? FINE_ZOOM : whole
}

export class SketchIndex {
  readonly features: readonly SketchFeature[]
  /** Around everything. */
  readonly box: WorldBox
  readonly #byKind = new Map<string, SketchFeature[]>()
  readonly #shapes = new Map<SketchFeature, Map<number, readonly SketchPart[]>>()

  constructor(collection: FeatureCollection) {
    this.features = collection.features.map((feature) => {
      const raw = parts(feature)
      const properties = feature.properties ?? {}
      const kind = String(properties['kind'])
      return { kind, properties, area: feature.geometry.type === 'Polygon', box: around(raw), raw }
    })
    for (const feature of this.features) {
      const alike = this.#byKind.get(feature.kind)
      if (alike === undefined) this.#byKind.set(feature.kind, [feature])
      else alike.push(feature)
    }
    this.box = {
      west: Math.min(...this.features.map((feature) => feature.box.west)),
      north: Math.min(...this.features.map((feature) => feature.box.north)),
      east: Math.max(...this.features.map((feature) => feature.box.east)),
      south: Math.max(...this.features.map((feature) => feature.box.south)),
    }
  }

  all(kind: string): readonly SketchFeature[] {
    return this.#byKind.get(kind) ?? []
  }

  /** Features of a kind that touch the box, in their own order. */
  within(kind: string, box: WorldBox): SketchFeature[] {
    return this.all(kind).filter((feature) => boxesMeet(feature.box, box))
  }

  /** The feature's parts as drawn at a zoom, made when first asked for. */
  shape(feature: SketchFeature, zoom: number): readonly SketchPart[] {
    const key = shapeZoom(zoom)
    let shapes = this.#shapes.get(feature)
    if (shapes === undefined) {
      shapes = new Map()
      this.#shapes.set(feature, shapes)
    }
    let shape = shapes.get(key)
    if (shape === undefined) {
      shape = feature.raw.map((raw) => {
        const points = shapedFor(raw, feature.kind, feature.area, key)
        return { points, stretches: stretchesOf(points) }
      })
      shapes.set(key, shape)
    }
    return shape
  }
}
