/** The page's end of the base's worker; where there is none, or it is lost twice, the page paints by itself. */
import { messageOf } from '#core/message-of.ts'
import type { ContourDrawing } from '#renderer/view/ground/contour-drawing.ts'
import type { ReliefPictures } from '#renderer/view/ground/relief-pictures.ts'
import type { PaintCanvas } from '#renderer/view/sketch/canvas-context.ts'
import { type BasePainter, basePainter } from './base-painter.ts'
import type { BaseLook, BaseRequest, FromBaseWorker, ToBaseWorker } from './base-request.ts'

export interface BaseArtist {
  readonly look: (look: BaseLook) => void
  readonly relief: (pictures: ReliefPictures | null) => void
  readonly contours: (drawing: ContourDrawing | null) => void
  /** Asks for a picture. One asked for before and not yet begun is dropped. Returns the number by which it will be named. */
  readonly paint: (request: Omit<BaseRequest, 'say' | 'turn'>) => number
  readonly stop: () => void
}

interface Hearer {
  /** A picture that was asked for, the last or one that was begun before it. */
  readonly painted: (picture: ImageBitmap | PaintCanvas, turn: number) => void
  /** The last can't be painted now, as when its data can't be had; another request tries again. */
  readonly failed: (message: string) => void
}

/** Workers begun for one map: the first that is lost is followed by another, then the page paints. */
const MOST_WORKERS = 2

function pageTypefaces(): Promise<unknown> {
  return Promise.allSettled([
    document.fonts.load('italic 400 14px "Source Serif 4"'),
    document.fonts.load('400 11px "Source Sans 3"'),
  ])
}

export function startBaseArtist({ painted, failed }: Hearer): BaseArtist {
  let turn = 0
  let begun = 0
  let worker: Worker | null = null
  let onPage: BasePainter | null = null
  let over = false
  // What another worker has to be told when the first is lost.
  let look: BaseLook | null = null
  let relief: ReliefPictures | null = null
  let contours: ContourDrawing | null = null
  let last: BaseRequest | null = null

  const send = (message: ToBaseWorker): void => worker?.postMessage(message, [])

  function begin(): void {
    begun += 1
    worker = new Worker(new URL('./base-worker.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<FromBaseWorker>) => {
      if (data.say === 'painted') {
        if (over) data.picture.close()
        else painted(data.picture, data.turn)
      } else if (!over && data.turn === turn) failed(data.message)
    })
    worker.addEventListener('error', lost)
    worker.addEventListener('messageerror', lost)
  }

  function lost(): void {
    if (over) return
    worker?.terminate()
    worker = null
    choose()
    if (look !== null) artist.look(look)
    artist.relief(relief)
    artist.contours(contours)
    if (last !== null) request(last)
  }

  /** Who paints from now on. */
  function choose(): void {
    if (typeof OffscreenCanvas === 'function' && begun < MOST_WORKERS) begin()
    else onPage = basePainter(pageTypefaces)
  }

  function request(now: BaseRequest): void {
    last = now
    if (onPage === null) return send(now)
    onPage.paint(now).then(
      (picture) => {
        if (!over) painted(picture, now.turn)
      },
      (error: unknown) => {
        if (!over && now.turn === turn) failed(messageOf(error))
      },
    )
  }

  const artist: BaseArtist = {
    look(next) {
      look = next
      if (onPage === null) send({ say: 'look', look: next })
      else onPage.look(next)
    },
    relief(pictures) {
      relief = pictures
      if (onPage === null) send({ say: 'relief', pictures })
      else onPage.relief(pictures)
    },
    contours(drawing) {
      contours = drawing
      if (onPage === null) send({ say: 'contours', drawing })
      else onPage.contours(drawing)
    },
    paint(wanted) {
      turn += 1
      request({ say: 'paint', turn, ...wanted })
      return turn
    },
    stop() {
      over = true
      worker?.terminate()
    },
  }
  choose()
  return artist
}
