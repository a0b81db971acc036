/** The base of the map as a Leaflet layer: two canvases, a wide coarse one under a fine one a little larger than the window. */
import L from 'leaflet'
import { type BaseArtist, startBaseArtist } from '#renderer/view/base/base-artist.ts'
import {
  COARSE_SHARE,
  type PaintedPiece,
  coarsePiece,
  covers,
  finePiece,
  wanted,
} from '#renderer/view/base/base-coverage.ts'
import type { BaseLook } from '#renderer/view/base/base-request.ts'
import type { WorldWindow } from '#renderer/view/sketch/world.ts'
import type { PaintCanvas } from '#renderer/view/sketch/canvas-context.ts'
import type { ContourDrawing } from '#renderer/view/ground/contour-drawing.ts'
import type { ReliefPictures } from '#renderer/view/ground/relief-pictures.ts'

interface Sheet {
  readonly canvas: HTMLCanvasElement
  painted: PaintedPiece | null
}

interface Asked {
  readonly sheet: Sheet
  readonly painted: PaintedPiece
  readonly sharpness: number
}

/** Pictures asked for and not yet there, by the number that the artist gives them. */
type Awaited = Map<number, Asked>

/** A bitmap's memory is its own until it is closed. */
function letGoOf(picture: Picture): void {
  if (picture instanceof ImageBitmap) picture.close()
}

function sheet(name: 'fine' | 'coarse'): Sheet {
  const canvas = document.createElement('canvas')
  canvas.className = `base-sheet base-${name} leaflet-zoom-animated`
  canvas.width = 1
  canvas.height = 1
  return { canvas, painted: null }
}

type Picture = ImageBitmap | PaintCanvas

/** Milliseconds before a base that could not be painted is asked for again. */
const AGAIN = 4_000

export class BaseSurface extends L.Layer {
  declare private map: L.Map
  declare private artist: BaseArtist | null
  declare private fine: Sheet
  declare private coarse: Sheet
  /** What is being painted; null while nothing is. */
  declare private asked: Asked | null
  declare private readonly awaited: Awaited
  /** Grows with every change of what is painted. */
  declare private version: number
  declare private timer: ReturnType<typeof setTimeout> | null
  /** Where the map stands, or where a zoom under way leads. */
  declare private window: WorldWindow | null
  declare private zooming: boolean
  /** Painted while the map zooms, for what was asked: shown when it stands, or it would be swept along with the sheets. */
  declare private held: { readonly picture: Picture; readonly asked: Asked } | null

  /** Of the look and the pictures shown last: what comes again changes nothing. */
  declare private shown: { look: BaseLook; relief: ReliefPictures | null; contours: ContourDrawing | null }

  constructor(look: BaseLook) {
    super()
    // Under the tiles of a source, which lie in a container of their own.
    L.Util.setOptions(this, { pane: 'tilePane' })
    this.shown = { look, relief: null, contours: null }
    this.artist = null
    this.fine = sheet('fine')
    this.coarse = sheet('coarse')
    this.asked = null
    this.awaited = new Map()
    this.version = 0
    this.timer = null
    this.window = null
    this.zooming = false
    this.held = null
  }

  override onAdd(map: L.Map): this {
    this.map = map
    this.artist = startBaseArtist({
      painted: (picture, turn) => this.hear(picture, turn),
      failed: () => this.again(),
    })
    this.artist.look(this.shown.look)
    this.getPane()?.append(this.coarse.canvas, this.fine.canvas)
    this.follow()
    return this
  }

  override onRemove(): this {
    this.artist?.stop()
    this.artist = null
    if (this.timer !== null) clearTimeout(this.timer)
    if (this.held !== null) letGoOf(this.held.picture)
    this.held = null
    this.awaited.clear()
    for (const { canvas } of [this.coarse, this.fine]) canvas.remove()
    return this
  }

  override getEvents(): Record<string, L.LeafletEventHandlerFn> {
    return {
      move: () => this.follow(),
      moveend: () => this.follow(),
      resize: () => this.follow(),
      viewreset: () => this.follow(),
      zoomanim: (event) => this.zoomTo(event as L.ZoomAnimEvent),
      zoomend: () => this.stand(),
    }
  }

  show(look: BaseLook): void {
    if (this.shown.look === look) return
    this.shown.look = look
    this.artist?.look(look)
    this.renew()
  }

  showRelief(pictures: ReliefPictures | null): void {
    if (this.shown.relief === pictures) return
    this.shown.relief = pictures
    this.artist?.relief(pictures)
    this.renew()
  }

