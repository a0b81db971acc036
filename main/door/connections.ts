/** How many connections the loopback host keeps: idle ones give way to new ones, so that nobody can make it deaf by holding them. */
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import type { Socket } from 'node:net'

/** A browser opens six for each of its windows' profiles; the rest is room for what else asks on this machine. */
const MOST = 128
/** Headers are short and come from this very machine. */
const HEADERS_MS = 5_000
/** A file of a gigabyte has to get through from a slow disk. */
const REQUEST_MS = 600_000
/** A page asks again every few seconds while it is looked at. */
const KEPT_ALIVE_MS = 15_000

/** For `createServer`: Node looks after connections by these every second, not every thirty. */
export const TIME_LIMITS = {
  headersTimeout: HEADERS_MS,
  requestTimeout: REQUEST_MS,
  keepAliveTimeout: KEPT_ALIVE_MS,
  connectionsCheckingInterval: 1_000,
} as const

/** A connection is idle until its request has come whole enough to be worked on, and again once its answer was handed over. */
export function limitConnections(server: Server, most: number = MOST): void {
  /** Longest idle first. */
  const idle = new Set<Socket>()
  const open = new Set<Socket>()
  server.on('connection', (socket: Socket) => {
    if (open.size >= most) makeRoom(idle, open)
    open.add(socket)
    idle.add(socket)
    socket.once('close', () => {
      open.delete(socket)
      idle.delete(socket)
    })
    if (open.size > most) socket.destroy()
  })
  server.on('request', ({ socket }: IncomingMessage, response: ServerResponse) => {
    idle.delete(socket)
    // The answer is out of our hands: whoever does not read it has no claim to the place.
    response.once('prefinish', () => {
      if (open.has(socket)) idle.add(socket)
    })
  })
}

function makeRoom(idle: Set<Socket>, open: Set<Socket>): void {
  const longest = idle.values().next().value
  if (longest === undefined) return
  idle.delete(longest)
  open.delete(longest)
  longest.destroy()
}
