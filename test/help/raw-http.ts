/** Requests exactly as written, by raw node:http: no client of ours tidies a header or a path. */
import { request } from 'node:http'
import { connect } from 'node:net'

export interface RawAnswer {
  readonly status: number
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly body: string
}

export interface RawRequest {
  readonly port: number
  readonly path: string
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string | Buffer
}

export function rawHttp(wish: RawRequest): Promise<RawAnswer> {
  const { promise, resolve, reject } = Promise.withResolvers<RawAnswer>()
  const asked = request(
    {
      host: '127.0.0.1',
      port: wish.port,
      path: wish.path,
      method: wish.method ?? 'GET',
      headers: { host: `127.0.0.1:${wish.port}`, ...wish.headers },
      agent: false,
    },
    (response) => {
      const pieces: Buffer[] = []
      response.on('data', (piece: Buffer) => pieces.push(piece))
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(pieces).toString('utf8'),
        }),
      )
    },
  )
  asked.on('error', reject)
  asked.end(wish.body)
  return promise
}

/** The first line of the answer to bytes written straight into the connection. */
export function rawLine(port: number, text: string): Promise<string> {
  const { promise, resolve, reject } = Promise.withResolvers<string>()
  const socket = connect(port, '127.0.0.1', () => socket.write(text))
  let heard = ''
  socket.on('data', (piece) => {
    heard += piece.toString('latin1')
    if (heard.includes('\r\n')) socket.destroy()
  })
  socket.on('close', () => resolve(heard.split('\r\n')[0] ?? ''))
  socket.on('error', reject)
  return promise
}
