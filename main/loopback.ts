/** The loopback host: the page and the calls over HTTP on this machine alone, for where Electron cannot be had. */
import { AsyncLocalStorage } from 'node:async_hooks'
import { once } from 'node:events'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { ELEVATION_FILE_LIMIT } from '#app/contract/ground.ts'
import { parsedJson } from '#core/parsed-json.ts'
import type { Log } from './log.ts'
import { limitConnections, TIME_LIMITS } from '#main/door/connections.ts'
import { makeGate } from '#main/door/gate.ts'
import { type CallBody, type DoorRequest, refuseCall, refuseRequest } from '#main/door/guard.ts'
import { bodyLimit, dispatch, type Handlers } from '#main/door/handle.ts'
import { bodyStream, readBody } from '#main/door/request-body.ts'
import { plainAnswer, type Serve } from './serve.ts'

export interface LoopbackOptions {
  readonly handlers: Handlers
  readonly serve: Serve
  readonly log: Log
  /** Told when the token had to be changed because its one-time way in was used twice. */
  readonly onStolen?: (address: string) => void
  /** Told when the key in an address from the terminal was used up: another window needs another address. */
  readonly onEntered?: (address: string) => void
  readonly port?: number
}

export interface Loopback {
  readonly origin: string
  /**
   * An address for the terminal, with a key of its own in its fragment, which a browser never sends but writes into its
   * history: the key is used up when the page has changed it for the token.
   */
  readonly address: () => string
  /** A one-time address for a browser's command line, which other users of the machine can read. */
  readonly wayIn: () => string
  /** Answers the request out of whose work an uncaught fault came; to be called where that fault is heard. */
  readonly answerFailed: () => void
  readonly close: () => Promise<void>
}

const ADDRESS = '127.0.0.1'
/** How long what is being answered may go on after the end was asked for. */
const LAST_ANSWERS = 2_000
/** The page's request for the token, in place of its key. */
const ENTER = '/enter'

export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const gate = makeGate()
  const server = createServer({ maxHeaderSize: 16_384, ...TIME_LIMITS })
  limitConnections(server)
  const underWay = new AsyncLocalStorage<ServerResponse>()
  server.listen({ host: ADDRESS, port: options.port ?? 0, exclusive: true })
  await once(server, 'listening')
  const authority = `${ADDRESS}:${portOf(server)}`
  const origin = `http://${authority}`
  const address = (): string => `${origin}/#k=${gate.makeKey('terminal')}`
  server.on('request', (request, response) => underWay.run(response, () => take(request, response)))
  function take(request: IncomingMessage, response: ServerResponse): void {
    const left = new AbortController()
    response.on('close', () => left.abort())
    const work = answer({
      request,
      left: left.signal,
      gate,
      authority,
      options,
      onStolen: () => options.onStolen?.(address()),
      onEntered: () => options.onEntered?.(address()),
    })
    work
      .catch((error: unknown) => {
        options.log.error('bug', { where: 'loopback', error })
        return failedAnswer()
      })
      .then((result) => send(request, response, result))
      .catch((error: unknown) => {
        options.log.error('answer-lost', { error })
        response.destroy()
      })
  }
  return {
    origin,
    address,
    wayIn: () => origin + gate.makeWayIn(Date.now()),
    answerFailed: () => {
      const response = underWay.getStore()
      if (response !== undefined) giveUp(response)
    },
    close: async () => {
      const closed = once(server, 'close')
      server.close()
      // A save that has come in is still answered; what goes on for longer is cut.
      const cut = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS)
      server.closeIdleConnections()
      await closed
      clearTimeout(cut)
    },
  }
}

interface Work {
  readonly request: IncomingMessage
  /** Ends when the page no longer waits. */
  readonly left: AbortSignal
  readonly gate: ReturnType<typeof makeGate>
  readonly authority: string
  readonly options: LoopbackOptions
  readonly onStolen: () => void
  readonly onEntered: () => void
}

async function answer(work: Work): Promise<Response> {
  const { request, authority, options } = work
  const asked = askedOf(request)
  const refusal = refuseRequest(asked, authority)
  if (refusal) return plainAnswer(refusal.status, refusal.text)
  if (asked.target.startsWith('/api/')) return answerCall(work, asked.target.slice('/api/'.length))
  if (asked.target.startsWith('/ground/') && asked.method === 'POST') return answerFile(work, asked.target)
  if (asked.target.startsWith('/open/')) return answerWayIn(work, asked)
  if (asked.target === ENTER) return answerKey(work)
  const address = URL.parse(`http://${authority}${asked.target}`)
  if (!address) return plainAnswer(400, 'Bad request target')
  if (asked.method !== 'GET' && asked.method !== 'HEAD') return plainAnswer(405, 'Only GET is answered here')
  return options.serve(new Request(address, { method: asked.method, signal: work.left }))
}

