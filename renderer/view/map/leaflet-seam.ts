/** The seam to Leaflet: the one file that turns places into its pairs and back, makes its map, and reads the map's state as numbers. */
import L from 'leaflet'
import { type LatLon, latLon, wrapLongitude } from '#core/geo/lat-lon.ts'
import { type MapLook, type Point } from '#renderer/view/drawing/plan-view.ts'

/** Nearer than this the whole subject fills the window. */
export const NEAREST_ZOOM = 22
export const FARTHEST_ZOOM = 2

export function toLeaflet(at: LatLon): L.LatLng {
  return L.latLng(at.lat, at.lon)
}

export function fromLeaflet(at: L.LatLng): LatLon {
  return latLon(Math.max(-90, Math.min(90, at.lat)), at.lng)
}

/** A map without Leaflet's own controls: they bring their own look, and their attribution takes HTML. */
export function makeLeafletMap(holder: HTMLElement, at: LatLon, zoom: number): L.Map {
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
  return L.map(holder, {
    center: toLeaflet(at),
    zoom,
    minZoom: FARTHEST_ZOOM,
    maxZoom: NEAREST_ZOOM,
    zoomControl: false,
    attributionControl: false,
    zoomAnimation: !calm,
    fadeAnimation: !calm,
    inertia: !calm,
    worldCopyJump: true,
    wheelPxPerZoomLevel: 90,
    // The live map follows its holder's size by itself; Leaflet's own way tells of it later, even of a map that is gone by then.
    trackResize: false,
  })
}

/** The map's state in its layers' pixels, in which everything within a pane is placed. */
export function readLook(map: L.Map): MapLook {
  const origin = map.getPixelOrigin()
  const size = map.getSize()
  const corner = map.containerPointToLayerPoint([0, 0])
  return {
    zoom: map.getZoom(),
    originX: origin.x,
    originY: origin.y,
    middleLon: map.getCenter().lng,
    box: { left: corner.x, top: corner.y, right: corner.x + size.x, bottom: corner.y + size.y },
  }
}

export function readBounds(map: L.Map): { south: number; north: number; west: number; east: number } {
  const bounds = map.getBounds()
  // A window wider than the world sees all of it, and wrapped edges would tell the contrary.
  const whole = bounds.getEast() - bounds.getWest() >= 360
  return {
    south: Math.max(-90, bounds.getSouth()),
    north: Math.min(90, bounds.getNorth()),
    west: whole ? -180 : wrapLongitude(bounds.getWest()),
    east: whole ? 180 : wrapLongitude(bounds.getEast()),
  }
}

/** A pointer's place in the layers' pixels. */
export function layerPoint(map: L.Map, event: { readonly clientX: number; readonly clientY: number }): Point {
  const holder = map.getContainer().getBoundingClientRect()
  return map.containerPointToLayerPoint([event.clientX - holder.left, event.clientY - holder.top])
}

/** Goes somewhere on the turn of the earth that is nearest to where the map looks now. */
export function goTo(map: L.Map, at: LatLon, zoom: number, smoothly: boolean): void {
  const here = map.getCenter().lng
  const near = L.latLng(at.lat, here + wrapLongitude(at.lon - here))
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
  if (smoothly && !calm) map.flyTo(near, zoom, { duration: 0.6 })
  else map.setView(near, zoom, { animate: false })
}

/** Keeps a pane's drawing in step while the map zooms: scaled from the state it was drawn in to the one coming. */
export function followZoom(map: L.Map, pane: HTMLElement, drawnAt: () => MapLook): void {
  pane.classList.add('leaflet-zoom-animated')
  map.on('zoomanim', (event: L.ZoomAnimEvent) => {
    const look = drawnAt()
    const scale = map.getZoomScale(event.zoom, look.zoom)
    const half = map.getSize().divideBy(2)
    const paned = L.DomUtil.getPosition(map.getPane('mapPane') ?? pane)
    const coming = map.project(event.center, event.zoom).subtract(half).add(paned).round()
    const shift = L.point(look.originX, look.originY).multiplyBy(scale).subtract(coming)
    L.DomUtil.setTransform(pane, shift, scale)
  })
}

export function standStill(pane: HTMLElement): void {
  L.DomUtil.setTransform(pane, L.point(0, 0), 1)
}