  showContours(drawing: ContourDrawing | null): void {
    if (this.shown.contours === drawing) return
    this.shown.contours = drawing
    this.artist?.contours(drawing)
    this.renew()
  }

  /** What is shown stays until what takes its place is painted. */
  private renew(): void {
    this.version += 1
    this.asked = null
    this.want()
  }

  /** Puts both sheets where they belong and asks for what the window will need. */
  private follow(): void {
    const origin = this.map.getPixelOrigin()
    const zoom = this.map.getZoom()
    const corner = this.map.containerPointToLayerPoint([0, 0])
    const size = this.map.getSize()
    for (const one of [this.coarse, this.fine]) this.place(one, zoom, origin)
    if (size.x < 1 || size.y < 1) return
    this.window = { zoom, left: origin.x + corner.x, top: origin.y + corner.y, width: size.x, height: size.y }
    this.want()
  }

  /** While the map zooms the sheets are stretched to where they will be, and the picture of the new zoom is painted meanwhile. */
  private zoomTo({ zoom, center }: L.ZoomAnimEvent): void {
    this.zooming = true
    const half = this.map.getSize().divideBy(2)
    const paned = L.DomUtil.getPosition(this.map.getPane('mapPane') ?? this.fine.canvas)
    const origin = this.map.project(center, zoom).subtract(half).add(paned).round()
    for (const one of [this.coarse, this.fine]) this.place(one, zoom, origin)
    const size = this.map.getSize()
    const corner = this.map.project(center, zoom).subtract(half)
    this.window = { zoom, left: corner.x, top: corner.y, width: size.x, height: size.y }
    this.want()
  }

  private place({ canvas, painted }: Sheet, zoom: number, origin: L.Point): void {
    if (painted === null) return
    const { piece } = painted
    const scale = this.map.getZoomScale(zoom, piece.zoom)
    L.DomUtil.setTransform(canvas, L.point(piece.left, piece.top).multiplyBy(scale).subtract(origin), scale)
  }

  private want(): void {
    const { window, artist, version } = this
    if (window === null || artist === null) return
    // In the middle of a flight the zoom is between two: what is painted then is seen by nobody.
    if (!Number.isInteger(window.zoom)) return
    const next = wanted(window, version, this.fine.painted, this.coarse.painted)
    if (next === null) return
    const { asked } = this
    const one = next === 'fine' ? this.fine : this.coarse
    if (asked?.sheet === one && asked.painted.version === version && covers(asked.painted.piece, window, 0)) return
    const piece = next === 'fine' ? finePiece(window) : coarsePiece(window)
    const sharpness = next === 'fine' ? devicePixelRatio : COARSE_SHARE * devicePixelRatio
    this.asked = { sheet: one, painted: { piece, version }, sharpness }
    this.awaited.set(artist.paint({ window: piece, sharpness, labels: next === 'fine' }), this.asked)
  }

  private stand(): void {
    this.zooming = false
    const { held } = this
    this.held = null
    this.follow()
    if (held === null) return
    if (held.asked === this.asked) this.take(held.picture, held.asked)
    else letGoOf(held.picture)
  }

  /** A picture comes. After one that something newer was asked for it is shown only where there would be nothing: at the start. */
  private hear(picture: Picture, turn: number): void {
    const asked = this.awaited.get(turn)
    for (const earlier of this.awaited.keys()) if (earlier <= turn) this.awaited.delete(earlier)
    if (asked === undefined || (asked !== this.asked && asked.sheet.painted !== null)) letGoOf(picture)
    else this.take(picture, asked)
  }

  private take(picture: Picture, asked: Asked): void {
    if (this.zooming) {
      if (this.held !== null) letGoOf(this.held.picture)
      this.held = { picture, asked }
      return
    }
    if (asked === this.asked) this.asked = null
    const { sheet: one, painted } = asked
    const { canvas } = one
    if (canvas.width !== picture.width || canvas.height !== picture.height) {
      canvas.width = picture.width
      canvas.height = picture.height
    }
    canvas.style.width = `${painted.piece.width}px`
    canvas.style.height = `${painted.piece.height}px`
    canvas.getContext('2d', { alpha: false })?.drawImage(picture, 0, 0)
    letGoOf(picture)
    one.painted = painted
    this.place(one, this.map.getZoom(), this.map.getPixelOrigin())
    this.want()
  }

  private again(): void {
    this.asked = null
    this.timer ??= setTimeout(() => {
      this.timer = null
      this.want()
    }, AGAIN)
  }
}
