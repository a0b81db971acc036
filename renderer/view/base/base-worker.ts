/** The worker of the base: keeps the look and the ground's pictures, paints the newest window asked for. */
import sansUrl from '@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff2?url'
import serifUrl from '@fontsource/source-serif-4/files/source-serif-4-latin-400-italic.woff2?url'
import { newestOnly } from '#renderer/job/newest-only.ts'
import { afterMessages } from '#renderer/job/run-jobs.ts'
import { basePainter } from './base-painter.ts'
import type { BaseRequest, FromBaseWorker, ToBaseWorker } from './base-request.ts'

/** A worker has typefaces of its own, which a page's list of types doesn't tell. */
const faces = (globalThis as unknown as { readonly fonts?: FontFaceSet }).fonts

let loading: Promise<unknown> | null = null

/** Both typefaces of the map's words. One that can't be had leaves its words in the system's. */
function typefaces(): Promise<unknown> {
  loading ??= Promise.allSettled(
    [
      new FontFace('Source Serif 4', `url(${serifUrl})`, { style: 'italic', weight: '400' }),
      new FontFace('Source Sans 3', `url(${sansUrl})`, { weight: '400' }),
    ].map(async (face) => faces?.add(await face.load())),
  )
  return loading
}

const painter = basePainter(typefaces)

function answer(message: FromBaseWorker, transfer: Transferable[] = []): void {
  postMessage(message, { transfer })
}

async function paint(request: BaseRequest): Promise<void> {
  const canvas = await painter.paint(request)
  if (!(canvas instanceof OffscreenCanvas)) throw new Error('a worker has no canvas of the page')
  const picture = canvas.transferToImageBitmap()
  answer({ say: 'painted', turn: request.turn, picture }, [picture])
}

const hear = newestOnly({ work: paint, failed: answer, later: afterMessages() })

addEventListener('message', ({ data }: MessageEvent<ToBaseWorker>) => {
  if (data.say === 'look') painter.look(data.look)
  else if (data.say === 'relief') painter.relief(data.pictures)
  else if (data.say === 'contours') painter.contours(data.drawing)
  else hear(data)
})