function askedOf(request: IncomingMessage): DoorRequest {
  const { method = '', url: target = '', headers, headersDistinct } = request
  return { method, target, headers, allHeaders: headersDistinct }
}

function answerWayIn(work: Work, asked: DoorRequest): Response {
  if (asked.method !== 'GET') return plainAnswer(405, 'Only GET is answered here')
  const entry = work.gate.enter(asked.target, Date.now())
  if (entry === 'let-in')
    return plainAnswer(303, '', { Location: `/#k=${work.gate.makeKey('browser')}`, 'Cache-Control': 'no-store' })
  if (entry === 'stolen') {
    work.options.log.error('way-in-used-twice')
    work.onStolen()
  }
  return plainAnswer(410, 'This link worked once and is used up. Open the address that the terminal shows.')
}

/** The key out of the address for the token: asked like a call, since only the page's own script may. */
async function answerKey(work: Work): Promise<Response> {
  const { request, authority, gate } = work
  const refusal = refuseCall(askedOf(request), authority)
  if (refusal) return plainAnswer(refusal.status, refusal.text)
  const text = await readBody(request, KEY_BODY)
  const input = text === null ? undefined : parsedJson(text)
  const key = typeof input === 'object' && input !== null && 'key' in input ? String(input.key) : ''
  const to = gate.takeKey(key)
  if (to === null) return plainAnswer(410, 'This address worked once and is used up')
  if (to === 'terminal') work.onEntered()
  return jsonAnswer({ token: gate.token() })
}

/** Characters of a key and what is around it, with room. */
const KEY_BODY = 1_000

/** The answer to what does not look like a call of the page, or comes without the token; null when neither is so. */
function refuseUnlessAdmitted({ request, authority, gate }: Work, type?: CallBody): Response | null {
  const refusal = refuseCall(askedOf(request), authority, type)
  if (refusal) return plainAnswer(refusal.status, refusal.text)
  if (gate.admits(request.headers.authorization)) return null
  return plainAnswer(401, 'The address that the terminal shows carries the key; open that one')
}

async function answerCall(work: Work, name: string): Promise<Response> {
  const { request, options } = work
  const refusal = refuseUnlessAdmitted(work)
  if (refusal) return refusal
  const text = await readBody(request, bodyLimit(name))
  if (text === null) return plainAnswer(413, 'Too large')
  const input = parsedJson(text)
  if (input === undefined) return plainAnswer(400, 'Not JSON')
  return jsonAnswer(await dispatch(options.handlers, name, input, options.log))
}

function jsonAnswer(value: unknown): Response {
  return plainAnswer(200, JSON.stringify(value), {
    'Content-Type': 'application/json; charset=utf-8',
    'Cache-Control': 'no-store',
  })
}

function failedAnswer(): Response {
  return plainAnswer(500, 'The program failed; its log has the details', { 'Cache-Control': 'no-store' })
}

/** Work that will never come back with an answer of its own. */
function giveUp(response: ServerResponse): void {
  if (response.headersSent || response.destroyed) return void response.destroy()
  const failed = failedAnswer()
  response.writeHead(failed.status, { ...Object.fromEntries(failed.headers), Connection: 'close' })
  response.end()
}

/** A file for the library of ground: guarded like a call, its body handed on as it arrives. */
async function answerFile(work: Work, target: string): Promise<Response> {
  const { request, authority, options } = work
  const refusal = refuseUnlessAdmitted(work, 'application/octet-stream')
  if (refusal) return refusal
  if (Number(request.headers['content-length'] ?? 0) > ELEVATION_FILE_LIMIT) return plainAnswer(413, 'Too large')
  const address = new URL(`http://${authority}${target}`)
  // Half duplex is what a body in pieces asks for; not every typing of Request knows the word.
  const wish = { method: 'POST', body: bodyStream(request), duplex: 'half' as const, signal: work.left }
  return options.serve(new Request(address, wish))
}

async function send(request: IncomingMessage, response: ServerResponse, result: Response): Promise<void> {
  const body = Buffer.from(await result.arrayBuffer())
  // Answered already by the last guard.
  if (response.headersSent) return
  // What is left of a refused body is not read: the connection ends with the answer.
  if (!request.complete) response.setHeader('Connection', 'close')
  response.writeHead(result.status, { ...Object.fromEntries(result.headers), 'Content-Length': body.length })
  response.end(request.method === 'HEAD' ? undefined : body)
}

function portOf(server: Server): number {
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The loopback host has no port.')
  return address.port
}
