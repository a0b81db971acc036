/** A proxy before the loopback host that holds every save for a while before it is handed on, as a slow disk or another window's write would. */
import { once } from 'node:events'
import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { RunningHost } from './host.ts'

export interface SlowSaves {
  /** An address for one window more, by way of the proxy: the key in its fragment works once. */
  readonly address: () => Promise<string>
  /** From now on each save waits for so many milliseconds. */
  readonly slow: (milliseconds: number) => void
  readonly close: () => Promise<void>
}

export async function slowSaves(host: RunningHost): Promise<SlowSaves> {
  let wait = 0
  const target = new URL(host.origin)
  const server = createServer((asked, response) => {
    const pieces: Buffer[] = []
    const handOn = (): void => {
      const { origin, ...headers } = asked.headers
      const own = { ...headers, host: target.host, ...(origin === undefined ? {} : { origin: target.origin }) }
      const onward = request(
        { host: target.hostname, port: target.port, path: asked.url, method: asked.method, headers: own },
        (answer) => {
          response.writeHead(answer.statusCode ?? 500, answer.headers)
          answer.pipe(response)
        },
      )
      onward.on('error', () => response.destroy())
      onward.end(Buffer.concat(pieces))
    }
    asked.on('data', (piece: Buffer) => pieces.push(piece))
    // What has come in whole goes on, also when the page that sent it is gone by then.
    asked.on('end', () => {
      if (asked.url === '/api/library.save' && wait > 0) setTimeout(handOn, wait)
      else handOn()
    })
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  return {
    address: async () => (await host.address()).replace(host.origin, `http://127.0.0.1:${port}`),
    slow: (milliseconds) => {
      wait = milliseconds
    },
    close: async () => {
      server.close()
      server.closeAllConnections()
      await once(server, 'close')
    },
  }
}
