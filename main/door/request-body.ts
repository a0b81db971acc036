/** The body of a request over HTTP: handed on piece by piece, or read whole up to a limit. */
import type { IncomingMessage } from 'node:http'

/** Read as it is wanted. Leaving it must not destroy the connection: the answer still has to reach the page. */
export function bodyStream(request: IncomingMessage): ReadableStream<Uint8Array> {
  const parts = request.iterator({ destroyOnReturn: false }) as AsyncIterableIterator<Uint8Array>
  return new ReadableStream<Uint8Array>({
    pull: async (controller) => {
      const { done: ended, value } = await parts.next()
      if (ended === true) controller.close()
      else controller.enqueue(new Uint8Array(value))
    },
    cancel: async () => {
      await parts.return?.()
    },
  })
}

/** The body, or null when it is larger than allowed: told by its header or met while reading. */
export async function readBody(request: IncomingMessage, limit: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > limit) return null
  const pieces: Buffer[] = []
  let size = 0
  // Leaving the loop must not destroy the connection: the refusal still has to reach the page.
  for await (const piece of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    size += piece.length
    if (size > limit) return null
    pieces.push(piece)
  }
  return Buffer.concat(pieces).toString('utf8')
}
